// The bodies of requests and answers over HTTP, by the names that they have in the OpenAPI document, with examples.
import { z } from 'zod';
import {
  bigScreenSchema,
  botInvitedSchema,
  cardFileSchema,
  claimSeatSchema,
  classActionSchema,
  classAimsSchema,
  classInfoSchema,
  classJoinedSchema,
  classOpenedSchema,
  dashboardSchema,
  drillReportSchema,
  friendChoicesSchema,
  httpRejectionSchema,
  inviteBotSchema,
  joinClassSchema,
  lobbySchema,
  openClassSchema,
  openRoomSchema,
  openSameDealSchema,
  personalDataSchema,
  roomOpenedSchema,
  seatBotSchema,
  seatClaimedSchema,
  ticketSchema,
  versionSchema,
} from '../../shared-engine/index.ts';

/** The bodies of requests and answers, by the names that they have in the document. */
export const BODIES = {
  BigScreen: bigScreenSchema,
  BotInvited: botInvitedSchema,
  CardFile: cardFileSchema,
  ClaimSeat: claimSeatSchema,
  ClassAction: classActionSchema,
  ClassAims: classAimsSchema,
  ClassInfo: classInfoSchema,
  ClassJoined: classJoinedSchema,
  ClassOpened: classOpenedSchema,
  ClassReport: drillReportSchema,
  Dashboard: dashboardSchema,
  Document: z.looseObject({}),
  FriendChoices: friendChoicesSchema,
  InviteBot: inviteBotSchema,
  JoinClass: joinClassSchema,
  Lobby: lobbySchema,
  Ok: z.object({ ok: z.literal(true) }),
  OpenClass: openClassSchema,
  OpenRoom: openRoomSchema,
  OpenSameDeal: openSameDealSchema,
  PersonalData: personalDataSchema,
  Rejection: httpRejectionSchema,
  RoomOpened: roomOpenedSchema,
  SeatBot: seatBotSchema,
  SeatClaimed: seatClaimedSchema,
  Ticket: ticketSchema,
  Version: versionSchema,
} as const;
export type Body = keyof typeof BODIES;

const TERMS = { deadline: 60, revealRacks: false } as const;
const [CODE, SECRET] = ['EXAMPLE2', 'S'.repeat(43)];

/** Those that somebody who writes a client needs first. */
export const EXAMPLES: { readonly [Name in Body]?: z.input<(typeof BODIES)[Name]> } = {
  OpenRoom: {
    name: 'Ines',
    mode: 'friends',
    terms: TERMS,
    bots: ['strong', null, null],
    card: null,
    secretIn: 'body',
  },
  RoomOpened: { code: CODE, seat: 0, secret: SECRET },
  ClaimSeat: { name: 'Odo', seat: null, secretIn: 'body' },
  SeatClaimed: { seat: 2, secret: SECRET },
  InviteBot: { seat: 2 },
  BotInvited: { seat: 2, secret: SECRET },
  SeatBot: { name: 'Rote' },
  Ticket: { ticket: 'T'.repeat(43), seat: 2, secret: SECRET },
};
