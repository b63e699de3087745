// Everything a table needs, fetched after the front page stands: its model, its screens, its socket, its styles.
import type { CompiledCard, Deal } from '../shared-engine/index.ts';
import { askTicket } from './connection/api.ts';
import { type Connection, connect } from './connection/connection.ts';
import { keepPending } from './connection/pending.ts';
import { browserAfter, browserWire, socketUrl } from './connection/wire.ts';
import { readAims, writeAims } from './model/aim.ts';
import { randomHex } from './model/chance.ts';
import { readHand, writeHand } from './model/hand-notes.ts';
import { forThisTab, lasting } from './model/memory.ts';
import { openRoomModel, type Room, type RoomPorts } from './model/room.ts';
import { pathOf } from './model/route.ts';
import type { Settings } from './model/settings.ts';
import { dealKey, type SharedDeal } from './practice/deal-link.ts';
import { LESSON_DEAL } from './practice/lesson-deal.ts';
import './styles/tiles.css';
import './styles/room.css';
import './styles/table.css';
import './styles/ring.css';
import './styles/question.css';
import './styles/rack.css';
import './styles/table-narrow.css';
import './styles/card.css';
import './styles/review.css';
import './styles/judgement.css';
import { FRONT } from './words/front.ts';
import { LESSON } from './words/lesson.ts';
import { newsOf } from './words/news.ts';
import { PRACTICE } from './words/practice.ts';

export { openRoom } from './connection/api.ts';
export { LessonScreen } from './views/lesson-screen.tsx';
export { RoomScreen } from './views/room-screen.tsx';

const newId = () => randomHex(12);

type Own = Pick<RoomPorts, 'home' | 'connect' | 'loadCard'>;

/** A room's model with what all rooms of this page share; `key` tells its notes from those of other rooms. */
function roomWith(code: string, key: string, own: Own): Room {
  return openRoomModel(code, readHand(key, forThisTab, lasting), {
    newId,
    now: () => performance.now(),
    keepHand: (hand) => writeHand(hand, key, forThisTab, lasting),
    newsOf,
    cardOpen: lasting.read('card') === 'open',
    keepCardOpen: (open) => lasting.write('card', open ? 'open' : 'away'),
    firstAims: readAims(key, forThisTab),
    keepAims: (aims) => writeAims(aims, key, forThisTab),
    ...own,
  });
}

/** The table with this code, on the server. */
export function serverRoom(code: string): Room {
  return roomWith(code, code, {
    home: 'server',
    loadCard: async () => (await import('./card/load.ts')).loadCard(code),
    connect: (on) => {
      const pending = keepPending(forThisTab, `orders.${code}`);
      const connection = connect({
        askTicket: () => askTicket(code),
        openWire: browserWire(socketUrl(window.location)),
        after: browserAfter,
        newId,
        chance: Math.random,
        pending,
        onState: on.state,
        onMessage: on.message,
      });
      return { ...connection, kept: () => pending.all().length };
    },
  });
}

interface InPage {
  readonly title: string;
  readonly shared: SharedDeal;
  readonly settings: Pick<Settings, 'name' | 'style'>;
  readonly onDeal: (deal: Deal) => void;
}

/** A table in the page itself for this deal; the address bar follows from deal to deal. */
export function pageRoom(shared: SharedDeal, settings: Settings): Room {
  const onDeal = (deal: Deal) =>
    window.history.replaceState(null, '', pathOf({ kind: 'deal', shared: { ...shared, deal } }));
  return inPage({ title: PRACTICE.title, shared, settings, onDeal });
}

/** The example of the help: always the same tiles and the same neighbours. */
export function lessonRoom({ name }: Settings): Room {
  return inPage({
    title: LESSON.title,
    shared: LESSON_DEAL,
    settings: { name, style: 'typical' },
    onDeal() {},
  });
}

/** Bots, card and review are fetched only now. */
function inPage({ title, shared, settings: { name, style }, onDeal }: InPage): Room {
  const loadCard = async (): Promise<CompiledCard> => {
    const { houseCard, loadCard: load } = await import('./card/load.ts');
    return (shared.cardOf && (await load(shared.cardOf))) || houseCard();
  };
  return roomWith(title, dealKey(shared), {
    home: 'page',
    loadCard,
    connect: (on) => {
      let table: Connection | null = null;
      const open = async () => {
        const [{ localTable }, { loadVectors, lookDeeper }] = await Promise.all([
          import('./practice/local-table.ts'),
          import('./practice/deeper.ts'),
        ]);
        table ??= localTable({
          code: title,
          first: shared.deal,
          you: shared.seat,
          name: name.trim() || FRONT.nameless,
          botNames: PRACTICE.bots,
          style,
          loadCard,
          newSeed: () => randomHex(32),
          after: browserAfter,
          lookDeeper,
          loadVectors: () => loadVectors(),
          onDeal,
          on,
        });
        table.start();
      };
      return {
        start: () => void open(),
        hurry() {},
        order: (order) => table?.order(order),
        stop: () => table?.stop(),
        kept: () => 0,
      };
    },
  });
}
