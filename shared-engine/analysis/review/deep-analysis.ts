// From a quick review to a deep one: choices analyzed one at a time, in any order, and added to the review.
import {
  type AnswerChoice,
  choiceAt,
  facesOf,
  mayPassBlind,
  type PendingDecision,
  type SeatRecord,
  simplestAnswer,
} from '../../rules/index.ts';
import { DEALS_PER_BATCH } from '../belief/particle-filter.ts';
import { finalRack, type OfferedChoice, offeredChoices, recordWithAnswer } from '../belief/situation.ts';
import { type DecisionSubject, facesOfAlternative } from '../comparison/alternatives.ts';
import {
  type AnalysisTerms,
  type Analyst,
  analyze,
  dealsFor,
  prepare,
  seedsFor,
} from '../comparison/analyze.ts';
import type { Budget } from '../comparison/budget.ts';
import type { ComparedAlternative, Comparison } from '../comparison/comparison.ts';
import { type Estimate, thousandth } from '../comparison/estimate.ts';
import { SMALL_LOSS } from '../comparison/verdict.ts';
import type { Ledger } from '../ledger/settle.ts';
import { type ChoiceWhy, FIRST_WHY_BATCH, type SideBySide, whyBetter } from '../why/choice-why.ts';
import { othersAfterVote } from '../why/vote-others.ts';
import type { DeepAnalysis, Finalist, MeasuredValue } from './analysis.ts';
import type { ChoiceReview, Review } from './review.ts';
import { DEEP_METHOD, LEDGER_METHOD, METHOD, REDUCED_BUDGET } from './sentences/method.ts';
import { storyOf } from './story.ts';

/** How closely to look; `seed` is for checks that the same one gives the same bytes. */
export type DeepTerms = Omit<AnalysisTerms, 'subject'> & { readonly budget: Budget };

/**
 * Analyzes choice number `nth` of the review of this record. The same record, card and budget give the same bytes,
 * whatever was analyzed before. Throws a RangeError where the record has no such choice.
 */
export function analyzeDecision(
  analyst: Analyst,
  record: SeatRecord,
  nth: number,
  terms: DeepTerms,
): DeepAnalysis {
  const decision = decisionsIn(record)[nth];
  if (!decision) throw new RangeError(`The record has no choice number ${nth}.`);
  return analyzeOffered(analyst, decision, terms);
}

/** The same for a choice as it is offered, before its step is over. */
export function analyzeOffered(
  analyst: Analyst,
  { offered, subject }: RecordedDecision,
  terms: DeepTerms,
): DeepAnalysis {
  const comparison = analyze(analyst, offered, { ...terms, subject });
  if (comparison === null) throw new RangeError('Nothing of that kind was chosen.');
  return { ...deepAnalysisOf(comparison), ...whyOf(analyst, offered, comparison, terms) };
}

/**
 * Rolls out what analyses of the answer to the open step will ask for, while nobody has answered: for an analyst with a
 * memory, which then answers sooner and with the same bytes.
 */
export function prepareDecision(
  analyst: Analyst,
  record: SeatRecord,
  decision: PendingDecision,
  terms: DeepTerms,
): void {
  const answer = simplestAnswer(decision, facesOf(finalRack(record)));
  const before = decisionsIn(record).length;
  for (const { offered, subject } of decisionsIn(recordWithAnswer(record, answer, 'player')).slice(before)) {
    prepare(analyst, offered, { ...terms, subject });
  }
}

/** The review with one choice analyzed deeply, in whatever order analyses arrive. */
export function withDeepAnalysis(review: Review, nth: number, analysis: DeepAnalysis): Review {
  const choices = review.choices.map(
    (choice, n): ChoiceReview => (n === nth ? { ...choice, analysis } : choice),
  );
  const withChoice = { ...review, choices, method: `${METHOD} ${DEEP_METHOD}` };
  return review.ledger === null
    ? { ...withChoice, story: storyOf(withChoice) }
    : withLedger(withChoice, review.ledger);
}

/** The review with luck and choices of the whole round, whichever analyses have arrived. */
export function withLedger(review: Review, ledger: Ledger): Review {
  const method = review.method.includes(LEDGER_METHOD) ? review.method : `${review.method} ${LEDGER_METHOD}`;
  return { ...review, ledger, story: storyOf({ ...review, ledger }), method };
}

/** The review of which some choices were analyzed on a reduced budget. */
export function withReducedBudget(review: Review): Review {
  return { ...review, method: `${review.method} ${REDUCED_BUDGET}` };
}

export interface RecordedDecision {
  readonly offered: OfferedChoice;
  readonly subject: DecisionSubject;
}

/** The decisions of a record, in the order of the choices of its review: how many blind comes before the tiles. */
export function decisionsIn(record: SeatRecord): readonly RecordedDecision[] {
  return offeredChoices(record).flatMap((offered) => {
    const { chosen, situation } = offered;
    const subjects: DecisionSubject[] = [];
    if (chosen.kind !== 'move' || mayPassBlind(chosen.step, situation.terms)) subjects.push('number');
    if (chosen.kind === 'move' && chosen.gave.length > 0) subjects.push('tiles');
    return subjects.map((subject) => ({ offered, subject }));
  });
}

/**
 * All that an analysis depends on besides the card: what the seat knew, what it was asked and what it chose. What the
 * others did in the same step is no part of it, so a decision keeps its key when its step is over.
 */
export function decisionKey({ offered, subject }: RecordedDecision): string {
  const { situation, chosen } = offered;
  return JSON.stringify([situation, subject, sorted(choiceAt(chosen, situation.seat))]);
}

/** The order in which tiles were picked makes no other choice. */
function sorted(choice: AnswerChoice | null): AnswerChoice | null {
  return choice?.kind === 'pass' ? { ...choice, tiles: [...choice.tiles].sort() } : choice;
}

/** Reasons from deals of their own where something better is told; at every vote what it does to the others. */
function whyOf(
  analyst: Analyst,
  { situation, chosen }: OfferedChoice,
  { chosen: own, bestAlternative, verdict }: Comparison,
  { budget, ...terms }: DeepTerms,
): Pick<DeepAnalysis, 'why' | 'others'> {
  if (bestAlternative === null) return { why: null, others: null };
  const [played, named] = [own.alternative, bestAlternative.alternative];
  const seeds = seedsFor(analyst, situation, terms);
  const source = dealsFor(analyst, situation, seeds);
  const range = { first: FIRST_WHY_BATCH, batches: budget.why.confirm };
  const isBetter = verdict === 'costly' || verdict === 'a-little-worse';
  const task = { situation, seeds, played, named, batches: budget.why };
  return {
    why: isBetter ? rounded(whyBetter(analyst, source, task)) : null,
    others:
      chosen.kind === 'vote'
        ? measuredValue(othersAfterVote(source, { seat: situation.seat, played, named }, range))
        : null,
  };
}

/** Shares and means to the thousandth. */
function rounded(why: ChoiceWhy): ChoiceWhy {
  const used = (uses: ChoiceWhy['keep']) => uses.map((use) => ({ ...use, share: thousandth(use.share) }));
  const beside = ({ played, named }: SideBySide) => ({
    played: thousandth(played),
    named: thousandth(named),
  });
  return {
    deals: why.deals,
    reason: why.reason && { ...why.reason, share: thousandth(why.reason.share) },
    keep: used(why.keep),
    pass: used(why.pass),
    farther: why.farther && { ...why.farther, shares: beside(why.farther.shares) },
    sections: Object.fromEntries(Object.entries(why.sections).map(([id, shares]) => [id, beside(shares)])),
    sectionsKept: why.sectionsKept,
    toGoKept: why.toGoKept,
    toGo: beside(why.toGo),
    lacking: beside(why.lacking),
    gone: beside(why.gone),
    idleJokers: beside(why.idleJokers),
    handsNear: beside(why.handsNear),
    points: beside(why.points),
    concealed: beside(why.concealed),
  };
}

function deepAnalysisOf(comparison: Comparison): Omit<DeepAnalysis, 'why' | 'others'> {
  const { verdict, finalists, chosen, bestAlternative, atMost, typicalPass, batches } = comparison;
  return {
    depth: 'deep',
    verdict,
    loss: bestAlternative && measuredValue(bestAlternative.difference),
    atMost: thousandth(atMost),
    giveaway: chosen.giveaway && measuredValue(chosen.giveaway),
    played: finalists.indexOf(chosen),
    bestAlternative: bestAlternative && finalists.indexOf(bestAlternative),
    finalists: finalists.map(finalistOf),
    alternatives: finalists.length - 1,
    typicalPass: typicalPass && measuredValue(typicalPass),
    sampledDeals: batches * DEALS_PER_BATCH,
    smallLoss: SMALL_LOSS,
  };
}

function finalistOf(compared: ComparedAlternative): Finalist {
  const { alternative, winProbability, difference, giveaway, amongBest } = compared;
  return {
    tiles: facesOfAlternative(alternative),
    number: alternative.number,
    winProbability: measuredValue(winProbability),
    difference: measuredValue(difference),
    giveaway: giveaway && measuredValue(giveaway),
    amongBest,
  };
}

function measuredValue({ value, halfWidth }: Estimate): MeasuredValue {
  return { value: thousandth(value), halfWidth: thousandth(halfWidth) };
}
