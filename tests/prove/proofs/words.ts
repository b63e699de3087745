// Sentences say what was computed: their numbers are in the review, and what they advise does what they say.
import {
  judgeDeeply,
  type PassReview,
  questionsIn,
  type Review,
  reviewRound,
  type SeatRecord,
  SHALLOW,
  withJudgement,
} from '../../../shared-engine/index.ts';
import { houseKernel, passesOf, records } from '../../kit/reviews.ts';
import { numbersIn, numbersSaid, shownAs } from '../../kit/numbers-in-text.ts';
import { GLANCE } from '../analysis/budgets.ts';
import { analyst } from '../analysis/choices.ts';
import { percent, shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const ROUNDS: Record<Size, number> = { small: 2, full: 60 };
const SWAPS: Record<Size, number> = { small: 20, full: 500 };
const RIVALS: Record<Size, number> = { small: 4, full: 60 };

export const proof: Proof = {
  summary: 'Numbers in sentences are numbers of the review, and the advice does what its sentence says.',
  async run({ seed, size }) {
    return [numbers(`${seed} numbers`, ROUNDS[size]), swaps(seed, SWAPS[size]), rivals(seed, RIVALS[size])];
  },
};

function numbers(name: string, rounds: number): ProofRow {
  let said = 0;
  let held = 0;
  for (const record of records(name, rounds)) {
    let review: Review = reviewRound(record, houseKernel);
    for (const nth of review.choices.keys()) {
      review = withJudgement(review, nth, judgeDeeply(analyst, record, nth, GLANCE));
    }
    const families = Object.values(review.families);
    for (const choice of review.choices) {
      const known = shownAs(numbersIn(choice).flatMap((value) => [value, Math.abs(value)]));
      const deep = choice.judgement.depth === 'deep' ? choice.judgement.words : [];
      const spoken = [...choice.words, ...deep].flatMap((sentence) => numbersSaid(sentence, families));
      said += spoken.length;
      held += spoken.filter((number) => known.has(number)).length;
    }
  }
  return {
    what: `numbers in sentences of ${rounds} reviews, deeper judgements among them, found in their choice`,
    value: held,
    bar: `all ${said}`,
    ok: held === said && said > 0,
  };
}

/** The advice of the first answer, followed: the pass is exchanged for the one named, and the review asked again. */
function swaps(seed: string, wanted: number): ProofRow {
  let tried = 0;
  let moved = 0;
  for (let n = 0; tried < wanted; n += 8) {
    for (const record of records(`${seed} swaps ${n}`, 8)) {
      for (const pass of passesOf(reviewRound(record, houseKernel))) {
        if (tried === wanted || pass.loss < 0.25) continue;
        tried++;
        if (doesWhatItSays(record, pass)) moved++;
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

function doesWhatItSays(record: SeatRecord, pass: PassReview): boolean {
  const nth = record.steps.findIndex((step) => step.kind === 'move' && step.step === pass.step);
  const steps = record.steps
    .slice(0, nth + 1)
    .map((step, n) => (n === nth && step.kind === 'move' ? { ...step, gave: pass.best.tiles } : step));
  const followed = passesOf(reviewRound({ ...record, steps }, houseKernel)).at(-1)!;
  const sentence = pass.words[1];
  if (/ stays? whole/.test(sentence)) return followed.parts.groupsKept > pass.parts.groupsKept;
  if (/ families within reach/.test(sentence)) return followed.parts.familiesKept > pass.parts.familiesKept;
  if (/ to go, not /.test(sentence)) return followed.played.toGo < pass.played.toGo;
  return followed.played.nearness > pass.played.nearness;
}

/** A rival that is said to be clearly better, chosen instead: the choice it replaced must come out behind. */
function rivals(seed: string, wanted: number): ProofRow {
  let tried = 0;
  let behind = 0;
  for (let n = 0; tried < wanted; n += 4) {
    for (const record of records(`${seed} rivals ${n}`, 4)) {
      for (const [nth, { asked, offered }] of questionsIn(record).entries()) {
        if (tried === wanted || asked !== 'tiles') continue;
        const judged = judgeDeeply(analyst, record, nth, SHALLOW);
        if (judged.depth === 'quick' || judged.verdict !== 'better-exists') continue;
        tried++;
        const place = record.steps.indexOf(offered.chosen);
        const gave = judged.finalists[judged.rival!]!.tiles;
        const steps = record.steps
          .slice(0, place + 1)
          .map((step, m) => (m === place && step.kind === 'move' ? { ...step, gave } : step));
        const changed = judgeDeeply(analyst, { ...record, steps }, nth, SHALLOW);
        if (changed.depth === 'quick') continue;
        const old = judged.finalists[judged.played]!.tiles.join();
        const again = changed.finalists.find(({ tiles }) => tiles.join() === old);
        // Not even among the last few any more is behind as well.
        if (again === undefined || again.ahead.value < 0) behind++;
      }
    }
  }
  return {
    what: `of ${wanted} rivals called clearly better, those that beat the choice when chosen instead`,
    value: shareText(behind, wanted),
    bar: `at least ${percent(0.95)} %`,
    ok: behind >= 0.95 * wanted,
  };
}
