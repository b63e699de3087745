// A table in the page that a test plays at, its timers run at once unless the test holds them.
import type { PageTable } from '../../client/app/page-table.ts';
import type { Connection } from '../../client/connection/connection.ts';
import type { ClientRequest } from '../../client/connection/pending.ts';
import type { StartTimer } from '../../client/connection/socket.ts';
import { localTable } from '../../client/practice/local-table.ts';
import type { PageRound } from '../../client/storage/page-round.ts';
import { type OpenFollowingWorker, startOwnAnalyses } from '../../client/workers/own-analyses.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import type { ServerMessage } from '../../shared-engine/protocol/messages.ts';
import { STANDARD_TERMS, type Terms } from '../../shared-engine/rules/exchange/terms.ts';
import { pendingDecision } from '../../shared-engine/rules/view/pending-decision.ts';
import type { SeatView } from '../../shared-engine/rules/view/view.ts';
import { seedNamed } from './rounds.ts';

export const card = houseCard();
export const DEAL = { seed: seedNamed('at home'), dealer: 2 } as const;

const restingWorker: OpenFollowingWorker = () => ({ send() {}, end() {} });
const atOnce: StartTimer = (_, run) => {
  run();
  return () => {};
};

/** A table in the page with what a test has for a browser. */
export function newTable(
  table: PageTable,
  openWorker: OpenFollowingWorker = restingWorker,
  startTimer: StartTimer = atOnce,
): Connection {
  const seeds = [seedNamed('second')];
  return localTable({
    ...table,
    newSeed: () => seeds.shift()!,
    startTimer,
    botDelay: 1000,
    startOwnAnalyses: (analyses) => startOwnAnalyses({ ...analyses, openWorker }),
    loadSimd: async () => NO_SIMD,
  });
}

export async function openTable(
  openWorker: OpenFollowingWorker = restingWorker,
  stored: PageRound | null = null,
  terms: Terms = STANDARD_TERMS.alone,
  startTimer: StartTimer = atOnce,
) {
  const messages: ServerMessage[] = [];
  const kept: PageRound[] = [];
  const parts: PageTable = {
    code: 'here',
    first: stored?.deal ?? DEAL,
    you: 1,
    terms,
    name: 'Runa',
    botNames: ['A', 'B', 'C', 'D'],
    style: 'typical',
    loadCard: async () => card,
    onDeal() {},
    stored,
    store: (round) => kept.push(round),
    on: { state() {}, message: (message) => messages.push(message) },
  };
  const table = newTable(parts, openWorker, startTimer);
  table.start();
  await new Promise((resolve) => setImmediate(resolve));
  const last = () => messages.findLast((message) => message.kind === 'table')!.table;
  const view = (): SeatView => {
    const now = last().view;
    if (now?.audience !== 'seat') throw new Error('no seat');
    return now;
  };
  return { table, messages, last, view, stored: () => kept.at(-1)! };
}

/** The first legal answer to the open step. */
export function simplest(view: SeatView, round: number): ClientRequest {
  const base = { kind: 'choose', id: `c${view.record.steps.length}`, round, seat: 1 } as const;
  const decision = pendingDecision(view);
  switch (decision?.kind) {
    case 'vote':
      return { ...base, choice: { kind: 'vote', step: 'vote', go: true } };
    case 'ask':
      return { ...base, choice: { kind: 'ask', step: 'courtesy-ask', count: 3 } };
    case 'pass': {
      const tiles = view.rack.filter((face) => face !== 'joker').slice(0, decision.count);
      return { ...base, choice: { kind: 'pass', step: decision.step, tiles, blind: 0 } };
    }
    case undefined:
      throw new Error('nothing is asked of this seat');
  }
}
