// The analysis layer: what a choice was worth, and why.

export { possibleRound } from './belief/possible-round.ts';
export { finalRack, offeredChoice, recordSoFar, recordWithAnswer } from './belief/situation.ts';
export {
  answerOf,
  type CoachedRack,
  type Coaching,
  coachedSentences,
  coachingFor,
  firstLook,
  nextCoachStep,
} from './coach/coach.ts';
export { likeliestFirst, nearestWays } from './coach/likeliest-hands.ts';
export { type Reach, reachOf, tilesGone } from './coach/reach.ts';
export { type Alternative, asks, blindNumbers, passesOf, votes } from './comparison/alternatives.ts';
export { type Analyst, createAnalyst } from './comparison/analyze.ts';
export { DEEP_BUDGET, SHALLOW_BUDGET } from './comparison/budget.ts';
export { type Estimate, estimate, thousandth } from './comparison/estimate.ts';
export { createDealMemory } from './comparison/remembered-deals.ts';
export { createRobustness, type RobustnessOf } from './comparison/robustness.ts';
export { createDealSource } from './comparison/sampled-deals.ts';
export { screen } from './comparison/screen.ts';
export { VERDICTS, type Verdict } from './comparison/verdict.ts';
export { LEDGER_BATCHES, ledgerOf } from './ledger/round-ledger.ts';
export { LEDGER_UNIT, type Ledger } from './ledger/settle.ts';
export type { Analysis, DeepAnalysis, Finalist, MeasuredValue } from './review/analysis.ts';
export { inTenths } from './review/basis.ts';
export {
  choiceVerdict,
  hadBetter,
  hasBetter,
  isCostly,
  namedAlternative,
  toldVerdict,
  VERDICT_NAMES,
} from './review/choice-verdict.ts';
export {
  analyzeDecision,
  decisionKey,
  decisionsIn,
  prepareDecision,
  type RecordedDecision,
  withDeepAnalysis,
  withLedger,
  withReducedBudget,
} from './review/deep-analysis.ts';
export {
  choiceOfMistake,
  MISTAKE_CATEGORIES,
  MISTAKE_CATEGORY_NAMES,
  type MistakeCategory,
} from './review/mistake-categories.ts';
export { leaningOf, mistakesOf, sectionsLeft } from './review/mistakes.ts';
export { type ReplayedDecision, replayDecisions } from './review/replay-decisions.ts';
export type {
  ChoiceReview,
  ChoiceStory,
  NumberReview,
  PassParts,
  PassReview,
  RankedPass,
  Review,
  Story,
} from './review/review.ts';
export { reviewRound } from './review/review-round.ts';
export { guessAnswer } from './review/sentences/guess.ts';
export { type MethodPart, methodParts } from './review/sentences/method.ts';
export { type BestBeside, bestAtFirstLook } from './review/sentences/pass.ts';
export { listed, type NeighborNames, withNames } from './review/sentences/phrases.ts';
export { tileList, tileName } from './review/sentences/tiles.ts';
export { bestSentence } from './review/story.ts';
export type { ChoiceWhy, SideBySide } from './why/choice-why.ts';
export { WIN_MODEL } from './win-probability/model.ts';
