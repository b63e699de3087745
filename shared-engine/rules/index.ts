// The rules layer: tiles, deals, the exchange, and what each audience may know of a round.

export {
  DEAL_FORMAT,
  isCommittedRack,
  type LeafProof,
  roundIdOf,
} from './deal/commitment.ts';
export { type Deal, dealTiles, dealtSize, isSeed, type PreparedDeal, type RandomDeal } from './deal/deal.ts';
export { nextDealer } from './deal/next-dealer.ts';
export { drawn, type Random, seedFrom, shuffled, stream } from './deal/random.ts';
export { BITS_A_WORD, ROOT_WORDS, rootWords } from './deal/root-words.ts';
export {
  DIRECTIONS,
  type Direction,
  forFour,
  giverTo,
  neighbor,
  SEATS,
  type Seat,
  withSeat,
} from './deal/seat.ts';
export type { AnswerChoice, Choice } from './exchange/command.ts';
export { decide, openRound } from './exchange/decide.ts';
export type { DealScript, RoundEvent } from './exchange/event.ts';
export { begin, evolve } from './exchange/evolve.ts';
export { passObjection } from './exchange/legality.ts';
export {
  decisionFor,
  type PendingDecision,
  pendingDecisionOf,
  stepOf,
  stepOfOutcome,
} from './exchange/pending-decision.ts';
export {
  checkRound,
  type OpenedRound,
  type RoundCheck,
  type SeenMove,
} from './exchange/recompute.ts';
export {
  ROUND_REJECTION_CODES,
  ROUND_REJECTIONS,
  type RoundRejection,
  reject,
} from './exchange/rejection.ts';
export type { Actor, Closed, Resolved, ResolvedMove, Round } from './exchange/round.ts';
export {
  hasStep,
  MOVE_STEPS,
  MOVES,
  type MoveStep,
  mayPassBlind,
  PASS_SIZE,
  PASS_STEPS,
  STEPS,
  type Step,
} from './exchange/schedule.ts';
export {
  BOT_PACES,
  botPause,
  CARD_HELP_WAYS,
  COURTESY_WAYS,
  EAST_WAYS,
  type ExchangeTerms,
  MODES,
  type Mode,
  SECOND_CHARLESTON_WAYS,
  STANDARD_TERMS,
  type Terms,
  termsFrom,
} from './exchange/terms.ts';
export { arrivalProblem, copiesLeft, rackProblem } from './laid/checks.ts';
export {
  type LaidEntry,
  type LaidExchange,
  type LaidOutcome,
  type LaidTable,
  laidDecision,
  laidRecord,
  layAll,
} from './laid/laid-exchange.ts';
export type { LaidProblem } from './laid/problem.ts';
export {
  actorSchema,
  askedTermsSchema,
  faceSchema,
  four,
  hexSchema,
  seatSchema,
  stepSchema,
  termsSchema,
  tilesSchema,
} from './schemas.ts';
export { areVisibleLines, isVisibleName, isVisibleText } from './text.ts';
export {
  addTo,
  type Bag,
  bagOf,
  countOf,
  EMPTY_BAG,
  FULL_SET,
  facesOf,
  sizeOf,
  sortFaces,
  takeFrom,
} from './tiles/bag.ts';
export {
  copiesOf,
  DRAGONS,
  type Dragon,
  FACE_COUNT,
  FACES,
  type Face,
  type Four,
  faceIndex,
  isFace,
  JOKER_INDEX,
  NUMBERS,
  numbered,
  SUITS,
  type Suit,
  type TileNumber,
  WINDS,
  type Wind,
} from './tiles/face.ts';
export { applyViewDelta, type ViewDelta, viewDelta } from './view/delta.ts';
export { type ViewDeltaText, viewDeltaTexts } from './view/delta-text.ts';
export {
  choiceAt,
  choiceIn,
  choiceObjection,
  isWaitingFor,
  pendingDecision,
  simplestAnswer,
} from './view/pending-decision.ts';
export { actualStep, type PublicStep, type SeatMove, type SeatRecord, type SeatStep } from './view/record.ts';
export {
  type Audience,
  type PublicStage,
  type SeatAnswer,
  type SeatView,
  type SpectatorView,
  seatStep,
  seatView,
  type View,
  viewFor,
} from './view/view.ts';
