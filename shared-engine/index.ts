// The one door of the engine: what the server, the page and the tests may use.

export { type Belief, createBelief, DEALS_PER_BATCH } from './analysis/belief/belief.ts';
export {
  type OfferedChoice,
  offeredChoice,
  offeredChoices,
  recordWithAnswer,
  type Situation,
} from './analysis/belief/situation.ts';
export { type Alternative as RaceAlternative, anyOf, passesOf } from './analysis/comparison/alternatives.ts';
export {
  ANALYSIS_SEED,
  type Analyst,
  alternativesTo,
  analyze,
  createAnalyst,
} from './analysis/comparison/analyze.ts';
export { type Budget, DEEP, SHALLOW } from './analysis/comparison/budget.ts';
export { type Comparison, compare } from './analysis/comparison/comparison.ts';
export { type Estimate, estimate } from './analysis/comparison/estimate.ts';
export { normalQuantile, studentQuantile } from './analysis/comparison/quantiles.ts';
export { createDealSource, type DealAction, type DealSource } from './analysis/comparison/sampled-deals.ts';
export { screen } from './analysis/comparison/screen.ts';
export { SMALL_LOSS, verdictOf } from './analysis/comparison/verdict.ts';
export { chooseCall, chooseDiscard, chooseJokerExchange } from './analysis/play/choose-move.ts';
export { createEvaluator } from './analysis/play/evaluator.ts';
export { completedPattern, offerObjection, turnObjection } from './analysis/play/legality.ts';
export { afterOffer, afterTurn } from './analysis/play/move.ts';
export {
  type ExposedGroup,
  type Holding,
  type Offer,
  openPlay,
  type Play,
  type Turn,
} from './analysis/play/play.ts';
export { type PlayCard, preparePlayCard } from './analysis/play/play-card.ts';
export { playerView } from './analysis/play/player-view.ts';
export { createPlayers, createSimulator } from './analysis/play/simulate.ts';
export type { Analysis, DeepAnalysis, Finalist, MeasuredValue } from './analysis/review/analysis.ts';
export {
  analyzeDecision,
  analyzeOffered,
  decisionsIn,
  type RecordedDecision,
  withDeepAnalysis,
  withReducedBudget,
} from './analysis/review/deep-analysis.ts';
export type {
  ChoiceReview,
  NumberReview,
  PassReview,
  RackGroup,
  Review,
} from './analysis/review/review.ts';
export { reviewRound } from './analysis/review/review-round.ts';
export type { RolloutBatch, Rollouts } from './analysis/rollouts/batch.ts';
export { DEAL_BYTES, RESULT_WIDTH } from './analysis/rollouts/batch.ts';
export type { Leaf } from './analysis/rollouts/leaf.ts';
export { GUMBEL } from './analysis/rollouts/noise.ts';
export { createReferenceRollouts } from './analysis/rollouts/reference.ts';
export { createRollouts } from './analysis/rollouts/simd.ts';
export { createFeatures, FEATURES, type FeatureName } from './analysis/win-probability/features.ts';
export { WIN_MODEL } from './analysis/win-probability/model.ts';
export type { WinModel } from './analysis/win-probability/model-format.ts';
export type { ReachSteps } from './analysis/win-probability/reach.ts';
export {
  createWinProbability,
  type DealerOffset,
  winProbabilityAt,
} from './analysis/win-probability/win-probability.ts';
export { chooseFor } from './bots/choose.ts';
export { botRandom, type Chooser, finishRound } from './bots/finish-round.ts';
export { ROLLOUT_SEEDS, usesRollouts } from './bots/rollout-bot.ts';
export { compileCard } from './card/compile.ts';
export type { CompiledCard, Hand } from './card/compiled.ts';
export {
  CARD_FORMAT,
  type CardFile,
  type CardGroup,
  type CardPattern,
  type CardTile,
  cardFileSchema,
  cardJsonSchema,
} from './card/format.ts';
export { HOUSE_CARD, houseCard } from './card/house/card.ts';
export { parseCard } from './card/parse.ts';
export { CARD_PROBLEM_CODES, type CardProblem, type CardProblemCode } from './card/problem.ts';
export { inARow, likeNumbers } from './drill/constraint.ts';
export { constraintText, rarityText } from './drill/constraint-messages.ts';
export {
  type Amount,
  type Constraint,
  DRILL_FORMS,
  type Drill,
  type DrillDeal,
  drillSchema,
} from './drill/format.ts';
export { advanceGuidedDeal, type GuidedStart, playGuidedDeal } from './drill/guided.ts';
export {
  type BetterPass,
  betterPasses,
  type DealSearch,
  deepReviewer,
  interestingDeals,
  type PassReviewer,
  quickReviewer,
} from './drill/interesting.ts';
export { wilson } from './drill/interval.ts';
export { parseDrill, readDrill } from './drill/parse.ts';
export { botsAround, prepareDeal } from './drill/prepare.ts';
export { DRILL_PROBLEM_CODES, type DrillProblem } from './drill/problem.ts';
export type { Rarity } from './drill/rarity.ts';
export { anonymized, anonymizedSpread } from './drill/report/anonymity.ts';
export { type Anonymity, type ClassReport, classReport } from './drill/report/class-report.ts';
export { csvText } from './drill/report/csv.ts';
export type { ClassEntry } from './drill/report/entry.ts';
export { classMean } from './drill/report/mean.ts';
export {
  costliestMistakes,
  MISTAKE_CATEGORIES,
  type MistakeCategory,
  mistakesOf,
} from './drill/report/mistake-categories.ts';
export { aimsCsv, choicesCsv, mistakesCsv, reportJson } from './drill/report/report-files.ts';
export { type Cost, type StepSpread, spreadsOf } from './drill/report/spread.ts';
export { sampleRack, sampleRackWithRarity } from './drill/sampled.ts';
export { type Sampler, samplerFor } from './drill/sampler.ts';
export { type Stock, shapesOf } from './drill/shapes.ts';
export { typicalChoice } from './drill/typical.ts';
export { weightedDraw } from './drill/weighted.ts';
export { createPassSelector } from './kernels/pass-selection/simd.ts';
export { createRng, philox, type Rng } from './kernels/philox.ts';
export { expMinus, log2 } from './kernels/portable-math.ts';
export { decodeBase64 } from './kernels/simd/base64.ts';
export { type WasmHost, wasmHost } from './kernels/simd/host.ts';
export { loadSimd, NO_SIMD, type SimdModule } from './kernels/simd/module.ts';
export { createTileValues } from './kernels/tile-value/simd.ts';
export { nearestSections, sectionsInReach, toGoBySection } from './kernels/tiles-to-go/by-section.ts';
export type { Kernel } from './kernels/tiles-to-go/kernel.ts';
export { nearness, nearnessOf } from './kernels/tiles-to-go/nearness.ts';
export { createReferenceKernel, tilesToGo } from './kernels/tiles-to-go/reference.ts';
export { type BatchKernel, createSimdKernel } from './kernels/tiles-to-go/simd.ts';
export { createSwarKernel } from './kernels/tiles-to-go/swar.ts';
export { type ChoiceModel, createChoiceModel } from './policy/choice-model.ts';
export { RISK_GRADES, type RiskGrade, riskGrade } from './policy/pass-risk.ts';
export { STYLES, type StyleName } from './policy/styles.ts';
export {
  type BigScreen,
  bigScreenSchema,
  CLASS_LIMITS,
  type ClassAction,
  type ClassAims,
  type ClassInfo,
  type ClassTerms,
  classActionSchema,
  classAimsSchema,
  classInfoSchema,
  classJoinedSchema,
  classOpenedSchema,
  classTermsSchema,
  type Dashboard,
  type DashboardPlayer,
  dashboardSchema,
  type GuidedDeal,
  joinClassSchema,
  type OpenClass,
  openClassSchema,
  type ShownStep,
  shownStepSchema,
} from './protocol/class.ts';
export { type DrillReport, drillReportSchema } from './protocol/class-report.ts';
export {
  DEAL_FILE_FORMAT,
  type DealFile,
  dealFileSchema,
  preparedDealFileSchema,
} from './protocol/deal-file.ts';
export {
  type ClientMessage,
  type ConnectionOrigin,
  clientMessageSchema,
  type Resume,
  type ServerMessage,
  serverMessageSchema,
  type TableAction,
} from './protocol/messages.ts';
export {
  CLASSES_PATH,
  cardPath,
  classLink,
  classPath,
  classPersonalDataPath,
  HOUSE_CARD_PATH,
  personalDataPath,
  ROOMS_PATH,
  roomPath,
  SOCKET_PATH,
  seatsPath,
  tablePath,
  ticketPath,
} from './protocol/paths.ts';
export { type RejectionCode, ROOM_REJECTIONS, type RoomRejectionCode } from './protocol/rejections.ts';
export { analysisSchema, reviewSchema } from './protocol/review.ts';
export {
  type ClaimSeat,
  claimSeatSchema,
  type HttpRejection,
  httpRejectionSchema,
  lobbySchema,
  type OpenRoom,
  openRoomSchema,
  type PersonalDataEntry,
  personalDataSchema,
  roomOpenedSchema,
  seatClaimedSchema,
  ticketSchema,
} from './protocol/room-http.ts';
export {
  applyDelta,
  type RoomTerms,
  roomTermsSchema,
  type SeatInfo,
  type Table,
  type TableDelta,
} from './protocol/table.ts';
export {
  CLOSE,
  HEARTBEAT_MS,
  MAX_FRAME_BYTES,
  PROTOCOL_VERSIONS,
  RETRY_SPREAD_MS,
} from './protocol/version.ts';
export { viewDeltaSchema, viewSchema } from './protocol/views.ts';
export { checkDeal, commitmentTo, type DealCheck } from './rules/deal/commitment.ts';
export {
  type Deal,
  dealTiles,
  dealtSize,
  isSeed,
  type PreparedDeal,
} from './rules/deal/deal.ts';
export { drawn, type Random, shuffled, stream } from './rules/deal/random.ts';
export {
  DIRECTIONS,
  type Direction,
  forFour,
  giverTo,
  neighbor,
  SEATS,
  type Seat,
  withSeat,
} from './rules/deal/seat.ts';
export type { AnswerChoice, Choice, Command } from './rules/exchange/command.ts';
export { decide, objectionTo, openRound } from './rules/exchange/decide.ts';
export type { RoundEvent } from './rules/exchange/event.ts';
export { begin, evolve, replay } from './rules/exchange/evolve.ts';
export { passObjection } from './rules/exchange/legality.ts';
export {
  decisionFor,
  type PendingDecision,
  pendingDecisionOf,
  stepOf,
  stepOfOutcome,
} from './rules/exchange/pending-decision.ts';
export type { RoundRejection } from './rules/exchange/rejection.ts';
export { resolveMove } from './rules/exchange/resolve.ts';
export type { Actor, Phase, Resolved, ResolvedMove, Round, SubmittedPass } from './rules/exchange/round.ts';
export {
  MOVE_STEPS,
  MOVES,
  type MoveStep,
  PASS_SIZE,
  STEPS,
  type Step,
} from './rules/exchange/schedule.ts';
export { faceSchema, four, hexSchema, seatSchema, stepSchema, tilesSchema } from './rules/schemas.ts';
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
} from './rules/tiles/bag.ts';
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
} from './rules/tiles/face.ts';
export { applyViewDelta, viewDelta } from './rules/view/delta.ts';
export {
  choiceAt,
  choiceIn,
  choiceObjection,
  isWaitingFor,
  pendingDecision,
} from './rules/view/pending-decision.ts';
export {
  actualStep,
  type PublicStep,
  type SeatMove,
  type SeatRecord,
  type SeatStep,
} from './rules/view/record.ts';
export {
  type Audience,
  type SeatView,
  type SpectatorView,
  seatStep,
  seatView,
  type View,
  viewFor,
} from './rules/view/view.ts';
