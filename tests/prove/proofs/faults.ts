// Every kind of fault, caused on real processes: nothing acknowledged is lost, nobody sees too much.
import { answersLost, badNeighbor, halfTold } from '../faults/committer-faults.ts';
import {
  clocksApart,
  databaseDown,
  serverFrozen,
  serverKilled,
  wakeUpsLost,
} from '../faults/database-faults.ts';
import {
  diskFull,
  duplicates,
  fileLocked,
  killed,
  reloads,
  terminated,
  tornTail,
} from '../faults/file-faults.ts';
import { backpressure, flooded, malformed, reconnectStorm, slowReader } from '../faults/hostile-clients.ts';
import { badBots, unreleasedFile } from '../faults/in-process.ts';
import { ANSWERED_WITHIN_MS, type Result, type Scenario, TOO_BUSY_MS } from '../faults/scenario.ts';
import type { Proof, ProofRow } from '../proof.ts';

const SCENARIOS: readonly Scenario[] = [
  killed,
  terminated,
  databaseDown,
  fileLocked,
  diskFull,
  duplicates,
  slowReader,
  backpressure,
  flooded,
  reconnectStorm,
  malformed,
  clocksApart,
  serverFrozen,
  serverKilled,
  wakeUpsLost,
  reloads,
  badBots,
  unreleasedFile,
  tornTail,
  answersLost,
  badNeighbor,
  halfTold,
];

export const proof: Proof = {
  summary:
    'Kills, full disks, lost databases, frozen servers, floods and nonsense: nothing acknowledged is lost.',
  async run({ tell, ...input }) {
    const rows: ProofRow[] = [];
    for (const scenario of SCENARIOS) {
      const started = performance.now();
      const found = await scenario.run({ ...input, seed: `${input.seed}/${scenario.title}` });
      const row = rowOf(scenario.title, found, (performance.now() - started) / 1000);
      tell?.(row);
      rows.push(row);
    }
    return rows;
  },
};

function rowOf(what: string, { happened, verdict, note }: Result, seconds: number): ProofRow {
  const { violations, acknowledged, choices, rounds, slowestAnswerMs = 0, maxTimerDelayMs = 0 } = verdict;
  const judged = maxTimerDelayMs <= TOO_BUSY_MS;
  const counts = [
    `${happened} times`,
    ...(acknowledged === undefined ? [] : [`${acknowledged} acknowledged`]),
    ...(choices === undefined ? [] : [`${choices} choices in ${rounds} rounds`]),
    ...(verdict.slowestAnswerMs === undefined
      ? []
      : [`answered ${slowestAnswerMs} ms after healing at the latest`]),
    ...(judged ? [] : [`not judged by time: timers came ${maxTimerDelayMs} ms late`]),
    ...(note === undefined ? [] : [note]),
    `${seconds.toFixed(1)} s`,
  ];
  return {
    what,
    value:
      violations.length === 0
        ? counts.join(', ')
        : `${counts.join(', ')}; ${violations.slice(0, 4).join('; ')}`,
    bar: 'nothing acknowledged is lost, nothing private is told, nothing stays unanswered',
    ok: violations.length === 0 && happened > 0 && (!judged || slowestAnswerMs <= ANSWERED_WITHIN_MS),
  };
}
