// Forty tables of one class on one server: from a seal to its result, and from the last close to the last review.
import path from 'node:path';
import type { Review } from '../../../shared-engine/index.ts';
import {
  botStream,
  chooseFor,
  createKernel,
  houseCard,
  openStep,
  type Random,
  STYLES,
  type StyleName,
  stream,
} from '../../../shared-engine/index.ts';
import { act, joinAll, openClass, type Teacher } from '../../kit/class-room.ts';
import { dealOf, drillOf } from '../../kit/drills.ts';
import { temporaryFolder } from '../../kit/folder.ts';
import { isAsked, isClosed, ownView } from '../../kit/http-client.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Peer } from '../../kit/sockets.ts';
import type { Bench, Figures } from '../bench.ts';

const TABLES = 40;
/** All seal within this time, in milliseconds. */
const WITHIN = 1000;
/** How long deeper answers are waited for, in milliseconds. */
const PATIENCE = 240_000;

export const bench: Bench = {
  summary: 'Forty tables of one class: seal to result with all sealing within a second, and the reviews.',
  async run({ seed }) {
    const { folder, discard } = await temporaryFolder();
    const server = await startPageServer({ DATA_DIR: path.join(folder, 'data'), LOG_LEVEL: 'info' });
    try {
      const url = { url: server.origin };
      const apart = await measure(url, stream(seed, 'apart'), (pupil) => `${pupil}`);
      const alike = await measure(url, stream(seed, 'alike'), () => 'same');
      return { ...apart, alike_plays: alike.different_plays!, alike_reviews_s: alike.reviews_s! };
    } finally {
      await server.stop();
      await discard();
    }
  },
};

/** `noiseOf` names what tells one pupil's whims from another's of the same strength. */
async function measure(
  server: { readonly url: string },
  random: Random,
  noiseOf: (pupil: number) => string,
): Promise<Figures> {
  const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('class bench') })]);
  const teacher: Teacher = await openClass(server, drill);
  const names = Array.from({ length: TABLES }, (_, pupil) => `Pupil ${pupil + 1}`);
  const { peers } = await joinAll(server, teacher.code, names);
  await act(server, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === 1)));
  const waits: number[] = [];
  while (peers.some((peer) => !isClosed(peer))) {
    await Promise.all(peers.map((peer) => peer.untilTable(() => isAsked(peer) || isClosed(peer))));
    const choices = peers.map((peer, pupil) => answerOf(peer, styleOf(pupil), noiseOf(pupil)));
    const results = peers.map((peer, pupil) => sealed(peer, choices[pupil] ?? null, random.below(WITHIN)));
    waits.push(...(await Promise.all(results)).flat());
  }
  const closed = performance.now();
  await Promise.all(peers.map((peer) => peer.review()));
  const first = performance.now() - closed;
  const deep = await deeplyJudged(peers, closed);
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

/** Pupils of different strength. */
function styleOf(pupil: number): StyleName {
  return STYLES[pupil % STYLES.length]!;
}

const kernel = createKernel(houseCard());

function answerOf(peer: Peer, style: StyleName, noise: string) {
  if (!isAsked(peer)) return null;
  const view = ownView(peer);
  return chooseFor(style, view, kernel, botStream(seedNamed(`${style} ${noise}`), openStep(view.stage)!, 0));
}

/** Milliseconds from the seal to the table on which the step is over; none where nothing was asked. */
async function sealed(peer: Peer, choice: ReturnType<typeof answerOf>, after: number): Promise<number[]> {
  if (choice === null) return [];
  await new Promise((resolve) => setTimeout(resolve, after));
  const steps = ownView(peer).record.steps.length;
  const began = performance.now();
  const answer = await peer.choose(choice);
  if (answer.kind === 'refused') throw new Error(answer.sentence);
  await peer.untilTable(() => ownView(peer).record.steps.length > steps);
  return [performance.now() - began];
}

/** From the last close until each review is judged in full; null when that takes longer than the patience. */
async function deeplyJudged(peers: readonly Peer[], closed: number): Promise<number | null> {
  for (;;) {
    if (peers.every((peer) => isDeep(latest(peer)))) return performance.now() - closed;
    if (performance.now() - closed > PATIENCE) return null;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

function latest(peer: Peer): Review | undefined {
  const last = peer.messages.findLast((message) => message.kind === 'review');
  return last?.kind === 'review' ? last.review : undefined;
}

function isDeep(review: Review | undefined): boolean {
  return review?.choices.every(({ judgement }) => judgement.depth === 'deep') ?? false;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
