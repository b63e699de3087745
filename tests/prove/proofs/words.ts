// Sentences say what was computed: their numbers are in the review, and what they advise does what they say.
import { SHALLOW_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import {
  analyzeDecision,
  decisionsIn,
  withDeepAnalysis,
} from '../../../shared-engine/analysis/review/deep-analysis.ts';
import type { PassReview, Review } from '../../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import type { SeatRecord } from '../../../shared-engine/rules/view/record.ts';
import { inTen, numbersIn, numbersInText, shownAs } from '../../kit/numbers-in-text.ts';
import { houseKernel, passesOf, records, toldOf } from '../../kit/reviews.ts';
import { GLANCE } from '../analysis/budgets.ts';
import { analyst } from '../analysis/choices.ts';
import { percent, shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const ROUNDS: Record<Size, number> = { small: 2, full: 60 };
const SWAPS: Record<Size, number> = { small: 20, full: 500 };
const ALTERNATIVES: Record<Size, number> = { small: 4, full: 60 };

export const proof: Proof = {
  summary: 'Numbers in sentences are numbers of the review, and the advice does what its sentence says.',
  async run({ seed, size }) {
    return [
      numbers(`${seed} numbers`, ROUNDS[size]),
      swaps(seed, SWAPS[size]),
      alternatives(seed, ALTERNATIVES[size]),
    ];
  },
};

function numbers(name: string, rounds: number): ProofRow {
  let said = 0;
  let held = 0;
  for (const record of records(name, rounds)) {
    let review: Review = reviewRound(record, houseKernel);
    for (const nth of review.choices.keys()) {
      review = withDeepAnalysis(review, nth, analyzeDecision(analyst, record, nth, { budget: GLANCE }));
    }
    const sections = Object.values(review.sections);
    for (const [nth, choice] of review.choices.entries()) {
      const { analysis } = choice;
      const shares = analysis.depth === 'deep' && analysis.why ? inTen(numbersIn(analysis.why)) : [];
      const known = shownAs([...numbersIn(choice).flatMap((value) => [value, Math.abs(value)]), ...shares]);
      const numbers = numbersInText(toldOf(review, nth), sections);
      said += numbers.length;
      held += numbers.filter((number) => known.has(number)).length;
    }
  }
  return {
    what: `numbers in sentences of ${rounds} reviews, deep analyses included, found in their choice`,
    value: held,
    bar: `all ${said}`,
    ok: held === said && said > 0,
  };
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
  if (/ sections within reach/.test(told)) return followed.parts.sectionsKept > pass.parts.sectionsKept;
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
