// The practice layer: what somebody's own device stores of the rounds played, and what it makes of them.

export { readDate } from './date.ts';
export { DAY_SEAT, dealOfDay } from './deal-of-day.ts';
export { canBeDrawn, type DealTools, type DealWish, type DrawnDeal, drawDeal } from './drawn-deal.ts';
export {
  type Exercise,
  type ExerciseRef,
  exerciseAt,
  exercisesOf,
  type Grade,
  gradeOf,
  laterSchedule,
  type Schedule,
} from './exercise.ts';
export {
  type AimsMet,
  aimsOver,
  dearestStep,
  type Habit,
  type HabitRow,
  type Habits,
  habitsOf,
  LEAST_CASES,
  mistakeName,
  type StepKind,
} from './habits.ts';
export {
  type History,
  type HistoryFileProblem,
  type HistoryRead,
  historyLines,
  historyReader,
  MAX_HISTORY_BYTES,
  type StoredCard,
} from './history-file.ts';
export { type LedgerLine, type LedgerMeans, ledgerLine } from './ledger-line.ts';
export {
  type AskedRack,
  askedRack,
  reviewAskedPass,
  type SectionDistance,
  sectionDistances,
} from './rack-question.ts';
export { packPlay, type RoundPlay, unpackPlay } from './round-play.ts';
export {
  aimsMet,
  mergedSummary,
  ROUND_PLACES,
  type RoundDetail,
  type RoundPlace,
  type RoundSummary,
  roundIdFor,
  type StoredChoice,
  type StoredRound,
  storedChoice,
  storedChoices,
  storedLedger,
  textHash,
} from './stored-round.ts';
export { countTold, toldText, withTold } from './told-answers.ts';
