// Second stage: the finalists on fresh worlds, look after look, until the choice made is decided or the worlds run out.
import type { Situation } from '../belief/situation.ts';
import { RESULT_WIDTH } from '../rollouts/batch.ts';
import type { Alternative } from './alternatives.ts';
import type { Budget } from './budget.ts';
import { type Estimate, estimate, meanOf } from './estimate.ts';
import type { Act, WorldSource } from './sampled-deals.ts';
import type { Screened } from './screen.ts';
import { type LookedAt, SMALL_LOSS, verdictOf } from './verdict.ts';

/** Batches of the second stage are numbered from here on, far from those of the first. */
const FRESH = 0x1_0000;

/** Chance that any of the intervals behind a verdict, over all rivals and looks, misses. */
export const VERDICT_ERROR = 0.05;

/** Chance that an alternative as good as the front is shown to be behind it, over all of them. */
const FRONT_ERROR = 0.025;

/** So many in front are few enough; more are told apart a while longer, even where the verdict has fallen. */
const FEW = 5;
const FRONT_BATCHES = 128;

/** So many rivals go on where a better one seems to exist and is not shown yet: any of them would do. */
const DECIDING = 3;

/**
 * Batches × alternatives of this stage at most: where few alternatives are left the looks go further than where many
 * are as good as each other.
 */
const MOST_WORK = 11_000;

/** An interval that is shown holds in 95 of 100 choices. */
const SHOWN_TAIL = 0.025;

export interface Raced {
  readonly alternative: Alternative;
  /** Own outlook at the close. */
  readonly outlook: Estimate;
  /** How far it is ahead of the choice made; 0 ± 0 for the choice itself. */
  readonly ahead: Estimate;
  /** The same right after the step, before anybody passes again. */
  readonly aheadAtOnce: Estimate;
  /** What the receiver's outlook gains over what a legal pass gives it on average; null where nothing is given. */
  readonly gift: Estimate | null;
  /** Not shown to be behind the front of the first stage. */
  readonly inFront: boolean;
}

export interface Race {
  readonly verdict: LookedAt;
  /** In the order of the first stage; the choice made is among them. */
  readonly finalists: readonly Raced[];
  readonly chosen: Raced;
  /** The rival that is spoken of: the front of the first stage, or the one that a verdict rests on. */
  readonly rival: Raced | null;
  /** Own outlook after a legal pass drawn at random; null where nothing is given. */
  readonly baseline: Estimate | null;
  readonly batches: number;
}

interface Runner {
  readonly alternative: Alternative;
  readonly luck: Float64Array;
  own: Float64Array;
  after: Float64Array;
  receiver: Float64Array;
  running: boolean;
}

export function race(
  source: WorldSource,
  situation: Situation,
  receiver: number | null,
  { finalists, luck }: Screened,
  chosen: Alternative,
  baseline: Act | null,
  { looks }: Budget,
): Race {
  const runners = finalists.map(
    (alternative, n): Runner => ({ ...runner(alternative), luck: luck[n] ?? new Float64Array(0) }),
  );
  const mean = runner(chosen);
  const played = runners.find(({ alternative }) => alternative === chosen)!;
  const rivals = runners.filter((other) => other !== played);
  const tail = VERDICT_ERROR / 2 / Math.max(1, looks.length * rivals.length);
  const frontTail = FRONT_ERROR / Math.max(1, rivals.length);
  const front = runners[0]!;
  const isInFront = (each: Runner): boolean => {
    const behind = between(front, each, frontTail);
    return each === front || behind.value - behind.within <= 0;
  };
  let verdict: LookedAt = 'too-close';
  let batches = 0;
  let work = 0;
  for (const planned of looks) {
    const running = runners.filter((each) => each.running);
    const taking = baseline === null ? running : [...running, mean];
    const acts = taking.map(
      ({ alternative }): Act =>
        () =>
          alternative.act,
    );
    if (baseline !== null) acts[acts.length - 1] = baseline;
    const look = Math.min(planned, batches + Math.floor((MOST_WORK - work) / taking.length));
    if (look <= batches) break;
    take(source.play(FRESH + batches, look - batches, acts).means, taking, situation.seat, receiver);
    work += (look - batches) * taking.length;
    batches = look;
    const ahead = rivals.map((rival) => between(rival, played, tail));
    if (verdict === 'too-close') verdict = verdictOf(ahead);
    const inFront = new Set(runners.filter(isInFront));
    if (verdict !== 'too-close' && (inFront.size <= FEW || look >= FRONT_BATCHES)) break;
    for (const rival of settled(rivals, ahead, verdict)) {
      const toldApart = look < FRONT_BATCHES && inFront.has(rival);
      if (rival !== front && !toldApart) rival.running = false;
    }
  }
  const raced = runners.map(
    (each): Raced => ({
      alternative: each.alternative,
      outlook: single(each.own),
      ahead: each === played ? { value: 0, within: 0 } : between(each, played, SHOWN_TAIL),
      aheadAtOnce: atOnce(each, played),
      gift: baseline === null || receiver === null ? null : giftOf(each, mean),
      inFront: isInFront(each),
    }),
  );
  const spoken = rivals.length === 0 ? null : spokenOf(rivals, played, verdict, tail);
  return {
    verdict,
    finalists: raced,
    chosen: raced[runners.indexOf(played)]!,
    rival: spoken && raced[runners.indexOf(spoken)]!,
    baseline: baseline === null ? null : single(mean.own),
    batches,
  };
}

function runner(alternative: Alternative): Runner {
  const none = new Float64Array(0);
  return { alternative, luck: none, own: none, after: none, receiver: none, running: true };
}

/**
 * Rivals that more worlds need not follow: once the verdict has fallen all of them, before that those that are not
 * ahead of the choice by more than the smallest loss, and all but a few while the best seems to be.
 */
function settled(rivals: readonly Runner[], ahead: readonly Estimate[], verdict: LookedAt): Runner[] {
  if (verdict !== 'too-close') return [...rivals];
  const running = rivals.flatMap((rival, n) => (rival.running ? [{ rival, ...ahead[n]! }] : []));
  running.sort((a, b) => b.value - a.value);
  const few = running.length > 0 && running[0]!.value > SMALL_LOSS ? DECIDING : running.length;
  return running
    .filter(({ value, within }, place) => place >= few || value + within <= SMALL_LOSS)
    .map(({ rival }) => rival);
}

/** Where a better one is shown to exist, the front if it is shown to be one, else the surest; otherwise the front. */
function spokenOf(rivals: readonly Runner[], played: Runner, verdict: LookedAt, tail: number): Runner {
  const sure = rivals.map((rival) => {
    const { value, within } = between(rival, played, tail);
    return value - within;
  });
  if (verdict !== 'better-exists' || sure[0]! > SMALL_LOSS) return rivals[0]!;
  return rivals[sure.indexOf(Math.max(...sure))]!;
}

function take(means: Float64Array, taking: readonly Runner[], seat: number, receiver: number | null): void {
  const batches = means.length / (taking.length * RESULT_WIDTH);
  const column = (a: number, part: number): Float64Array =>
    Float64Array.from({ length: batches }, (_, b) => means[(b * taking.length + a) * RESULT_WIDTH + part]!);
  for (const [a, each] of taking.entries()) {
    each.own = joined(each.own, column(a, seat));
    each.after = joined(each.after, column(a, 4 + seat));
    if (receiver !== null) each.receiver = joined(each.receiver, column(a, receiver));
  }
}

/** How far one is ahead of the other on the worlds that both have seen. */
function between(one: Runner, other: Runner, tail: number): Estimate {
  const known = one.luck.length > 0 ? less(one.luck, other.luck) : null;
  return estimate({ values: less(one.own, other.own), controls: less(one.after, other.after) }, known, tail);
}

function atOnce(one: Runner, other: Runner): Estimate {
  const values = less(one.after, other.after);
  return estimate({ values, controls: values }, null, SHOWN_TAIL);
}

function giftOf(each: Runner, mean: Runner): Estimate {
  const values = less(each.receiver, mean.receiver);
  return estimate({ values, controls: values }, null, SHOWN_TAIL);
}

function single(values: Float64Array): Estimate {
  const { within } = estimate({ values, controls: values }, null, SHOWN_TAIL);
  return { value: meanOf(values), within };
}

function less(a: Float64Array, b: Float64Array): Float64Array {
  return Float64Array.from({ length: Math.min(a.length, b.length) }, (_, n) => a[n]! - b[n]!);
}

function joined(a: Float64Array, b: Float64Array): Float64Array {
  const both = new Float64Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
