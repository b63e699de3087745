// Everything a server may meet, brought about with real processes: nothing acknowledged is lost, nobody sees too much.
import { cutOff, flooded, malformed, slowReader, storm } from '../faults/hostile-clients.ts';
import { badBots, firstVersion } from '../faults/in-process.ts';
import { clocksApart, databaseGone, serverFrozen, serverKilled, wakesLost } from '../faults/database-faults.ts';
import { askedToGo, diskFull, fileHeld, killed, reloads, tornTail, twice } from '../faults/file-faults.ts';
import { ANSWERED_WITHIN_MS, type Found, type Scenario, TOO_BUSY_MS } from '../faults/scenario.ts';
import type { Proof, ProofRow } from '../proof.ts';

const SCENARIOS: readonly Scenario[] = [
  killed,
  askedToGo,
  databaseGone,
  fileHeld,
  diskFull,
  twice,
  slowReader,
  cutOff,
  flooded,
  storm,
  malformed,
  clocksApart,
  serverFrozen,
  serverKilled,
  wakesLost,
  reloads,
  badBots,
  firstVersion,
  tornTail,
];

export const proof: Proof = {
  summary:
    'Kills, full disks, lost databases, frozen servers, floods and nonsense: nothing acknowledged is lost.',
  async run(input) {
    const rows: ProofRow[] = [];
    for (const scenario of SCENARIOS) {
      const started = performance.now();
      const found = await scenario.run({ ...input, seed: `${input.seed}/${scenario.what}` });
      rows.push(rowOf(scenario.what, found, (performance.now() - started) / 1000));
    }
    return rows;
  },
};

function rowOf(what: string, { happened, verdict, note }: Found, seconds: number): ProofRow {
  const { faults, acknowledged, choices, rounds, slowest = 0, late = 0 } = verdict;
  const judged = late <= TOO_BUSY_MS;
  const counts = [
    `${happened} times`,
    ...(acknowledged === undefined ? [] : [`${acknowledged} acknowledged`]),
    ...(choices === undefined ? [] : [`${choices} choices in ${rounds} rounds`]),
    ...(verdict.slowest === undefined ? [] : [`answered ${slowest} ms after healing at the latest`]),
    ...(judged ? [] : [`not judged by time: timers came ${late} ms late`]),
    ...(note === undefined ? [] : [note]),
    `${seconds.toFixed(1)} s`,
  ];
  return {
    what,
    value: faults.length === 0 ? counts.join(', ') : `${counts.join(', ')}; ${faults.slice(0, 4).join('; ')}`,
    bar: 'nothing lost, told or unanswered that should not be',
    ok: faults.length === 0 && happened > 0 && (!judged || slowest <= ANSWERED_WITHIN_MS),
  };
}
