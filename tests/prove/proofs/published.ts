// npm run prove -- published: many people play a published drill over a week at one server, whose clock is ours.
import { statSync } from 'node:fs';
import path from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { openSqlite } from '../../../server/store/sqlite.ts';
import { drillReportSchema } from '../../../shared-engine/protocol/class-report.ts';
import { DAY_MS, fetchAt, publish, quickDrill } from '../../kit/published.ts';
import { startServer, type TestServer } from '../../kit/server.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import type { Proof, ProofRow } from '../proof.ts';
import { playCrowd } from '../published/crowd.ts';
import { recounted } from '../published/recount.ts';

const WEEK_MS = 7 * DAY_MS;

export const proof: Proof = {
  summary: 'Many play a published drill over a week: every number told is right, little is stored of each.',
  async run({ seed, size }) {
    const [people, deals] = size === 'full' ? [2000, 2] : [30, 1];
    const { folder, discard } = await temporaryFolder();
    const file = path.join(folder, 'published.db');
    const opened = openSqlite(file);
    if (!opened.ok) throw new Error(opened.message);
    const at = await startServer({ seed, store: opened.store, settings: { TRUST_PROXY_HOPS: '1' } });
    try {
      const teacher = await publish(at, quickDrill(deals), { until: at.clock.now() + 2 * WEEK_MS });
      const collect = collector();
      const heap: number[] = [];
      let person = 0;
      const pause = () => {
        at.clock.advance(WEEK_MS / people);
        if (person++ % Math.ceil(people / 4) === 0) heap.push(collect());
      };
      const { sent } = await playCrowd(at, teacher.code, { seed, people, pause });
      heap.push(collect());
      const rows = [...(await spreadRows(at, teacher, sent)), ...memoryRows(heap, people * deals)];
      await at.stop();
      await opened.store.close();
      return [...rows, diskRow(statSync(file).size, people * deals)];
    } finally {
      await discard();
    }
  },
};

async function spreadRows(
  at: TestServer,
  { code, secret }: { readonly code: string; readonly secret: string },
  sent: Awaited<ReturnType<typeof playCrowd>>['sent'],
): Promise<ProofRow[]> {
  const report = drillReportSchema.parse(await (await fetchAt(at, code, 'report', secret)).json());
  return report.deals.map(({ players, steps }, place) => {
    const rounds = sent[place]!;
    const wrong = difference(steps.flatMap(linesOf), recounted(rounds));
    const through = rounds.length < 10 ? 0 : rounds.length - (rounds.length % 5);
    return {
      what: `deal ${place + 1}: ${players} through, ${steps.length} spreads; numbers unlike an independent count`,
      value: wrong.length === 0 ? 0 : wrong.slice(0, 3).join('; '),
      bar: `0, of ${through} through`,
      ok: wrong.length === 0 && players === through && steps.length > 0,
    };
  });
}

type Spread = NonNullable<ReturnType<typeof drillReportSchema.parse>>['deals'][number]['steps'][number];

function linesOf({ step, kind, choices, hidden }: Spread): string[] {
  const lines = choices.map(({ chosen, count }) => {
    return `${step}|${kind}|${typeof chosen === 'number' ? chosen : chosen.join(' ')}|${count}`;
  });
  return hidden === undefined ? lines : [...lines, `${step}|${kind}|other|${hidden}`];
}

function difference(one: readonly string[], other: readonly string[]): string[] {
  const unlike = (some: readonly string[], all: readonly string[]) =>
    some.filter((line) => !all.includes(line));
  return [
    ...unlike(one, other).map((line) => `told ${line}`),
    ...unlike(other, one).map((line) => `due ${line}`),
  ];
}

/** What lives after everything else has been collected, in bytes. */
function collector(): () => number {
  setFlagsFromString('--expose-gc');
  const collect: () => void = runInNewContext('gc');
  return () => {
    collect();
    return process.memoryUsage().heapUsed;
  };
}

/** The state holds each round once; whatever else grew would grow from quarter to quarter. */
function memoryRows(heap: readonly number[], rounds: number): ProofRow[] {
  const grown = (heap.at(-1)! - heap[1]!) / (rounds * 0.75);
  const what = 'bytes of memory for each round after the first quarter';
  return [{ what, value: Math.round(grown), bar: '<= 6000', ok: rounds < 1000 || grown <= 6000 }];
}

function diskRow(bytes: number, rounds: number): ProofRow {
  const each = Math.round(bytes / rounds);
  return {
    what: 'bytes on disk for each round',
    value: each,
    bar: '<= 6000',
    ok: rounds < 1000 || each <= 6000,
  };
}
