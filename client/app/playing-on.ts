// A table of the server that may go on in the page while the server is out of reach, and the way back to it (rules G1–G4).
import type { CompiledCard, ServerMessage, Table } from '../../shared-engine/index.ts';
import type { Connection, RoomConnection } from '../connection/connection.ts';
import type { PendingRequests } from '../connection/pending.ts';
import { randomHex } from '../connection/random.ts';
import type { StartTimer } from '../connection/socket.ts';
import { mayPlayOn } from '../room/playing-on.ts';
import type { RoomPorts } from '../room/room.ts';
import type { TextStorage } from '../storage/browser-storage.ts';
import { readLastTold, storeLastTold } from '../storage/last-told.ts';
import {
  forgetWentOn,
  noteFinishedHere,
  readWentOn,
  storeWentOn,
  type WentOn,
  wasFinishedHere,
} from '../storage/went-on.ts';
import type { PageTable } from './page-table.ts';
import { PLAYING_ON } from './room-strings.ts';
import { type ServerWatch, type ServerWatchPorts, watchServer } from './server-watch.ts';

type On = Parameters<RoomPorts['connect']>[0];

export interface PlayingOnPorts {
  readonly code: string;
  readonly pending: PendingRequests;
  /** Where what goes on is stored. */
  readonly storage: TextStorage;
  /** Where what the server told is stored. */
  readonly tab: TextStorage;
  /** The card of this id, as far as it is the table's. */
  readonly loadCard: (id: string) => Promise<CompiledCard | null>;
  readonly fetchPageTable: () => Promise<(table: PageTable) => Connection>;
  /** The connection to the server. */
  readonly connect: (on: On) => Connection;
  /** Whether the server answers, and still has the table. */
  readonly isThere: ServerWatchPorts['isThere'];
  readonly startTimer: StartTimer;
  readonly on: On;
}

/** Why a round cannot go on here. */
type Obstacle = keyof typeof PLAYING_ON;

interface Prepared {
  readonly wentOn: WentOn;
  readonly card: CompiledCard;
  readonly newTable: (table: PageTable) => Connection;
}

export function connectOrPlayOn(ports: PlayingOnPorts): RoomConnection {
  const { code, pending, storage, tab, on } = ports;
  let last = readLastTold(tab, code);
  let here: Connection | null = null;
  let watch: ServerWatch | null = null;
  let isServerBack = false;
  let isConnected = false;
  let isStopped = false;
  const server = ports.connect({
    state(state) {
      isConnected = state.kind === 'open' || state.kind === 'read-only';
      // Back at the table: what went on here has had its time (rule G4).
      if (isConnected) forgetWentOn(storage, code);
      if (state.kind === 'ended' && state.reason === 'no-room') forgetTable();
      on.state(state);
    },
    message(message) {
      if (message.kind === 'table') {
        last = message.table;
        storeLastTold(tab, code, toGoOnFrom());
      }
      on.message(message);
    },
  });

  /** Nothing goes on of a table that is gone, and its address opens nothing here any more. */
  function forgetTable() {
    last = null;
    storeLastTold(tab, code, null);
    forgetWentOn(storage, code);
  }

  /** The last that the server told; null where its round is over, is not this player's alone, or was finished here. */
  function toGoOnFrom(): Table | null {
    if (last === null || !mayPlayOn(last) || wasFinishedHere(storage, code, last.round)) return null;
    return last;
  }

  /** The server is left only once all is here that the round needs; what is missing otherwise. */
  async function playOn(): Promise<Obstacle | null> {
    const prepared = await prepare().catch((): Obstacle => 'noPart');
    if (isStopped || isConnected || here !== null) return null;
    if (typeof prepared === 'string') return prepared;
    const { wentOn, newTable } = prepared;
    server.stop();
    for (const { id } of pending.all()) pending.complete(id);
    storeWentOn(storage, wentOn);
    here = newTable({ ...tableOf(prepared), on: { state: stateHere(wentOn), message: messageHere(wentOn) } });
    here.start();
    return null;
  }

  function stopHere() {
    watch?.stop();
    watch = null;
    isServerBack = false;
    here?.stop();
  }

  /** From what is stored, or else from the last that the server has told. */
  async function prepare(): Promise<Prepared | Obstacle> {
    const stored = readWentOn(storage, code);
    const table = toGoOnFrom();
    const told = table && { table, pending: pending.all() };
    const id = stored?.round.card ?? told?.table.card.id;
    if (id === undefined) return 'noTiles';
    const [newTable, card] = await Promise.all([ports.fetchPageTable(), ports.loadCard(id)]);
    // A table may have another card by now than the round was dealt for.
    if (card?.id !== id) return 'noCard';
    if (stored) return { wentOn: stored, card, newTable };
    const [{ wentOnFrom }, { loadSimd }] = await Promise.all([
      import('../practice/play-on.ts'),
      import('../workers/deep-analysis.ts'),
    ]);
    const wentOn = told && wentOnFrom(told, { card, simd: await loadSimd(), seed: randomHex(32) });
    return wentOn ? { wentOn, card, newTable } : 'noTiles';
  }

  function tableOf({ wentOn, card }: Prepared) {
    const { names, round } = wentOn;
    return {
      code,
      first: round.deal,
      you: round.seat,
      terms: round.terms,
      name: names[round.seat],
      botNames: names,
      style: round.style,
      stored: round,
      store(next: WentOn['round']) {
        // Another page may have gone back to the server meanwhile: then this would bring back what is left.
        if (readWentOn(storage, code) !== null) storeWentOn(storage, { ...wentOn, round: next });
      },
      loadCard: async () => card,
      onDeal() {},
    };
  }

  /** The server is looked for once there is a table here that could be left for it. */
  function stateHere({ left, leftAt }: WentOn): On['state'] {
    const sayHere = () => on.state({ kind: 'here', isServerBack, left: { round: left, step: leftAt } });
    return (state) => {
      if (state.kind !== 'open') return on.state(state);
      sayHere();
      watch ??= watchServer({
        isThere: ports.isThere,
        startTimer: ports.startTimer,
        onChange(isBack) {
          isServerBack = isBack;
          sayHere();
        },
      });
    };
  }

  const messageHere =
    ({ left }: WentOn) =>
    (message: ServerMessage) => {
      // A deal of this page has a number too, which the server then gives to another.
      if (message.kind === 'table' && isClosed(message.table) && message.table.round === left)
        noteFinishedHere(storage, code, left);
      on.message(message);
    };

  function say(obstacle: Obstacle | null) {
    if (obstacle === null) return;
    on.message({ kind: 'rejected', id: null, code: 'try-later', message: PLAYING_ON[obstacle] });
  }

  return {
    start() {
      isStopped = false;
      if (here !== null) here.start();
      else if (readWentOn(storage, code) === null) server.start();
      else
        void playOn().then((obstacle) => {
          if (obstacle !== null) server.start();
          say(obstacle);
        });
    },
    retryNow() {
      if (here === null) server.retryNow();
      else watch?.look();
    },
    send: (request) => (here ?? server).send(request),
    stop() {
      isStopped = true;
      if (here === null) server.stop();
      else stopHere();
    },
    pendingCount: () => pending.all().length,
    canPlayOn: () => here === null && (toGoOnFrom() ?? readWentOn(storage, code)) !== null,
    playOn: () => void playOn().then(say),
    backToServer() {
      stopHere();
      here = null;
      server.start();
    },
  };
}

function isClosed({ view }: Table): boolean {
  return view?.stage.phase === 'closed';
}
