// Card files against a server: too many hands, too deep, too many values; and the largest card that is allowed, sixty times.
import { CLASSES_PATH, classPath, ROOMS_PATH } from '../../../shared-engine/protocol/paths.ts';
import { TERMS } from '../../kit/class-room.ts';
import { dealOf, drillOf } from '../../kit/drills.ts';
import { ALONE, post } from '../../kit/http-client.ts';
import { hostileCard, largestCard } from '../../kit/large-cards.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Size } from '../proof.ts';
import type { Finding } from './finding.ts';
import { cpuMs, memoryMb, metricOf, type WatchedServer, waitedDuring } from './watched-server.ts';

const PART = 'cards';
const MAX_MS = 50;
const MAX_MB = 1;
/** How much longer somebody else may wait while a card is checked than while a class opens with the house card. */
const MAX_WAIT_MS = 250;

const DRILL = drillOf([dealOf({ kind: 'random', seed: seedNamed('siege of cards') })]);

/** Bounds of time and memory are looked at in the full size alone: a small one is too short to tell. */
export async function siegeCards(server: WatchedServer, size: Size): Promise<Finding[]> {
  const hostile = JSON.stringify(hostileCard());
  const findings = [await rejected(server, hostile, 'a file of 100 KB for 3.6 million hands')];
  if (size === 'full') {
    const deep = `${'['.repeat(50_000)}${']'.repeat(50_000)}`;
    const wide = JSON.stringify(Array.from({ length: 200_000 }, () => 0));
    findings.push(await rejected(server, deep, 'a file nested 50,000 deep'));
    findings.push(await rejected(server, wide, 'a file of 200,000 values'));
  }
  return [...findings, ...(await largestOf(server, size))];
}

/** `card` is the text of a file, for some that no program could write out again. */
async function rejected({ url }: WatchedServer, card: string, what: string): Promise<Finding> {
  const body = JSON.stringify({ ...ALONE, card: 'here' }).replace('"here"', card);
  const headers = { 'content-type': 'application/json' };
  const response = await fetch(`${url}${ROOMS_PATH}`, { method: 'POST', headers, body });
  const { code, problems } = await response.json();
  const holds = code === 'bad-card' && problems.length > 0;
  return row(what, 'rejected as bad-card, in words', `${code}: ${problems?.[0]}`, holds);
}

async function largestOf(server: WatchedServer, size: Size): Promise<Finding[]> {
  const compiledBefore = await metricOf(server, 'cards_compiled_total');
  const card = largestCard(`Siege ${compiledBefore}`);
  const open = (file: unknown) =>
    waitedDuring(server, () =>
      post(`${server.url}${CLASSES_PATH}`, { drill: DRILL, terms: TERMS, card: file }),
    );
  const usual = await open(null);
  const opening = await open(card);
  const { code } = await opening.result.json();
  const tables = size === 'full' ? 60 : 12;
  const [ms, mb] = [cpuMs(server), memoryMb(server)];
  let joined = 0;
  for (let nth = 0; nth < tables; nth++) {
    const response = await post(`${server.url}${classPath(code, 'players')}`, { name: `Player ${nth}` });
    if (response.status === 201) joined++;
  }
  const perTable = (before: number | null, after: number | null) =>
    before === null || after === null ? null : (after - before) / tables;
  const cost = { ms: perTable(ms, cpuMs(server)), mb: perTable(mb, memoryMb(server)) };
  const compiled = (await metricOf(server, 'cards_compiled_total')) - compiledBefore;
  const counted: Finding[] = [
    row(`tables opened with the largest card, of ${tables}`, `${tables}`, `${joined}`, joined === tables),
    row('times that card was compiled', '1', `${compiled}`, compiled === 1),
  ];
  if (size === 'small') return counted;
  return [
    ...counted,
    bounded('longest wait of others for its check, in ms', MAX_WAIT_MS, opening.longest - usual.longest),
    bounded('processor time of each further table, in ms', MAX_MS, cost.ms),
    bounded('memory of each further table, in MB', MAX_MB, cost.mb),
  ];
}

/** What the system does not tell breaks no bound. */
function bounded(what: string, bar: number, found: number | null): Finding {
  return row(
    what,
    `at most ${bar}`,
    found === null ? 'not told' : found.toFixed(2),
    found === null || found <= bar,
  );
}

function row(what: string, bar: string, found: string, holds: boolean): Finding {
  return { part: PART, what, bar, found, holds };
}
