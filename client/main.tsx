// Where the page is put together: the browser's clock, chance, storage and socket meet the model and the views.
import { render } from 'preact';
import { askTicket } from './connection/api.ts';
import { connect } from './connection/connection.ts';
import { keepPending } from './connection/pending.ts';
import { browserAfter, browserWire, socketUrl } from './connection/wire.ts';
import { openApp } from './model/app.ts';
import { readHand, writeHand } from './model/hand-notes.ts';
import { forThisTab, lasting } from './model/memory.ts';
import { openRoomModel, type Room } from './model/room.ts';
import './styles/base.css';
import './styles/tiles.css';
import './styles/front.css';
import './styles/table.css';
import './styles/review.css';
import { AppView } from './views/app.tsx';
import { newsOf } from './words/news.ts';

function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
}

function room(code: string): Room {
  return openRoomModel(code, readHand(code, forThisTab, lasting), {
    newId,
    now: () => performance.now(),
    keepHand: (hand) => writeHand(hand, code, forThisTab, lasting),
    newsOf,
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

const app = openApp({
  lasting,
  path: () => window.location.pathname,
  origin: window.location.origin,
  showPath: (path) => window.history.pushState(null, '', path),
  onReturn: (run) => window.addEventListener('popstate', run),
  room,
});

const page = document.getElementById('page');
if (page) render(<AppView app={app} />, page);
