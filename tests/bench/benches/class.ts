// Forty tables of one class on one server: a pass and its result, a step and its reveal, the last review, the report.
import path from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { startPageServer } from '../../../client/tools/page-server.ts';
import type { Review } from '../../../shared-engine/analysis/review/review.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { botRandom } from '../../../shared-engine/bots/finish-round.ts';
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
/** All choose within this time, in milliseconds. */
const SPREAD_MS = 1000;
/** How long deep analyses are waited for, in milliseconds. */
const TIMEOUT_MS = 240_000;

/** Deals that the report is about. */
const DEALS = 5;

export const bench: Bench = {
  summary:
    'Forty tables of one class: pass to result with all choosing within a second, reveals, reviews, report.',
  async run({ seed }) {
    const { folder, discard } = await temporaryFolder();
    const settings = { DATA_DIR: path.join(folder, 'data'), LOG_LEVEL: 'info' };
    const server = await startPageServer(settings);
    try {
      const at = { url: server.origin };
      const evening = await openEvening(at, stream(seed, 'apart'), (player) => `${player}`);
      const apart = await measure(evening);
      const warm = await measureReport(evening);
      await server.stop();
      const again = await startPageServer(settings);
      try {
        const cold = await reportTime({ ...evening, server: { url: again.origin } });
        const other = { url: again.origin };
        const alike = await measure(await openEvening(other, stream(seed, 'alike'), () => 'same'));
        return {
          ...apart,
          ...warm,
          report_cold_s: hundredth(cold / 1000),
          alike_plays: alike.different_plays!,
          alike_reviews_s: alike.reviews_s!,
        };
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
  /** Names the stream of random draws that tells one player from another of the same strength. */
  noiseOf(player: number): string;
}

async function openEvening(
  server: Evening['server'],
  random: Random,
  noiseOf: Evening['noiseOf'],
): Promise<Evening> {
  const deals = Array.from({ length: DEALS }, (_, n) =>
    dealOf({ kind: 'random', seed: seedNamed(`class bench ${n}`) }, { id: `deal-${n + 1}` }),
  );
  // With names every choice is told, so that every choice is analyzed before a cost is.
  const teacher = await openClass(server, drillOf(deals), { names: true });
  const names = Array.from({ length: TABLES }, (_, player) => `Player ${player + 1}`);
  const { peers } = await joinAll(server, teacher.code, names);
  return { server, teacher, peers, random, noiseOf };
}

async function measure(evening: Evening): Promise<Figures> {
  const { peers } = evening;
  const { waits, reveals } = await playDeal(evening, 1, SPREAD_MS);
  const closed = performance.now();
  await Promise.all(peers.map((peer) => peer.review()));
  const first = performance.now() - closed;
  const deep = await timeToDeepReviews(peers, closed);
  waits.sort((a, b) => a - b);
  return {
    tables: TABLES,
    seals: waits.length,
    seal_p50_ms: tenth(waits[Math.floor(waits.length * 0.5)]!),
    seal_p99_ms: tenth(waits[Math.floor(waits.length * 0.99)]!),
    reveal_s: hundredth(Math.max(...reveals) / 1000),
    different_plays: new Set(peers.map((peer) => JSON.stringify(ownView(peer).record))).size,
    reviews_s: deep === null ? null : tenth(deep / 1000),
    first_answers_s: tenth(first / 1000),
  };
}

/**
 * One deal to its close. Where choices are spread over some time, each step is revealed as soon as all have chosen, and the
 * time until its costs are on the big screen is taken while nobody goes on.
 */
async function playDeal(
  { server, teacher, peers, random, noiseOf }: Evening,
  deal: number,
  spreadMs: number,
) {
  await act(server, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === deal)));
  const waits: number[] = [];
  const reveals: number[] = [];
  while (peers.some((peer) => !isClosed(peer))) {
    await Promise.all(peers.map((peer) => peer.untilTable(() => isAsked(peer) || isClosed(peer))));
    const steps = new Set(peers.flatMap((peer) => stepOf(ownView(peer).stage) ?? []));
    const choices: ReturnType<typeof answerOf>[] = [];
    for (const [player, peer] of peers.entries()) {
      choices.push(answerOf(peer, styleOf(player), noiseOf(player)));
      // Forty players think at once; the sockets of none of them may fall silent meanwhile.
      await setImmediate();
    }
    const results = peers.map((peer, player) =>
      timeToResult(peer, choices[player] ?? null, spreadMs === 0 ? 0 : random.below(spreadMs)),
    );
    waits.push(...(await Promise.all(results)).flat());
    const [step] = steps;
    // From the vote on players are at different steps.
    if (spreadMs > 0 && steps.size === 1 && step) reveals.push(await timeToReveal(server, teacher, step));
  }
  return { waits, reveals };
}

/** Milliseconds from the reveal to the costs of all choices. */
async function timeToReveal(server: Evening['server'], teacher: Teacher, step: Step): Promise<number> {
  const began = performance.now();
  const kind = step === 'vote' ? 'vote' : step === 'courtesy-ask' ? 'ask' : 'pass';
  await act(server, teacher, { kind: 'show', shown: { seat: 0, step, kind, revealed: true } });
  for (;;) {
    const { spread } = await bigScreenOf(server, teacher);
    if (spread?.pending === 0 || performance.now() - began > TIMEOUT_MS) return performance.now() - began;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** The report of all deals, when nothing in it is being analyzed any more. */
async function measureReport(evening: Evening): Promise<Figures> {
  const { server, teacher } = evening;
  for (let deal = 2; deal <= DEALS; deal++) await playDeal(evening, deal, 0);
  const began = performance.now();
  for (;;) {
    const { deals } = await reportOf(server, teacher);
    if (deals.every(({ pending }) => pending === 0) || performance.now() - began > TIMEOUT_MS) break;
    await new Promise((resolve) => setTimeout(resolve, 500));
  }
  const known = tenth((performance.now() - began) / 1000);
  const times = [];
  for (let ask = 0; ask < 5; ask++) times.push(await reportTime(evening));
  return { report_known_s: known, report_s: hundredth(Math.max(...times) / 1000) };
}

async function reportTime({ server, teacher }: Evening): Promise<number> {
  const began = performance.now();
  await reportOf(server, teacher);
  return performance.now() - began;
}

/** Players of different strength. */
function styleOf(player: number): StyleName {
  return STYLES[player % STYLES.length]!;
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
  await new Promise((resolve) => setTimeout(resolve, after));
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
    if (performance.now() - closed > TIMEOUT_MS) return null;
    await new Promise((resolve) => setTimeout(resolve, 100));
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
