// What a server as it ships carries with its reviews: forty tables of four, or 160 people alone, a step every forty seconds.
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { botRandom } from '../../../shared-engine/bots/finish-round.ts';
import { stepOf } from '../../../shared-engine/rules/exchange/pending-decision.ts';
import {
  ALONE,
  deal,
  isAsked,
  isClosed,
  openRoom,
  ownView,
  sitDown,
  tableOfFour,
} from '../../kit/http-client.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Peer } from '../../kit/sockets.ts';
import { freePort, temporaryFolder } from '../../kit/temporary.ts';
import type { Bench, BenchInput, Figures } from '../bench.ts';
import { startServer } from '../rooms/processes.ts';
import { rounded } from '../rooms/side-by-side.ts';

const BUILT = new URL('../../../dist/server/main.js', import.meta.url).pathname;

interface Amounts {
  /** Of four people; alone there are as many people at as many tables. */
  readonly tables: number;
  /** How long a table takes for a step, and within which time its people answer, in milliseconds. */
  readonly stepMs: number;
}

const AMOUNTS: Readonly<Record<BenchInput['size'], Amounts>> = {
  small: { tables: 2, stepMs: 4000 },
  full: { tables: 40, stepMs: 40_000 },
};
/** The share of choices whose deep analysis has arrived is taken so long after the close. */
const PATIENCE_MS = 5000;
const LOOK_MS = 500;

/** What is not set has its default; the limits of one address would meet all people of the bench. */
const SETTINGS = {
  HOST: '127.0.0.1',
  PORT: '0',
  REQUESTS_PER_MINUTE: '0',
  ROOMS_PER_MINUTE: '0',
  SOCKETS_PER_IP: '0',
};

export const bench: Bench = {
  summary:
    'Share of choices judged within 5 s of the close on one core: 40 tables of four, with no page and with half of the pages judging their own seat, and 160 of one.',
  async run({ seed, size }) {
    const { tables, stepMs } = AMOUNTS[size];
    const four = await carried({ people: 4, judging: 0, tables, stepMs, seed });
    const half = await carried({ people: 4, judging: 2, tables, stepMs, seed });
    const alone = await carried({ people: 1, judging: 0, tables: 4 * tables, stepMs, seed });
    return { ...four, ...named('half', half), ...named('alone', alone) };
  },
};

function named(prefix: string, figures: Figures): Figures {
  return Object.fromEntries(Object.entries(figures).map(([key, figure]) => [`${prefix}_${key}`, figure]));
}

interface Sitting extends Amounts {
  readonly people: 1 | 4;
  /** Of them, how many have a page that judges their choices itself: what it finds is not looked at here. */
  readonly judging: 0 | 2;
  readonly seed: string;
}

async function carried({ seed, ...sitting }: Sitting): Promise<Figures> {
  const { folder, discard } = await temporaryFolder();
  const metrics = await freePort();
  const server = await startServer([BUILT], { ...SETTINGS, DATA_DIR: folder, METRICS_PORT: `${metrics}` });
  server.dropLines();
  const ages = watchAges(`http://127.0.0.1:${metrics}/metrics`);
  try {
    const used = server.cpu();
    const judged = await Promise.all(
      Array.from({ length: sitting.tables }, (_, table) =>
        evening(server, table, { ...sitting, seed: `${seed} ${table}` }),
      ),
    );
    const choices = judged.flat();
    const shares = judged.map(shareOf).sort((a, b) => a - b);
    return {
      judged_share_5s: rounded(shareOf(choices)),
      // Whether the queue is fair: the table that fared worst beside the one in the middle.
      worst_table_share: rounded(shares[0]),
      median_table_share: rounded(shares[Math.floor(shares.length / 2)]),
      tables: sitting.tables,
      choices: choices.length,
      ...ages.stop(),
      server_cpu_s: Math.round((server.cpu() - used) / 1000),
    };
  } finally {
    ages.stop();
    await server.kill();
    await discard();
  }
}

/** One round of one table, begun in its turn; for each choice that the server is to judge whether it was in time. */
async function evening(
  at: { readonly url: string },
  table: number,
  { people, judging, tables, stepMs, seed }: Sitting,
): Promise<boolean[]> {
  await pause((stepMs / tables) * table);
  const peers = people === 4 ? await dealtFour(at) : [await dealtAlone(at)];
  for (const peer of peers.slice(0, judging)) {
    peer.send({ kind: 'analyzed-by', id: peer.newId(), round: peer.table.round, by: 'page' });
  }
  while (!peers.every(isClosed)) {
    await Promise.all(
      peers.map((peer, seat) => answerIn(peer, (stepMs * (seat + 1)) / people, `${seed} ${seat}`)),
    );
    // By courtesy not everybody is asked.
    while (!peers.some(isAsked) && !peers.every(isClosed)) await pause(20);
  }
  await pause(PATIENCE_MS);
  const judged = peers.slice(judging).flatMap(judgedChoices);
  for (const peer of peers) peer.socket.terminate();
  return judged;
}

async function dealtFour(at: { readonly url: string }): Promise<readonly Peer[]> {
  const { peers } = await tableOfFour(at);
  await deal(peers);
  return peers;
}

/** Nobody has to say that they are ready: the first deal comes at once. */
async function dealtAlone(at: { readonly url: string }): Promise<Peer> {
  const peer = await sitDown(at, await openRoom(at, ALONE));
  await peer.untilTable(({ round }) => round === 1, 'the deal');
  return peer;
}

async function answerIn(peer: Peer, ms: number, noise: string): Promise<void> {
  await pause(ms);
  if (!isAsked(peer)) return;
  const view = ownView(peer);
  const random = botRandom(seedNamed(noise), stepOf(view.stage)!, view.record.seat);
  const choice = chooseFor('typical', view, houseKernel, random);
  if (choice === null) return;
  const reply = await peer.choose(choice);
  if (reply.kind === 'rejected') throw new Error(reply.message);
}

function judgedChoices(peer: Peer): boolean[] {
  const last = peer.messages.findLast((message) => message.kind === 'review');
  const made = ownView(peer).record.steps.length;
  if (last?.kind !== 'review') return Array.from({ length: made }, () => false);
  return last.review.choices.map(({ analysis }) => analysis.depth === 'deep');
}

function shareOf(judged: readonly boolean[]): number {
  return judged.filter(Boolean).length / judged.length;
}

/** The age of the oldest work that waits, looked at all the time. */
function watchAges(url: string) {
  const ages: number[] = [];
  const timer = setInterval(async () => {
    const text = await fetch(url).then(
      (answer) => answer.text(),
      () => '',
    );
    const age = /^\S*tasks_oldest_wait_seconds(?:\{[^}]*\})? (\S+)$/m.exec(text)?.[1];
    if (age !== undefined) ages.push(Number(age));
  }, LOOK_MS);
  return {
    stop(): Figures {
      clearInterval(timer);
      ages.sort((a, b) => a - b);
      const quantile = (share: number) => rounded(ages[Math.floor(ages.length * share)]);
      return { queue_age_p50_s: quantile(0.5), queue_age_p99_s: quantile(0.99) };
    },
  };
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
