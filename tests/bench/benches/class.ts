// Forty tables of one class on one server: from a pass to its result, and from the last close to the last review.
import path from 'node:path';
import { startPageServer } from '../../../client/tools/page-server.ts';
import type { Review } from '../../../shared-engine/analysis/review/review.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { botRandom } from '../../../shared-engine/bots/finish-round.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import { STYLES, type StyleName } from '../../../shared-engine/policy/styles.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import { stepOf } from '../../../shared-engine/rules/exchange/pending-decision.ts';
import { act, joinAll, openClass, type Teacher } from '../../kit/class-room.ts';
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

export const bench: Bench = {
  summary: 'Forty tables of one class: pass to result with all choosing within a second, and the reviews.',
  async run({ seed }) {
    const { folder, discard } = await temporaryFolder();
    const server = await startPageServer({ DATA_DIR: path.join(folder, 'data'), LOG_LEVEL: 'info' });
    try {
      const url = { url: server.origin };
      const apart = await measure(url, stream(seed, 'apart'), (player) => `${player}`);
      const alike = await measure(url, stream(seed, 'alike'), () => 'same');
      return { ...apart, alike_plays: alike.different_plays!, alike_reviews_s: alike.reviews_s! };
    } finally {
      await server.stop();
      await discard();
    }
  },
};

/** `noiseOf` names the stream of random draws that tells one player from another of the same strength. */
async function measure(
  server: { readonly url: string },
  random: Random,
  noiseOf: (player: number) => string,
): Promise<Figures> {
  const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('class bench') })]);
  const teacher: Teacher = await openClass(server, drill);
  const names = Array.from({ length: TABLES }, (_, player) => `Player ${player + 1}`);
  const { peers } = await joinAll(server, teacher.code, names);
  await act(server, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === 1)));
  const waits: number[] = [];
  while (peers.some((peer) => !isClosed(peer))) {
    await Promise.all(peers.map((peer) => peer.untilTable(() => isAsked(peer) || isClosed(peer))));
    const choices = peers.map((peer, player) => answerOf(peer, styleOf(player), noiseOf(player)));
    const results = peers.map((peer, player) =>
      timeToResult(peer, choices[player] ?? null, random.below(SPREAD_MS)),
    );
    waits.push(...(await Promise.all(results)).flat());
  }
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
    different_plays: new Set(peers.map((peer) => JSON.stringify(ownView(peer).record))).size,
    reviews_s: deep === null ? null : tenth(deep / 1000),
    first_answers_s: tenth(first / 1000),
  };
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
