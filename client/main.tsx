// Where the page is put together: the browser's clock, chance, storage and socket meet the model and the views.
import { render } from 'preact';
import type { CompiledCard } from '../shared-engine/index.ts';
import { askTicket } from './connection/api.ts';
import { type Connection, connect } from './connection/connection.ts';
import { keepPending } from './connection/pending.ts';
import { browserAfter, browserWire, socketUrl } from './connection/wire.ts';
import { readAims, writeAims } from './model/aim.ts';
import { openApp } from './model/app.ts';
import { readHand, writeHand } from './model/hand-notes.ts';
import { forThisTab, lasting } from './model/memory.ts';
import { openRoomModel, type Room, type RoomPorts } from './model/room.ts';
import { pathOf } from './model/route.ts';
import type { Settings } from './model/settings.ts';
import { dealKey, type SharedDeal } from './practice/deal-link.ts';
import './styles/tokens.css';
import './styles/base.css';
import './styles/tiles.css';
import './styles/front.css';
import './styles/room.css';
import './styles/table.css';
import './styles/question.css';
import './styles/rack.css';
import './styles/table-narrow.css';
import './styles/card.css';
import './styles/review.css';
import { AppView } from './views/app.tsx';
import { FRONT } from './words/front.ts';
import { newsOf } from './words/news.ts';
import { PRACTICE } from './words/practice.ts';

function randomHex(bytes: number): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(bytes)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
}

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

function room(code: string): Room {
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

/** Bots, card and review are fetched only when somebody plays in the page. */
function practice(shared: SharedDeal, { name, style }: Settings): Room {
  const loadCard = async (): Promise<CompiledCard> => {
    const { houseCard, loadCard: load } = await import('./card/load.ts');
    return (shared.cardOf && (await load(shared.cardOf))) || houseCard();
  };
  return roomWith(PRACTICE.title, dealKey(shared), {
    home: 'page',
    loadCard,
    connect: (on) => {
      let table: Connection | null = null;
      const open = async () => {
        const { localTable } = await import('./practice/local-table.ts');
        table ??= localTable({
          code: PRACTICE.title,
          first: shared.deal,
          you: shared.seat,
          name: name.trim() || FRONT.nameless,
          botNames: PRACTICE.bots,
          style,
          loadCard,
          newSeed: () => randomHex(32),
          after: browserAfter,
          onDeal: (deal) =>
            window.history.replaceState(null, '', pathOf({ kind: 'deal', shared: { ...shared, deal } })),
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

const app = openApp({
  lasting,
  place: () => window.location,
  origin: window.location.origin,
  showPath: (path) => window.history.pushState(null, '', path),
  onReturn: (run) => window.addEventListener('popstate', run),
  room,
  practice,
  freshDeal: () => {
    const [chance = 0] = crypto.getRandomValues(new Uint8Array(1));
    const dealer = ([0, 1, 2, 3] as const)[chance % 4] ?? 0;
    return { deal: { seed: randomHex(32), dealer }, seat: 0, cardOf: null };
  },
});

const page = document.getElementById('page');
if (page) render(<AppView app={app} />, page);

// During development the server's files change under their names, and a kept one would be an old one.
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  window.addEventListener('load', () => {
    navigator.serviceWorker.register('/shell.js').catch((error: unknown) => console.warn(error));
  });
}
