// A table to look at: one deal played in the page, stopped at each step, and rooms that show such a moment.

import { untracked } from '@preact/signals';
import {
  type CompiledCard,
  houseCard,
  NO_SIMD,
  pendingDecision,
  type Review,
  type ServerMessage,
  STANDARD_TERMS,
  type Table,
} from '../../../shared-engine/index.ts';
import { openApp } from '../../app/app-state.ts';
import type { App } from '../../app/routes/app.ts';
import type { ClientRequest } from '../../connection/pending.ts';
import { localTable } from '../../practice/local-table.ts';
import { emptyLayout, inDisplayOrder } from '../../room/rack-layout.ts';
import { createRoom, type Room, seatedAt } from '../../room/room.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import type { PageRound } from '../../storage/page-round.ts';

const YOU = 0;
const NOTHING: TextStorage = { read: () => null, write: () => true, remove() {} };

export const card: CompiledCard = houseCard();

/** The tables of one round: as each step opens, and once everybody but this seat has answered. */
export interface PlayedRound {
  readonly opened: readonly Table[];
  readonly answered: readonly Table[];
  readonly closed: Table;
  readonly review: Review;
  /** As the page stores it. */
  readonly stored: PageRound;
}

export async function playRound(seed = 'e'.repeat(64)): Promise<PlayedRound> {
  const waiting: (() => void)[] = [];
  const messages: ServerMessage[] = [];
  const kept: PageRound[] = [];
  const table = localTable({
    code: 'Q7MK3XWD',
    first: { seed, dealer: YOU },
    you: YOU,
    terms: STANDARD_TERMS.alone,
    name: 'Ines',
    botNames: ['', 'Tomas', 'Wilma', 'Odo'],
    style: 'typical',
    botDelay: 0,
    stored: null,
    store: (round) => kept.push(round),
    loadCard: async () => card,
    loadSimd: async () => NO_SIMD,
    newSeed: () => seed,
    startTimer: (_, run) => {
      waiting.push(run);
      return () => {};
    },
    startOwnAnalyses: () => ({ follow() {}, into: (review) => review, stop() {} }),
    onDeal() {},
    on: { state() {}, message: (message) => messages.push(message) },
  });
  table.start();
  while (messages.length === 0) await new Promise((resolve) => setTimeout(resolve));
  const now = () => messages.findLast((message) => message.kind === 'table')!.table;
  const letOthersAnswer = () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) next();
  };
  const opened: Table[] = [];
  const answered: Table[] = [];
  for (;;) {
    opened.push(now());
    letOthersAnswer();
    const own = answerTo(now());
    if (own === null) break;
    answered.push(now());
    table.send(own);
  }
  const { review } = messages.findLast((message) => message.kind === 'review')!;
  return { opened, answered, closed: now(), review, stored: kept.at(-1)! };
}

/** The simplest legal answer; null where nothing is asked any more. */
function answerTo(table: Table): ClientRequest | null {
  const seated = seatedAt(table);
  const decision = seated && pendingDecision(seated.view);
  if (!seated || !decision) return null;
  const base = { kind: 'choose', id: 'own', round: table.round, seat: YOU } as const;
  switch (decision.kind) {
    case 'vote':
      return { ...base, choice: { kind: 'vote', step: 'vote', go: true } };
    case 'ask':
      return { ...base, choice: { kind: 'ask', step: 'courtesy-ask', count: 2 } };
    case 'pass': {
      const tiles = seated.view.rack.filter((face) => face !== 'joker').slice(0, decision.count);
      return { ...base, choice: { kind: 'pass', step: decision.step, tiles, blind: 0 } };
    }
  }
}

interface Shown {
  readonly review?: Review;
  /** Tiles put into the tray from the left end of the rack. */
  readonly tray?: number;
  readonly blind?: number;
  readonly cardOpen?: boolean;
  /** The room says why something did not happen. */
  readonly rejected?: string;
  readonly loadCard?: Room['loadCard'];
}

/** May be called while something is drawn, which then does not depend on how the room came to be as it is. */
export function roomAt(table: Table, shown: Shown = {}): Room {
  return untracked(() => openedRoom(table, shown));
}

function openedRoom(table: Table, shown: Shown): Room {
  let receive: (message: ServerMessage) => void = () => {};
  const room = createRoom(table.code, emptyLayout('suit'), {
    home: 'page',
    newId: () => 'own',
    now: () => 0,
    cardOpen: shown.cardOpen ?? false,
    initialAims: {},
    initialHelped: [],
    initialCommitment: null,
    saveLayout() {},
    saveCardOpen() {},
    saveAims() {},
    saveHelped() {},
    saveCommitment() {},
    announcementsOf: () => [],
    loadCard: shown.loadCard ?? (async () => card),
    connect: (on) => {
      receive = on.message;
      return {
        start: () => on.state({ kind: 'open' }),
        retryNow() {},
        send() {},
        stop() {},
        pendingCount: () => 0,
      };
    },
  });
  room.reconnect();
  receive({ kind: 'table', seq: 1, table });
  if (shown.review) receive({ kind: 'review', round: table.round, review: shown.review, more: false });
  for (let chosen = 0; chosen < (shown.tray ?? 0); chosen++) {
    const { layout } = room.state.value;
    const next = inDisplayOrder(layout).find(({ id, face }) => face !== 'joker' && !layout.tray.includes(id));
    if (next) room.toggleTile(next.id);
  }
  if (shown.blind) room.setBlind(shown.blind);
  if (shown.rejected) receive({ kind: 'rejected', id: 'own', code: 'wrong-step', message: shown.rejected });
  return room;
}

/** An app that stores nothing and goes nowhere. */
export function appAt(pathname: string): App {
  return openApp({
    storage: NOTHING,
    place: () => ({ pathname, hash: '', over: false }),
    origin: 'https://table.example',
    showPath() {},
    renamePath() {},
    goBack() {},
    onReturn: () => () => {},
    newSeed: () => 'e'.repeat(64),
    random: { below: () => 0 },
  });
}
