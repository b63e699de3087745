// A table in the page for one deal of a published drill: the drill's bots, and answers that are kept to be sent.
import {
  type AnswerChoice,
  botsAround,
  type Choice,
  type CompiledCard,
  compileCard,
  type ServerMessage,
} from '../../shared-engine/index.ts';
import type { Connection } from '../connection/connection.ts';
import type { Room } from '../room/room.ts';
import type { PublishedTable } from '../room/screen.ts';
import { FRONT } from './front-strings.ts';
import { keeping } from './kept-rooms.ts';
import { roomWith } from './open-room.ts';
import { fetchPageTable } from './page-table.ts';
import { PRACTICE } from './room-strings.ts';

/** Every device sits on seat 0: the deals are turned so. */
const YOU = 0;

export function publishedRoom(table: PublishedTable): Room {
  const { drill, key, keptAs } = table;
  const loadCard = () => cardOf(drill);
  const room = roomWith(drill.title, `published.${key}`, {
    home: 'page',
    loadCard,
    connect: (on) => {
      let local: Connection | null = null;
      let isStopped = false;
      let wasClosed = false;
      const message = (sent: ServerMessage) => {
        on.message(asInClass(sent, drill));
        if (wasClosed || sent.kind !== 'table' || sent.table.view?.stage.phase !== 'closed') return;
        wasClosed = true;
        table.onClosed();
      };
      const open = async () => {
        local ??= await localTableOf(table, loadCard, { ...on, message });
        if (!isStopped) local.start();
      };
      return {
        start: () => {
          isStopped = false;
          void open();
        },
        retryNow() {},
        send: (request) => {
          // Another deal is another table of this drill's.
          if (request.kind === 'action' && request.action.kind === 'ready') return table.onNext();
          local?.send(request);
        },
        stop: () => {
          isStopped = true;
          local?.stop();
        },
        pendingCount: () => 0,
      };
    },
  });
  return keeping(room, { placeOf: () => keptAs, loadCardFile: async () => drill.card });
}

type Listeners = Parameters<Parameters<typeof roomWith>[2]['connect']>[0];

async function localTableOf(
  { drill, place, name, answers, store }: PublishedTable,
  loadCard: () => Promise<CompiledCard>,
  on: Listeners,
): Promise<Connection> {
  const [localTable, card] = await Promise.all([fetchPageTable(), loadCard()]);
  const { deal, script } = drill.deals[place]!;
  const [right, across, left] = drill.bots;
  const stored = {
    deal,
    seat: YOU,
    number: 1,
    style: right,
    terms: drill.tableTerms,
    card: card.id,
    answers,
  } as const;
  return localTable({
    code: drill.title,
    first: deal,
    you: YOU,
    terms: drill.tableTerms,
    name: name.trim() || FRONT.guest,
    botNames: PRACTICE.bots,
    style: right,
    styles: botsAround(YOU, { styles: [right, across, left], seed: deal.seed }),
    script,
    stored,
    store: (round) => store(round.answers.filter(isAnswer)),
    loadCard,
    onDeal() {},
    on,
  });
}

function isAnswer(choice: Choice): choice is AnswerChoice {
  return choice.kind !== 'withdraw';
}

/** As at a table of a class: the drill is its teacher's, who says whether the card is closed. */
function asInClass(sent: ServerMessage, { terms }: PublishedTable['drill']): ServerMessage {
  if (sent.kind !== 'table') return sent;
  const controls = { held: false, standIn: false, cardClosed: terms.cardClosed };
  return { ...sent, table: { ...sent.table, mode: 'class' as const, controls } };
}

async function cardOf({ card }: PublishedTable['drill']): Promise<CompiledCard> {
  if (card !== null) return compileCard(card);
  const { houseCard } = await import('../cards/load-card.ts');
  return houseCard();
}
