// The one door of the engine: what the server, the page and the tests may use.

export { BATCH, type Belief, createBelief } from './analysis/belief/belief.ts';
export { createDraws, type Draws } from './analysis/belief/rng.ts';
export {
  choiceOffered,
  choicesOf,
  type OfferedChoice,
  recordWith,
  type Situation,
} from './analysis/belief/situation.ts';
export { type Alternative as RaceAlternative, anyOf, passesOf } from './analysis/comparison/alternatives.ts';
export {
  ANALYSIS_SEED,
  type Analyst,
  alternativesTo,
  analyse,
  createAnalyst,
} from './analysis/comparison/analyse.ts';
export { type Budget, DEEP, SHALLOW } from './analysis/comparison/budget.ts';
export { type Race, race } from './analysis/comparison/comparison.ts';
export { type Estimate, estimate } from './analysis/comparison/estimate.ts';
export { type Act, createWorldSource, type WorldSource } from './analysis/comparison/sampled-deals.ts';
export { screen } from './analysis/comparison/screen.ts';
export { normalPoint, studentUpper } from './analysis/comparison/student.ts';
export { SMALL_LOSS, verdictOf } from './analysis/comparison/verdict.ts';
export { createJudge } from './analysis/play/judge.ts';
export { completedLine, offerObjection, turnObjection } from './analysis/play/legality.ts';
export { afterOffer, afterTurn } from './analysis/play/move.ts';
export {
  type ExposedGroup,
  type Hand,
  type Offer,
  openPlay,
  type Play,
  type Turn,
} from './analysis/play/play.ts';
export { type PlayCard, preparePlayCard } from './analysis/play/play-card.ts';
export { sightOf } from './analysis/play/player-view.ts';
export { chooseAnswer, chooseDiscard, chooseExchange } from './analysis/play/policy.ts';
export { createPlayers, createSimulator } from './analysis/play/simulate.ts';
export {
  judgeDeeply,
  judgeOffered,
  type Question,
  questionsIn,
  sayLowered,
  withJudgement,
} from './analysis/review/deepen.ts';
export type { DeepJudgement, Finalist, Judgement, Measured } from './analysis/review/judgement.ts';
export type {
  ChoiceReview,
  Group,
  NumberReview,
  PassReview,
  Review,
} from './analysis/review/review.ts';
export { reviewRound } from './analysis/review/review-round.ts';
export type { PlayoutBatch, Playouts } from './analysis/rollouts/batch.ts';
export { RESULT_WIDTH, WORLD_BYTES } from './analysis/rollouts/batch.ts';
export type { Leaf } from './analysis/rollouts/leaf.ts';
export { GUMBEL } from './analysis/rollouts/noise.ts';
export { createPlayouts } from './analysis/rollouts/reference.ts';
export { createBatchPlayouts } from './analysis/rollouts/simd.ts';
export { createMeasures, MEASURES, type MeasureName } from './analysis/win-probability/features.ts';
export { OUTLOOK_MODEL } from './analysis/win-probability/model.ts';
export type { OutlookModel } from './analysis/win-probability/model-format.ts';
export type { ReachSteps } from './analysis/win-probability/reach.ts';
export { chanceAt, createOutlook, type Place } from './analysis/win-probability/win-probability.ts';
export { chooseFor } from './bots/choose.ts';
export { botStream, type Chooser, openStep, playOut } from './bots/play-out.ts';
export { PLAYING_ON_SEEDS, playsOn } from './bots/rollout-bot.ts';
export { compileCard } from './card/compile.ts';
export type { CompiledCard, Target } from './card/compiled.ts';
export {
  CARD_FORMAT,
  type CardFile,
  type CardGroup,
  type CardLine,
  type CardTile,
  cardFileSchema,
  cardJsonSchema,
} from './card/format.ts';
export { HOUSE_CARD, houseCard } from './card/house/card.ts';
export { parseCard } from './card/parse.ts';
export { CARD_PROBLEM_CODES, type CardProblem, type CardProblemCode } from './card/problem.ts';
export { inARow, likeNumbers } from './drill/constraint.ts';
export { rarityInWords, wishInWords } from './drill/constraint-words.ts';
export {
  type Amount,
  DRILL_FORMS,
  type Drill,
  type DrillDeal,
  drillSchema,
  type Wish,
} from './drill/format.ts';
export { type LineStart, nextOnLine, playLine } from './drill/guided.ts';
export {
  type BetterPass,
  betterPasses,
  closeJudge,
  interestingDeals,
  type Lookout,
  type PassJudge,
  quickJudge,
} from './drill/interesting.ts';
export { wilson } from './drill/interval.ts';
export { parseDrill, readDrill } from './drill/parse.ts';
export { botsAround, prepareDeal } from './drill/prepare.ts';
export { DRILL_PROBLEM_CODES, type DrillProblem } from './drill/problem.ts';
export type { Rarity } from './drill/rarity.ts';
export { discreet, discreetSpread } from './drill/report/anonymity.ts';
export { type ClassReport, classReport, type Discretion } from './drill/report/class-report.ts';
export { csvText } from './drill/report/csv.ts';
export type { ClassEntry } from './drill/report/entry.ts';
export { classMean } from './drill/report/mean.ts';
export { costliestThemes, THEMES, type Theme, themesOf } from './drill/report/mistake-categories.ts';
export { aimsCsv, choicesCsv, reportJson, themesCsv } from './drill/report/report-files.ts';
export { type Cost, type StepSpread, spreadsOf } from './drill/report/spread.ts';
export { describeRack, drawRack } from './drill/sampled.ts';
export { type Sampler, samplerFor } from './drill/sampler.ts';
export { type Stock, shapesOf } from './drill/shapes.ts';
export { usualChoice } from './drill/typical.ts';
export { weightedDraw } from './drill/weighted.ts';
export { log2 } from './kernels/log2.ts';
export { createRemovals } from './kernels/near-hands/removals.ts';
export { createUses } from './kernels/near-hands/tile-value.ts';
export { philox } from './kernels/philox.ts';
export { bytesOfBase64 } from './kernels/simd/base64.ts';
export { type WasmHost, wasmHost } from './kernels/simd/host.ts';
export { loadVectors, NO_VECTORS, type Vectors } from './kernels/simd/module.ts';
export { nearestFamilies, openFamilies, toGoByFamily } from './kernels/tiles-to-go/by-section.ts';
export type { Kernel } from './kernels/tiles-to-go/kernel.ts';
export { nearness, nearnessOf } from './kernels/tiles-to-go/nearness.ts';
export { createPlainKernel, tilesToGo } from './kernels/tiles-to-go/reference.ts';
export { type BatchKernel, createBatchKernel } from './kernels/tiles-to-go/simd.ts';
export { createKernel } from './kernels/tiles-to-go/swar.ts';
export { type ChoiceModel, createChoiceModel } from './policy/choice-model.ts';
export { expOfMinus } from './policy/exp.ts';
export { GIFT_GRADES, type GiftGrade, giftGrade } from './policy/gift.ts';
export { STYLES, type StyleName } from './policy/styles.ts';
export {
  CLASS_LIMITS,
  type ClassAct,
  type ClassAims,
  type ClassInfo,
  type ClassLine,
  type ClassTerms,
  classActSchema,
  classAimsSchema,
  classInfoSchema,
  classJoinedSchema,
  classOpenedSchema,
  classTermsSchema,
  type Desk,
  type DeskPupil,
  deskSchema,
  joinClassSchema,
  type OpenClass,
  openClassSchema,
  type Wall,
  type WallChoice,
  wallChoiceSchema,
  wallSchema,
} from './protocol/class.ts';
export { type DrillReport, drillReportSchema, stepSchema } from './protocol/class-report.ts';
export {
  DEAL_FILE_FORMAT,
  type DealFile,
  dealFileSchema,
  preparedDealFileSchema,
} from './protocol/deal-file.ts';
export { withNews } from './protocol/delta.ts';
export {
  type ClaimSeat,
  type ClientMessage,
  claimSeatSchema,
  clientMessageSchema,
  type HttpRefusal,
  httpRefusalSchema,
  lobbySchema,
  type OpenRoom,
  openRoomSchema,
  type PageLine,
  type RefusalCode,
  type Resume,
  type RoomTerms,
  roomOpenedSchema,
  roomTermsSchema,
  type SeatInfo,
  type ServerMessage,
  seatClaimedSchema,
  serverMessageSchema,
  type Table,
  type TableAct,
  type TableNews,
  ticketSchema,
} from './protocol/messages.ts';
export {
  CLASSES_PATH,
  cardPath,
  classLink,
  classMinePath,
  classPath,
  HOUSE_CARD_PATH,
  minePath,
  ROOMS_PATH,
  roomPath,
  SOCKET_PATH,
  seatsPath,
  tablePath,
  ticketPath,
} from './protocol/paths.ts';
export { type KeptEntry, keptSchema } from './protocol/personal-data.ts';
export { ROOM_REFUSALS, type RoomRefusalCode } from './protocol/refusals.ts';
export { judgementSchema, reviewSchema } from './protocol/review.ts';
export {
  CLOSE,
  HEARTBEAT_MS,
  MAX_FRAME_BYTES,
  PROTOCOL_VERSIONS,
  RETRY_SPREAD_MS,
} from './protocol/version.ts';
export { faceSchema, four, hexSchema, seatSchema, viewNewsSchema, viewSchema } from './protocol/views.ts';
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
  neighbour,
  SEATS,
  type Seat,
  withSeat,
} from './rules/deal/seat.ts';
export type { AnswerChoice, Choice, Command } from './rules/exchange/command.ts';
export { decide, facingOf, openRound } from './rules/exchange/decide.ts';
export type { RoundEvent } from './rules/exchange/event.ts';
export { begin, evolve, replay } from './rules/exchange/evolve.ts';
export { type Facing, objection, passObjection } from './rules/exchange/legality.ts';
export type { RoundRefusal } from './rules/exchange/refusal.ts';
export { resolveMove } from './rules/exchange/resolve.ts';
export type { Actor, Phase, Round, SealedPass, Settled, SettledMove } from './rules/exchange/round.ts';
export {
  MOVE_STEPS,
  MOVES,
  type MoveStep,
  PASS_SIZE,
  STEPS,
  type Step,
} from './rules/exchange/schedule.ts';
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
export { viewNews, withViewNews } from './rules/view/delta.ts';
export {
  ownStep,
  type PublicStep,
  type SeatMove,
  type SeatRecord,
  type SeatStep,
} from './rules/view/record.ts';
export {
  type Audience,
  type SeatView,
  seatView,
  type View,
  viewFor,
  type SpectatorView,
} from './rules/view/view.ts';
