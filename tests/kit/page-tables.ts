// A table in the page that a test plays at, its timers run at once unless the test holds them.
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

export async function openTable(
  openWorker: OpenFollowingWorker = () => ({ send() {}, end() {} }),
  stored: PageRound | null = null,
  terms: Terms = STANDARD_TERMS.alone,
  startTimer: StartTimer = (_, run) => {
    run();
    return () => {};
  },
) {
  const messages: ServerMessage[] = [];
  const kept: PageRound[] = [];
  const seeds = [seedNamed('second')];
  const table = localTable({
    code: 'here',
    first: stored?.deal ?? DEAL,
    you: 1,
    terms,
    name: 'Runa',
    botNames: ['A', 'B', 'C', 'D'],
    style: 'typical',
    loadCard: async () => card,
    newSeed: () => seeds.shift()!,
    startTimer,
    botDelay: 1000,
    onDeal() {},
    stored,
    store: (round) => kept.push(round),
    startOwnAnalyses: (analyses) => startOwnAnalyses({ ...analyses, openWorker }),
    loadSimd: async () => NO_SIMD,
    on: { state() {}, message: (message) => messages.push(message) },
  });
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
