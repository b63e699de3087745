// The protocol layer: the messages between page and server.

export { ADVICE, rejectionCatalogue } from './advice.ts';
export { asyncApiDocument } from './async-api.ts';
export {
  type BigScreen,
  bigScreenSchema,
  bringKeySchema,
  bringScreenCodeSchema,
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
  isAnonymous,
  joinClassSchema,
  type OpenClass,
  openClassSchema,
  privacyOf,
  type ShownStep,
  screenCodeSchema,
  shownStepSchema,
  teacherKeySchema,
} from './class.ts';
export {
  analyzedChoiceSchema,
  type DrillReport,
  drillReportSchema,
  frozenSpreadSchema,
} from './class-report.ts';
export { checkDealFile, type DealFile, dealFileSchema } from './deal-file.ts';
export { type JsonObject, jsonSchemasOf, schemaRef } from './json-schema.ts';
export {
  type ClientMessage,
  type ConnectionOrigin,
  choiceSchema,
  clientMessageSchema,
  type Resume,
  type ServerMessage,
  serverMessageSchema,
  type TableAction,
} from './messages.ts';
export {
  botLink,
  CLASS_PAGES,
  CLASSES_PATH,
  cardPath,
  classLink,
  classPath,
  classPersonalDataPath,
  HOUSE_CARD_PATH,
  invitationsPath,
  PREPARE_PATH,
  personalDataPath,
  ROOMS_PATH,
  roomPath,
  SAME_DEALS_PATH,
  SOCKET_PATH,
  seatsPath,
  tablePath,
  teacherLink,
  ticketPath,
  VERSION_PATH,
} from './paths.ts';
export { type RejectionCode, ROOM_REJECTIONS, type RoomRejectionCode } from './rejections.ts';
export {
  botInvitedSchema,
  type ClaimSeat,
  claimSeatSchema,
  type HttpRejection,
  httpRejectionSchema,
  inviteBotSchema,
  lobbySchema,
  type OpenRoom,
  openRoomSchema,
  type PersonalDataEntry,
  personalDataSchema,
  roomOpenedSchema,
  seatBotSchema,
  seatClaimedSchema,
  ticketSchema,
  versionSchema,
} from './room-http.ts';
export {
  type FriendChoice,
  type FriendChoices,
  friendChoicesSchema,
  type OpenSameDeal,
  openSameDealSchema,
} from './same-deal.ts';
export {
  applyDelta,
  PHRASES,
  type Phrase,
  type Said,
  type SeatInfo,
  type Table,
  type TableDelta,
} from './table.ts';
export {
  CLOSE,
  HEARTBEAT_MS,
  MAX_FRAME_BYTES,
  PING_MS,
  PROTOCOL_VERSIONS,
  RETRY_SPREAD_MS,
} from './version.ts';
export { leafProofSchema, openedRoundSchema, recordSchema } from './views.ts';
