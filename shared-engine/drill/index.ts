// The drill layer: deals for a class, and the report of what the class chose.

export { boundsProblem as drillBoundsProblem } from './bounds.ts';
export { rarityText } from './constraint-messages.ts';
export { type DrillFile, drillFileParts, drillFileText, readDrillFile } from './file.ts';
export {
  type Amount,
  type Constraint,
  classPartSchema,
  commentsSchema,
  DRILL_FORMS,
  DRILL_LIMITS,
  type Drill,
  type DrillDeal,
  drillSchema,
  drillTerms,
} from './format.ts';
export { advanceGuidedDeal, type GuidedStart, playGuidedDeal } from './guided.ts';
export {
  type BetterPass,
  deepReviewer,
  interestingDeals,
  type JudgedPass,
  judgedFirstPass,
} from './interesting.ts';
export {
  type Lesson,
  type LessonDeal,
  type LessonMoment,
  lessonFile,
  lessonSoFar,
  lessonText,
  readLesson,
} from './lesson.ts';
export { parseDrill } from './parse.ts';
export { botsAround, plainRack, prepareDeal } from './prepare.ts';
export type { DrillProblem } from './problem.ts';
export type { Rarity } from './rarity.ts';
export { type AnalyzedChoice, analyzedChoice } from './report/analyzed-choice.ts';
export {
  type FrozenSpread,
  frozenSpreads,
  isAfterVote,
  kindsAt,
  MIN_COHORT,
  spreadOfFrozen,
  withheldSpread,
} from './report/anonymity.ts';
export {
  anonymousReport,
  CLASS_REPORT_FORMAT,
  type ClassReport,
  classReport,
} from './report/class-report.ts';
export type { CsvStyle } from './report/csv.ts';
export { dividedSteps, drillOfDivided } from './report/divided.ts';
export { type ClassEntry, choicesBy, type TilesToGo } from './report/entry.ts';
export {
  type CountedChoices,
  type CountedDeal,
  countedChoices,
  type DealCounts,
  isReleaseDue,
  NO_COUNTS,
  openSpreads,
  releasedSpreads,
  type ShortSpread,
  shortSpread,
  spreadFromShort,
  stepsTaken,
  withRelease,
} from './report/release.ts';
export { REPORT_TABLES, type ReportTable, reportTable } from './report/report-files.ts';
export { type Cost, chosenIn, type StepSpread, spreadsOf } from './report/spread.ts';
export { drillOfPoint, type TeachingPoint, teachNext } from './report/teach-next.ts';
export { sampleRack, sampleRackWithRarity } from './sampled.ts';
export { rotatedScript } from './scripted.ts';
export { DRILL_BUDGET, type SearchBudget, searchBudget } from './search-budget.ts';
