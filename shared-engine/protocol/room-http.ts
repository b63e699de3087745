// The schemas of the HTTP requests and answers of a room.
import { z } from 'zod';
import { STYLES } from '../policy/index.ts';
import { askedTermsSchema, four, seatSchema, termsSchema } from '../rules/index.ts';
import { rejectionCodeSchema } from './rejections.ts';
import { codeSchema, seatInfoSchema } from './table.ts';

/** A name as typed; the server's own rules about names come on top. */
export const nameSchema = z.string().min(1).max(200);

/** Where a new seat's secret comes back: in a cookie unless this says otherwise, or for a program in the answer itself. */
const secretInSchema = z.enum(['cookie', 'body']).exactOptional();
/** The secret of the seat; only for a program that asked for it, or that brought the one before as a bearer. */
const secretSchema = z.string().exactOptional();

/** `POST /api/rooms`. */
export const openRoomSchema = z.strictObject({
  name: nameSchema,
  /** `alone`: bots take the other seats and the first deal comes at once. */
  mode: z.enum(['alone', 'friends']),
  terms: askedTermsSchema,
  /** Bot styles for the seats to the right of the host, across and to the left; null leaves a seat empty. */
  bots: z.tuple([z.enum(STYLES).nullable(), z.enum(STYLES).nullable(), z.enum(STYLES).nullable()]),
  /** The host's card file, or null for the house card. The card parser checks it. */
  card: z.unknown().nullable(),
  secretIn: secretInSchema,
});
export type OpenRoom = z.infer<typeof openRoomSchema>;

/** `POST /api/rooms/CODE/seats`. */
export const claimSeatSchema = z.strictObject({
  name: nameSchema,
  /** Null for any free one. */
  seat: seatSchema.nullable(),
  secretIn: secretInSchema,
});
export type ClaimSeat = z.infer<typeof claimSeatSchema>;

/** `POST /api/rooms/CODE/invitations`. */
export const inviteBotSchema = z.strictObject({ seat: seatSchema });
/** The secret opens the seat to one bot; nobody is told it again. */
export const botInvitedSchema = z.object({ seat: seatSchema, secret: z.string() });
/** `POST /api/rooms/CODE/bots`. */
export const seatBotSchema = z.strictObject({ name: nameSchema });

export const roomOpenedSchema = z.object({ code: codeSchema, seat: seatSchema, secret: secretSchema });
export const seatClaimedSchema = z.object({ seat: seatSchema, secret: secretSchema });
export const ticketSchema = z.object({
  ticket: z.string(),
  /** Null for a spectator. */
  seat: seatSchema.nullable(),
  secret: secretSchema,
});
/** `GET /api/rooms/CODE`: what anybody with the code may know before sitting down. */
export const lobbySchema = z.object({
  code: codeSchema,
  seats: four(seatInfoSchema),
  terms: termsSchema,
  card: z.object({ id: z.string(), name: z.string() }),
  round: z.int(),
});
/** `GET` of `VERSION_PATH`: which version runs, and the lowest and the highest protocol version that it speaks. */
export const versionSchema = z.object({
  version: z.string(),
  protocol: z.object({ lowest: z.int(), highest: z.int() }),
});
/** Every HTTP answer that is not 2xx. */
export const httpRejectionSchema = z.object({
  code: rejectionCodeSchema,
  message: z.string(),
  /** What is wrong in a card or drill file or with a server, one sentence each; empty for every other rejection. */
  problems: z.array(z.string()),
});
export type HttpRejection = z.infer<typeof httpRejectionSchema>;

/** One entry of the data stored about a person: when it was stored, what it is, and its contents. */
const personalDataEntrySchema = z.looseObject({
  /** Milliseconds since 1970. */
  at: z.number(),
  what: z.string(),
});
export type PersonalDataEntry = z.infer<typeof personalDataEntrySchema>;

/** `GET` of `personalDataPath` and `classPersonalDataPath`, oldest first. */
export const personalDataSchema = z.object({ entries: z.array(personalDataEntrySchema).readonly() });
