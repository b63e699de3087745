// Sentences say what was computed: their numbers are in the review, and what they advise does what they say.

import type { Situation } from '../../../shared-engine/analysis/belief/situation.ts';
import { actionOf } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import { seedsFor } from '../../../shared-engine/analysis/comparison/analyze.ts';
import {
  type Budget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import { meanOf } from '../../../shared-engine/analysis/comparison/estimate.ts';
import {
  always,
  column,
  createDealSource,
} from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import type { DeepAnalysis } from '../../../shared-engine/analysis/review/analysis.ts';
import {
  analyzeDecision,
  decisionsIn,
  withDeepAnalysis,
} from '../../../shared-engine/analysis/review/deep-analysis.ts';
import type { PassReview, Review } from '../../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import { faceIndex } from '../../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../../shared-engine/rules/view/record.ts';
import { inTen, numbersIn, numbersInText, shownAs } from '../../kit/numbers-in-text.ts';
import { houseKernel, passesOf, records, toldOf } from '../../kit/reviews.ts';
import { GLANCE } from '../analysis/budgets.ts';
import { analyst } from '../analysis/choices.ts';
import { percent, shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const ROUNDS: Record<Size, number> = { small: 2, full: 60 };
const SWAPS: Record<Size, number> = { small: 12, full: 500 };
const ALTERNATIVES: Record<Size, number> = { small: 4, full: 60 };
const REASONS: Record<Size, number> = { small: 2, full: 60 };
/** Of two, one may lie at the border. */
const REASON_BARS: Record<Size, number> = { small: 0.5, full: 0.85 };

/** Reasons are looked at as closely as the product does; which pass is better, less so. */
const REASON_BUDGET: Budget = { ...SHALLOW_BUDGET, why: DEEP_BUDGET.why };
/** Deals that no analysis has used, and enough of them that the share of a reason hardly moves. */
const LONG_RUN = { first: 0x8_0000, batches: 160 };

export const proof: Proof = {
  summary: 'Numbers in sentences are numbers of the review, and the advice does what its sentence says.',
  async run({ seed, size }) {
    return [
      numbers(`${seed} numbers`, ROUNDS[size]),
      swaps(seed, SWAPS[size]),
      alternatives(seed, ALTERNATIVES[size]),
      reasons(seed, REASONS[size], REASON_BARS[size]),
    ];
  },
};

function numbers(name: string, rounds: number): ProofRow {
  let said = 0;
  const unknown: string[] = [];
  for (const record of records(name, rounds)) {
    let review: Review = reviewRound(record, houseKernel);
    for (const nth of review.choices.keys()) {
      review = withDeepAnalysis(review, nth, analyzeDecision(analyst, record, nth, { budget: GLANCE }));
    }
    const sections = Object.values(review.sections);
    for (const [nth, choice] of review.choices.entries()) {
      const { analysis } = choice;
      const shares = analysis.depth === 'deep' && analysis.why ? inTen(numbersIn(analysis.why)) : [];
      const known = shownAs([
        ...numbersIn(choice).flatMap((value) => [value, Math.abs(value)]),
        ...(analysis.depth === 'deep' ? endsTold(analysis) : []),
        ...shares,
      ]);
      const text = toldOf(review, nth);
      const numbers = numbersInText(text, sections);
      said += numbers.length;
      unknown.push(
        ...numbers.filter((number) => !known.has(number)).map((number) => `${number} in “${text}”`),
      );
    }
  }
  return {
    what: `numbers in sentences of ${rounds} reviews, deep analyses included, found in their choice`,
    value: [said - unknown.length, ...unknown.slice(0, 2)].join('; '),
    bar: `all ${said}`,
    ok: unknown.length === 0 && said > 0,
  };
}

/** Where something is a little better, the ends of its interval are told, or what another choice may bring at most. */
function endsTold({ loss, finalists }: DeepAnalysis): readonly number[] {
  const least = loss === null ? [] : [loss.value - loss.halfWidth];
  return [...least, ...finalists.map(({ difference: { value, halfWidth } }) => value + halfWidth)];
}

/** The advice of the quick review, followed: the pass is exchanged for the one named, and reviewed again. */
function swaps(seed: string, wanted: number): ProofRow {
  let tried = 0;
  let moved = 0;
  for (let n = 0; tried < wanted; n += 8) {
    for (const record of records(`${seed} swaps ${n}`, 8)) {
      const review = reviewRound(record, houseKernel);
      for (const [nth, pass] of review.choices.entries()) {
        if (tried === wanted || pass.kind !== 'pass' || pass.loss < 0.25) continue;
        tried++;
        if (doesWhatItSays(record, pass, toldOf(review, nth))) moved++;
      }
    }
  }
  return {
    what: `of ${wanted} named swaps, those that move the named part the stated way`,
    value: shareText(moved, wanted),
    bar: 'at least 95 %',
    ok: moved >= 0.95 * wanted,
  };
}

function doesWhatItSays(record: SeatRecord, pass: PassReview, told: string): boolean {
  const nth = record.steps.findIndex((step) => step.kind === 'move' && step.step === pass.step);
  const steps = record.steps
    .slice(0, nth + 1)
    .map((step, n) => (n === nth && step.kind === 'move' ? { ...step, gave: pass.best.tiles } : step));
  const followed = passesOf(reviewRound({ ...record, steps }, houseKernel)).at(-1)!;
  const saved = pass.parts.broken.filter(
    ({ face }) => !followed.parts.broken.some((one) => one.face === face),
  );
  if (/ then stays? together/.test(told) && saved.length === 0) return false;
  if (/ sections within a tile/.test(told)) return followed.parts.sectionsKept > pass.parts.sectionsKept;
  if (/ away, not /.test(told)) return followed.played.toGo < pass.played.toGo;
  return followed.played.nearness > pass.played.nearness;
}

/** An alternative that is said to be clearly better, chosen instead: the choice it replaced must come out worse. */
function alternatives(seed: string, wanted: number): ProofRow {
  let tried = 0;
  let behind = 0;
  for (let n = 0; tried < wanted; n += 4) {
    for (const record of records(`${seed} rivals ${n}`, 4)) {
      for (const [nth, { subject, offered }] of decisionsIn(record).entries()) {
        if (tried === wanted || subject !== 'tiles') continue;
        const analysis = analyzeDecision(analyst, record, nth, { budget: SHALLOW_BUDGET });
        if (analysis.verdict !== 'costly') continue;
        tried++;
        const place = record.steps.indexOf(offered.chosen);
        const gave = analysis.finalists[analysis.bestAlternative!]!.tiles;
        const steps = record.steps
          .slice(0, place + 1)
          .map((step, m) => (m === place && step.kind === 'move' ? { ...step, gave } : step));
        const changed = analyzeDecision(analyst, { ...record, steps }, nth, { budget: SHALLOW_BUDGET });
        const old = analysis.finalists[analysis.played]!.tiles.join();
        const again = changed.finalists.find(({ tiles }) => tiles.join() === old);
        // Not among the finalists any more is worse as well.
        if (again === undefined || again.difference.value < 0) behind++;
      }
    }
  }
  return {
    what: `of ${wanted} alternatives called clearly better, those that beat the choice when chosen instead`,
    value: shareText(behind, wanted),
    bar: `at least ${percent(0.95)} %`,
    ok: behind >= 0.95 * wanted,
  };
}

/** The one exchange that is called at least half of the difference, on a long run of other deals. */
function reasons(seed: string, wanted: number, bar: number): ProofRow {
  let tried = 0;
  let held = 0;
  for (let n = 0; tried < wanted; n += 4) {
    for (const record of records(`${seed} reasons ${n}`, 4)) {
      for (const [nth, { subject, offered }] of decisionsIn(record).entries()) {
        if (tried === wanted || subject !== 'tiles') continue;
        const analysis = analyzeDecision(analyst, record, nth, { budget: REASON_BUDGET });
        if (analysis.why === null || analysis.why.reason === null || analysis.why.keep.length < 2) continue;
        tried++;
        if (longRunShare(offered.situation, analysis) >= 0.5) held++;
      }
    }
  }
  return {
    what: `of ${wanted} exchanges of one tile told to make at least half of the difference, those that do in a long run`,
    value: shareText(held, wanted),
    bar: `at least ${percent(bar)} %`,
    ok: held >= bar * wanted,
  };
}

/** What the exchange brings of what the pass that is named brings. */
function longRunShare(
  situation: Situation,
  { finalists, played, bestAlternative, why }: DeepAnalysis,
): number {
  const { keep, pass } = why!.reason!;
  const gave = finalists[played]!.tiles;
  const place = gave.indexOf(keep);
  const passes = [gave, finalists[bestAlternative!]!.tiles, gave.with(place, pass)];
  const actions = passes.map((tiles) => always(actionOf(tiles.map(faceIndex), tiles.length)));
  const source = createDealSource(analyst, situation, seedsFor(analyst, situation, {}));
  const results = source.rollOut(LONG_RUN, actions);
  const [before, better, exchanged] = passes.map((_, action) =>
    meanOf(column(results, action, situation.seat)),
  );
  return (exchanged! - before!) / (better! - before!);
}
