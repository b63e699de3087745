// A table of the server that may go on in the page while the server is out of reach, and the way back to it (rules G1–G4).
import type { CompiledCard, ServerMessage, Table } from '../../shared-engine/index.ts';
import type { Connection, RoomConnection } from '../connection/connection.ts';
import type { PendingRequests } from '../connection/pending.ts';
import { randomHex } from '../connection/random.ts';
import { mayPlayOn } from '../room/playing-on.ts';
import type { RoomPorts } from '../room/room.ts';
import type { TextStorage } from '../storage/browser-storage.ts';
import { forgetWentOn, noteFinishedHere, readWentOn, storeWentOn, type WentOn } from '../storage/went-on.ts';
import type { PageTable } from './page-table.ts';
import { PLAYING_ON } from './room-strings.ts';

type On = Parameters<RoomPorts['connect']>[0];

export interface PlayingOnPorts {
  readonly code: string;
  readonly pending: PendingRequests;
  /** Where what goes on is stored. */
  readonly storage: TextStorage;
  /** The card of this id, as far as it is the table's. */
  readonly loadCard: (id: string) => Promise<CompiledCard | null>;
  readonly fetchPageTable: () => Promise<(table: PageTable) => Connection>;
  /** The connection to the server. */
  readonly connect: (on: On) => Connection;
  readonly on: On;
}

export function connectOrPlayOn(ports: PlayingOnPorts): RoomConnection {
  const { code, pending, storage, on } = ports;
  let last: Table | null = null;
  let here: Connection | null = null;
  let isConnected = false;
  const server = ports.connect({
    state(state) {
      isConnected = state.kind === 'open' || state.kind === 'read-only';
      // Back at the table: what went on here has had its time (rule G4).
      if (isConnected) forgetWentOn(storage, code);
      on.state(state);
    },
    message(message) {
      if (message.kind === 'table') last = message.table;
      on.message(message);
    },
  });

  /** From what is stored, or else from the last that the server has told. */
  async function playOn(): Promise<void> {
    try {
      const [newTable, wentOn] = await Promise.all([
        ports.fetchPageTable(),
        readWentOn(storage, code) ?? begun(),
      ]);
      if (isConnected || here !== null) return;
      if (wentOn === null) return failed();
      server.stop();
      for (const { id } of pending.all()) pending.complete(id);
      storeWentOn(storage, wentOn);
      here = newTable({ ...tableOf(wentOn), on: { state: stateHere, message: messageHere(wentOn) } });
      here.start();
    } catch {
      failed();
    }
  }

  async function begun(): Promise<WentOn | null> {
    if (last === null) return null;
    const told = { table: last, pending: pending.all() };
    const [{ wentOnFrom }, { loadSimd }, card] = await Promise.all([
      import('../practice/play-on.ts'),
      import('../workers/deep-analysis.ts'),
      ports.loadCard(last.card.id),
    ]);
    if (card === null) return null;
    return wentOnFrom(told, { card, simd: await loadSimd(), seed: randomHex(32) });
  }

  function tableOf(wentOn: WentOn) {
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
      store: (next: WentOn['round']) => storeWentOn(storage, { ...wentOn, round: next }),
      loadCard: async () => {
        const card = await ports.loadCard(round.card);
        if (card === null) throw new Error(PLAYING_ON.failed);
        return card;
      },
      onDeal() {},
    };
  }

  const stateHere: On['state'] = (state) => on.state(state.kind === 'open' ? { kind: 'here' } : state);

  const messageHere =
    ({ left }: WentOn) =>
    (message: ServerMessage) => {
      // A deal of this page has a number too, which the server then gives to another.
      if (message.kind === 'table' && isClosed(message.table) && message.table.round === left)
        noteFinishedHere(storage, code, left);
      on.message(message);
    };

  function failed() {
    on.message({ kind: 'rejected', id: null, code: 'try-later', message: PLAYING_ON.failed });
  }

  return {
    start() {
      if (here !== null) here.start();
      else if (readWentOn(storage, code) !== null) void playOn();
      else server.start();
    },
    retryNow: () => (here ?? server).retryNow(),
    send: (request) => (here ?? server).send(request),
    stop: () => (here ?? server).stop(),
    pendingCount: () => pending.all().length,
    canPlayOn: () => here === null && (mayPlayOn(last) || readWentOn(storage, code) !== null),
    playOn: () => void playOn(),
    backToServer() {
      here?.stop();
      here = null;
      server.start();
    },
  };
}

function isClosed({ view }: Table): boolean {
  return view?.stage.phase === 'closed';
}
