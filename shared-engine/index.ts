// The one door of the engine: what the server, the page and the tests may use.

export { BATCH, type Belief, createBelief } from './belief/belief.ts';
export { type ChoiceModel, createChoiceModel } from './belief/choice-model.ts';
export { createDraws, type Draws } from './belief/draws.ts';
export { expOfMinus } from './belief/exp.ts';
export {
  choiceOffered,
  choicesOf,
  type OfferedChoice,
  recordWith,
  type Situation,
} from './belief/situation.ts';
export { createUses } from './belief/uses.ts';
export { chooseFor } from './bots/choose.ts';
export { botStream, type Chooser, openStep, playOut } from './bots/play-out.ts';
export { PLAYING_ON_SEEDS, playsOn } from './bots/playing-on.ts';
export { STYLES, type StyleName } from './bots/style.ts';
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
export { checkDeal, commitmentTo, type DealCheck } from './deal/commitment.ts';
export {
  type Deal,
  dealTiles,
  dealtSize,
  isSeed,
  type PreparedDeal,
} from './deal/deal.ts';
export { drawn, type Random, shuffled, stream } from './deal/random.ts';
export {
  DIRECTIONS,
  type Direction,
  forFour,
  giverTo,
  neighbour,
  SEATS,
  type Seat,
  withSeat,
} from './deal/seat.ts';
export { describeRack, drawRack } from './drill/described.ts';
export {
  type Amount,
  DRILL_FORMS,
  type Drill,
  type DrillDeal,
  drillSchema,
  type Wish,
} from './drill/format.ts';
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
export { type LineStart, nextOnLine, playLine } from './drill/line.ts';
export { parseDrill, readDrill } from './drill/parse.ts';
export { botsAround, prepareDeal } from './drill/prepare.ts';
export { DRILL_PROBLEM_CODES, type DrillProblem } from './drill/problem.ts';
export type { Rarity } from './drill/rarity.ts';
export { classMean } from './drill/report/class-mean.ts';
export { type ClassReport, classReport, type Discretion } from './drill/report/class-report.ts';
export { csvText } from './drill/report/csv.ts';
export { discreet, discreetSpread } from './drill/report/discretion.ts';
export type { ClassEntry } from './drill/report/entry.ts';
export { aimsCsv, choicesCsv, reportJson, themesCsv } from './drill/report/report-files.ts';
export { type Cost, type StepSpread, spreadsOf } from './drill/report/spread.ts';
export { costliestThemes, THEMES, type Theme, themesOf } from './drill/report/themes.ts';
export { type Sampler, samplerFor } from './drill/sampler.ts';
export { type Stock, shapesOf } from './drill/shapes.ts';
export { usualChoice } from './drill/usual.ts';
export { weightedDraw } from './drill/weighted.ts';
export { inARow, likeNumbers } from './drill/wish.ts';
export { rarityInWords, wishInWords } from './drill/wish-words.ts';
export type { AnswerChoice, Choice, Command } from './exchange/command.ts';
export { decide, facingOf, openRound } from './exchange/decide.ts';
export type { RoundEvent } from './exchange/event.ts';
export { begin, evolve, replay } from './exchange/evolve.ts';
export { type Facing, objection, passObjection } from './exchange/legality.ts';
export type { RoundRefusal } from './exchange/refusal.ts';
export { resolveMove } from './exchange/resolve.ts';
export type { Actor, Phase, Round, SealedPass, Settled, SettledMove } from './exchange/round.ts';
export {
  MOVE_STEPS,
  MOVES,
  type MoveStep,
  PASS_SIZE,
  STEPS,
  type Step,
} from './exchange/schedule.ts';
export { createMeasures, MEASURES, type MeasureName } from './outlook/measures.ts';
export { OUTLOOK_MODEL } from './outlook/model.ts';
export type { OutlookModel } from './outlook/model-format.ts';
export { chanceAt, createOutlook, type Place } from './outlook/outlook.ts';
export type { ReachSteps } from './outlook/reach.ts';
export { createJudge } from './play/judge.ts';
export { completedLine, offerObjection, turnObjection } from './play/legality.ts';
export { afterOffer, afterTurn } from './play/move.ts';
export {
  type ExposedGroup,
  type Hand,
  type Offer,
  openPlay,
  type Play,
  type Turn,
} from './play/play.ts';
export { type PlayCard, preparePlayCard } from './play/play-card.ts';
export { chooseAnswer, chooseDiscard, chooseExchange } from './play/policy.ts';
export { sightOf } from './play/sight.ts';
export { createPlayers, createSimulator } from './play/simulate.ts';
export type { PlayoutBatch, Playouts } from './playout/batch.ts';
export { RESULT_WIDTH, WORLD_BYTES } from './playout/batch.ts';
export type { Leaf } from './playout/leaf.ts';
export { GUMBEL } from './playout/noise.ts';
export { philox } from './playout/philox.ts';
export { createPlayouts } from './playout/playouts.ts';
export { createRemovals } from './playout/removals.ts';
export { createBatchPlayouts } from './playout/vector.ts';
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
export { type KeptEntry, keptSchema } from './protocol/mine.ts';
export { withNews } from './protocol/news.ts';
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
export { type Alternative as RaceAlternative, anyOf, passesOf } from './race/alternatives.ts';
export {
  ANALYSIS_SEED,
  type Analyst,
  alternativesTo,
  analyse,
  createAnalyst,
} from './race/analyse.ts';
export { type Budget, DEEP, SHALLOW } from './race/budget.ts';
export { type Estimate, estimate } from './race/estimate.ts';
export { type Race, race } from './race/race.ts';
export { screen } from './race/screen.ts';
export { normalPoint, studentUpper } from './race/student.ts';
export { SMALL_LOSS, verdictOf } from './race/verdict.ts';
export { type Act, createWorldSource, type WorldSource } from './race/worlds.ts';
export { nearestFamilies, openFamilies, toGoByFamily } from './rack/families.ts';
export { createKernel } from './rack/fast.ts';
export { GIFT_GRADES, type GiftGrade, giftGrade } from './rack/gift.ts';
export type { Kernel } from './rack/kernel.ts';
export { log2 } from './rack/log2.ts';
export { nearness, nearnessOf } from './rack/nearness.ts';
export { createPlainKernel, tilesToGo } from './rack/plain.ts';
export { type BatchKernel, createBatchKernel } from './rack/vector.ts';
export {
  judgeDeeply,
  judgeOffered,
  type Question,
  questionsIn,
  sayLowered,
  withJudgement,
} from './review/deepen.ts';
export type { DeepJudgement, Finalist, Judgement, Measured } from './review/judgement.ts';
export type {
  ChoiceReview,
  Group,
  NumberReview,
  PassReview,
  Review,
} from './review/review.ts';
export { reviewRound } from './review/review-round.ts';
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
export { viewNews, withViewNews } from './view/news.ts';
export { ownStep, type PublicStep, type SeatMove, type SeatRecord, type SeatStep } from './view/record.ts';
export {
  type Audience,
  type SeatView,
  seatView,
  type View,
  viewFor,
  type WatcherView,
} from './view/view.ts';
export { bytesOfBase64 } from './wasm/base64.ts';
export { type WasmHost, wasmHost } from './wasm/host.ts';
export { loadVectors, NO_VECTORS, type Vectors } from './wasm/vectors.ts';
