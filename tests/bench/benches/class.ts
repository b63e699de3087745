// Forty tables of one class on one server: a step and its reveal, a pass and its result, the last review, the report.
import path from 'node:path';
import { setImmediate, setTimeout as wait } from 'node:timers/promises';
import { startPageServer } from '../../../client/tools/page-server.ts';
import type { Review } from '../../../shared-engine/analysis/review/review.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { botRandom } from '../../../shared-engine/bots/finish-round.ts';
import { usesRollouts } from '../../../shared-engine/bots/rollout-bot.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import { STYLES, type StyleName } from '../../../shared-engine/policy/styles.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import { stepOf } from '../../../shared-engine/rules/exchange/pending-decision.ts';
import type { Step } from '../../../shared-engine/rules/exchange/schedule.ts';
import { act, bigScreenOf, joinAll, openClass, reportOf, type Teacher } from '../../kit/class-room.ts';
import { dealOf, drillOf } from '../../kit/drills.ts';
import { isAsked, isClosed, ownView } from '../../kit/http-client.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Peer } from '../../kit/sockets.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import type { Bench, Figures } from '../bench.ts';

const TABLES = 40;
/** Deals that the report is about. */
const DEALS = 5;
/** How long players think about a step of the first deal, in milliseconds: at least, and at most. */
const THINKING_MS = [20_000, 40_000] as const;
/** All choose within this time in the second deal, in milliseconds. */
const RUSH_MS = 1000;
/** Players of the later deals who play differently: the report is as long, and is known in minutes. */
const DIFFERENT = 8;
/** How long the costs of a step, the reviews of a deal and those of the report are waited for, in milliseconds. */
const REVEAL_TIMEOUT_MS = 60_000;
const REVIEWS_TIMEOUT_MS = 120_000;
const REPORT_TIMEOUT_MS = 240_000;

export const bench: Bench = {
  summary:
    'Forty tables of one class: reveals while people think, all choosing within a second, reviews, report.',
  async run({ seed }) {
    const { folder, discard } = await temporaryFolder();
    const settings = { DATA_DIR: path.join(folder, 'data'), LOG_LEVEL: 'info' };
    const server = await startPageServer(settings);
    try {
      const evening = await openEvening({ url: server.origin }, stream(seed, 'class bench'));
      const held = await measureHeld(evening);
      const rush = await measureRush(evening);
      const warm = await measureReport(evening);
      await server.stop();
      const again = await startPageServer(settings);
      try {
        const cold = await reportTime({ ...evening, server: { url: again.origin } });
        return { tables: TABLES, ...rush, ...held, ...warm, report_cold_s: hundredth(cold / 1000) };
      } finally {
        await again.stop();
      }
    } finally {
      await server.stop();
      await discard();
    }
  },
};

interface Evening {
  readonly server: { readonly url: string };
  readonly teacher: Teacher;
  readonly peers: readonly Peer[];
  readonly random: Random;
}

async function openEvening(server: Evening['server'], random: Random): Promise<Evening> {
  const deals = Array.from({ length: DEALS }, (_, n) =>
    dealOf({ kind: 'random', seed: seedNamed(`class bench ${n}`) }, { id: `deal-${n + 1}` }),
  );
  // With names every choice is told, so that every choice is analyzed before a cost is.
  const teacher = await openClass(server, drillOf(deals), { names: true });
  const names = Array.from({ length: TABLES }, (_, player) => `Player ${player + 1}`);
  const { peers } = await joinAll(server, teacher.code, names);
  return { server, teacher, peers, random };
}

/** A deal as a class plays it: everybody thinks, and each step is revealed as soon as the last has chosen. */
async function measureHeld(evening: Evening): Promise<Figures> {
  const { server, teacher, peers, random } = evening;
  const [least, most] = THINKING_MS;
  const reveals: (number | null)[] = [];
  await playDeal(evening, 1, {
    different: TABLES,
    // From the vote on players are at different steps, and none is revealed.
    after: (step) => (step === null ? random.below(RUSH_MS) : least + random.below(most - least)),
    async chosen(step) {
      if (step !== null) reveals.push(await timeToReveal(server, teacher, step));
    },
  });
  const closed = performance.now();
  await Promise.all(peers.map((peer) => peer.review()));
  const first = performance.now() - closed;
  const deep = await timeToDeepReviews(peers, closed);
  return {
    reveals: reveals.length,
    reveal_s: reveals.includes(null) ? null : hundredth(Math.max(...reveals.map(Number)) / 1000),
    reveals_s: reveals.map((ms) => (ms === null ? '-' : hundredth(ms / 1000))).join(' '),
    different_plays: new Set(peers.map((peer) => JSON.stringify(ownView(peer).record))).size,
    first_answers_s: tenth(first / 1000),
    reviews_s: deep === null ? null : tenth(deep / 1000),
  };
}

/** A deal in which all choose within a second, while what they choose is analyzed. */
async function measureRush(evening: Evening): Promise<Figures> {
  const waits = await playDeal(evening, 2, {
    different: DIFFERENT,
    after: () => evening.random.below(RUSH_MS),
    chosen: async () => {},
  });
  waits.sort((a, b) => a - b);
  return {
    seals: waits.length,
    seal_p50_ms: tenth(waits[Math.floor(waits.length * 0.5)]!),
    seal_p99_ms: tenth(waits[Math.floor(waits.length * 0.99)]!),
  };
}

interface Pace {
  /** So many different players; the others play like one of them. */
  readonly different: number;
  /** Milliseconds before a choice at this step; null where players are at different ones. */
  after(step: Step | null): number;
  /** Called when everybody has chosen there, while nobody goes on. */
  chosen(step: Step | null): Promise<void>;
}

/** One deal to its close; the waits from a choice to its result. */
async function playDeal(
  { server, teacher, peers }: Evening,
  deal: number,
  { different, after, chosen }: Pace,
): Promise<number[]> {
  await act(server, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === deal)));
  const waits: number[] = [];
  while (peers.some((peer) => !isClosed(peer))) {
    await Promise.all(peers.map((peer) => peer.untilTable(() => isAsked(peer) || isClosed(peer))));
    const steps = new Set(peers.flatMap((peer) => stepOf(ownView(peer).stage) ?? []));
    const [first] = steps;
    const step = steps.size === 1 && first && peers.every(isAsked) ? first : null;
    const choices: ReturnType<typeof answerOf>[] = [];
    for (const [player, peer] of peers.entries()) {
      choices.push(answerOf(peer, styleOf(player % different), `${player % different}`));
      // Forty players think at once; the sockets of none of them may fall silent meanwhile.
      await setImmediate();
    }
    const results = peers.map((peer, player) => timeToResult(peer, choices[player] ?? null, after(step)));
    waits.push(...(await Promise.all(results)).flat());
    await chosen(step);
  }
  return waits;
}

/** Milliseconds from the last choice to the costs of all choices; null after the timeout. */
async function timeToReveal(server: Evening['server'], teacher: Teacher, step: Step): Promise<number | null> {
  const began = performance.now();
  const kind = step === 'vote' ? 'vote' : step === 'courtesy-ask' ? 'ask' : 'pass';
  await act(server, teacher, { kind: 'show', shown: { seat: 0, step, kind, revealed: true } });
  for (;;) {
    const { spread } = await bigScreenOf(server, teacher);
    if (spread?.pending === 0) return performance.now() - began;
    if (performance.now() - began > REVEAL_TIMEOUT_MS) return null;
    await wait(50);
  }
}

/** The report of all deals, when nothing in it is being analyzed any more. */
async function measureReport(evening: Evening): Promise<Figures> {
  const { server, teacher } = evening;
  const atOnce = { different: DIFFERENT, after: () => 0, chosen: async () => {} };
  for (let deal = 3; deal <= DEALS; deal++) await playDeal(evening, deal, atOnce);
  const began = performance.now();
  let pending = 0;
  do {
    await wait(500);
    const { deals } = await reportOf(server, teacher);
    pending = deals.reduce((sum, deal) => sum + deal.pending, 0);
  } while (pending > 0 && performance.now() - began < REPORT_TIMEOUT_MS);
  const known = tenth((performance.now() - began) / 1000);
  const times = [];
  for (let ask = 0; ask < 5; ask++) times.push(await reportTime(evening));
  return {
    report_known_s: pending > 0 ? null : known,
    report_pending: pending,
    report_s: hundredth(Math.max(...times) / 1000),
  };
}

async function reportTime({ server, teacher }: Evening): Promise<number> {
  const began = performance.now();
  await reportOf(server, teacher);
  return performance.now() - began;
}

const PLAYED_BY = STYLES.filter((style) => !usesRollouts(style));

/** Players of different strength. */
function styleOf(player: number): StyleName {
  return PLAYED_BY[player % PLAYED_BY.length]!;
}

const kernel = createSwarKernel(houseCard());

function answerOf(peer: Peer, style: StyleName, noise: string) {
  if (!isAsked(peer)) return null;
  const view = ownView(peer);
  return chooseFor(style, view, kernel, botRandom(seedNamed(`${style} ${noise}`), stepOf(view.stage)!, 0));
}

/** Milliseconds from a choice to the table on which the step is over; none where nothing was asked. */
async function timeToResult(
  peer: Peer,
  choice: ReturnType<typeof answerOf>,
  after: number,
): Promise<number[]> {
  if (choice === null) return [];
  await wait(after);
  const steps = ownView(peer).record.steps.length;
  const began = performance.now();
  const answer = await peer.choose(choice);
  if (answer.kind === 'rejected') throw new Error(answer.message);
  await peer.untilTable(() => ownView(peer).record.steps.length > steps);
  return [performance.now() - began];
}

/** Milliseconds from the last close until every choice is deeply analyzed; null after the timeout. */
async function timeToDeepReviews(peers: readonly Peer[], closed: number): Promise<number | null> {
  for (;;) {
    if (peers.every((peer) => isDeep(latest(peer)))) return performance.now() - closed;
    if (performance.now() - closed > REVIEWS_TIMEOUT_MS) return null;
    await wait(100);
  }
}

function latest(peer: Peer): Review | undefined {
  const last = peer.messages.findLast((message) => message.kind === 'review');
  return last?.kind === 'review' ? last.review : undefined;
}

function isDeep(review: Review | undefined): boolean {
  return review?.choices.every(({ analysis }) => analysis.depth === 'deep') ?? false;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}

function hundredth(value: number): number {
  return Math.round(value * 100) / 100;
}
