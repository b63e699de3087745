// Every message between a page and the server, both ways; the one place where a frame becomes a type.
import { z } from 'zod';
import { STYLES } from '../policy/styles.ts';
import type { Choice } from '../rules/exchange/command.ts';
import { ROUND_REJECTION_CODES } from '../rules/exchange/rejection.ts';
import { MOVE_STEPS } from '../rules/exchange/schedule.ts';
import { faceSchema, four, seatSchema } from '../rules/schemas.ts';
import { ROOM_REJECTION_CODES } from './rejections.ts';
import { reviewSchema } from './review.ts';
import { viewDeltaSchema, viewSchema } from './views.ts';

/**
 * Made by the client and carried back by the answer. Random enough to be new for good: a command with an id
 * that the same person used before, on whatever page, is not done again and gets the earlier answer.
 */
const idSchema = z.string().min(1).max(36);
const codeSchema = z.string().min(1).max(40);

/** What a person types as a name, before the server's own rules about it. */
export const nameSchema = z.string().min(1).max(200);

const choiceSchema: z.ZodType<Choice> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('pass'),
    step: z.enum(MOVE_STEPS),
    // Room for a pass of the wrong size, so that the round itself refuses it in words.
    tiles: z.array(faceSchema).max(14).readonly(),
    blind: z.number(),
  }),
  z.strictObject({ kind: z.literal('withdraw'), step: z.enum(MOVE_STEPS) }),
  z.strictObject({ kind: z.literal('vote'), step: z.literal('vote'), go: z.boolean() }),
  z.strictObject({ kind: z.literal('ask'), step: z.literal('courtesy-ask'), count: z.number() }),
]);

/** What a seat may do at the table outside a round. */
const tableActionSchema = z.discriminatedUnion('kind', [
  /** Wants the next deal; it comes when every person present wants it. */
  z.strictObject({ kind: z.literal('ready'), ready: z.boolean() }),
  /** Host only: a bot style for a seat that no person holds. */
  z.strictObject({ kind: z.literal('seat-bot'), seat: seatSchema, style: z.enum(STYLES) }),
  /** Host only: frees a seat between rounds. */
  z.strictObject({ kind: z.literal('unseat'), seat: seatSchema }),
  /** Gives one's own seat up. */
  z.strictObject({ kind: z.literal('leave') }),
]);
export type TableAction = z.infer<typeof tableActionSchema>;

const connectionOriginSchema = z.strictObject({ page: idSchema, nth: z.int().min(0) });
/** A line of a page: who opened it, and how many that page had opened before. */
export type ConnectionOrigin = z.infer<typeof connectionOriginSchema>;

/** Frames from a page to the server. */
export const clientMessageSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('hello'),
    id: idSchema,
    /** Lowest and highest protocol version the client speaks. */
    versions: z.tuple([z.int(), z.int()]),
    /** One-use ticket from `POST /api/rooms/CODE/ticket`. */
    ticket: z.string().min(1).max(100),
    /** Number and seat of the last table that this page has of the room; the server may then send `news` of it. */
    resume: z.strictObject({ seq: z.int().min(0), you: seatSchema.nullable() }).optional(),
    /** A line that comes late never takes the place of a newer one of the same page. */
    from: connectionOriginSchema.exactOptional(),
  }),
  z.strictObject({
    kind: z.literal('choose'),
    id: idSchema,
    round: z.int().min(1),
    seat: seatSchema,
    choice: choiceSchema,
  }),
  z.strictObject({ kind: z.literal('action'), id: idSchema, action: tableActionSchema }),
]);
export type ClientMessage = z.infer<typeof clientMessageSchema>;
/** What a page says of the table it has. */
export type Resume = NonNullable<Extract<ClientMessage, { kind: 'hello' }>['resume']>;

/** Who sits on a seat, as everybody may know it. */
const seatInfoSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('empty') }),
  z.object({ kind: z.literal('bot'), name: z.string(), style: z.enum(STYLES) }),
  z.object({
    kind: z.literal('person'),
    name: z.string(),
    present: z.boolean(),
    ready: z.boolean(),
    host: z.boolean(),
  }),
]);
export type SeatInfo = z.infer<typeof seatInfoSchema>;

export const roomTermsSchema = z.strictObject({
  /** Seconds for each step, or null for no deadline (rule K1). */
  deadline: z.int().min(15).max(300).nullable(),
  /** Whether racks are laid open after the close (rule Z2). */
  revealRacks: z.boolean(),
});
export type RoomTerms = z.infer<typeof roomTermsSchema>;

const tableSchema = z.object({
  code: codeSchema,
  /** Null for a watcher. */
  you: seatSchema.nullable(),
  seats: four(seatInfoSchema),
  terms: roomTermsSchema,
  card: z.object({ id: z.string(), name: z.string() }),
  /** Number of the current or last round, 0 before the first deal. */
  round: z.int().min(0),
  /** Milliseconds left for the open step when this was sent, or null. */
  remaining: z.number().nullable(),
  /** Null before the first deal. Who sat down after the deal gets a watcher's view of that round. */
  view: viewSchema.nullable(),
  /** At a table of a class: whether the teacher holds it, whether a bot stands in for this seat, whether the card is shut. */
  controls: z.object({ held: z.boolean(), standIn: z.boolean(), cardClosed: z.boolean() }).exactOptional(),
});
export type Table = z.infer<typeof tableSchema>;

const tableDeltaSchema = tableSchema
  .pick({ you: true, seats: true, round: true, remaining: true, view: true, controls: true })
  .partial()
  /** What has changed in the view; `view` itself comes with another round or another audience. */
  .extend({ viewDelta: viewDeltaSchema.exactOptional() });
/** The parts of a table that are other than they were; `applyDelta` puts them in. */
export type TableDelta = z.infer<typeof tableDeltaSchema>;

export const rejectionCodeSchema = z.enum([...ROUND_REJECTION_CODES, ...ROOM_REJECTION_CODES]);
export type RejectionCode = z.infer<typeof rejectionCodeSchema>;

/** Frames from the server to a page. */
export const serverMessageSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('welcome'), id: idSchema, version: z.int() }),
  /** The command with this id is done and will not be undone by a restart of the page. */
  z.object({ kind: z.literal('ack'), id: idSchema }),
  /** The command changed nothing; `id` is null when the frame could not be read far enough to find one. */
  z.object({
    kind: z.literal('rejected'),
    id: idSchema.nullable(),
    code: rejectionCodeSchema,
    message: z.string(),
  }),
  /**
   * Everything this audience may know now; replaces what was sent before. `seq` counts the room's events and
   * never goes back.
   */
  z.object({ kind: z.literal('table'), seq: z.int(), table: tableSchema }),
  /**
   * What has changed since the table with number `after`, which is the one told last, or the one that a `hello`
   * resumes from. Who does not have that one connects anew and resumes from nothing.
   */
  z.object({ kind: z.literal('delta'), after: z.int(), seq: z.int(), table: tableDeltaSchema }),
  /** Whether the server can keep anything just now. While it cannot, the table is there to look at. */
  z.object({ kind: z.literal('storage'), writable: z.boolean() }),
  /** Sent at short intervals: a line that stays silent for longer than two of them is dead. */
  z.object({ kind: z.literal('heartbeat') }),
  /**
   * This seat's private review of a closed round: the first answer, then again and again as choices are judged more
   * deeply. `more` is false with the last one; a choice that is not judged deeply by then keeps its first answer.
   */
  z.object({
    kind: z.literal('review'),
    round: z.int(),
    review: reviewSchema,
    more: z.boolean().optional(),
  }),
]);
export type ServerMessage = z.infer<typeof serverMessageSchema>;

/** HTTP: `POST /api/rooms`. */
export const openRoomSchema = z.strictObject({
  name: nameSchema,
  /** Alone: bots take the other seats and the first deal comes at once. */
  mode: z.enum(['alone', 'friends']),
  terms: roomTermsSchema,
  /** Styles for the seats to the right, across and to the left of the one who opens; null leaves a seat free. */
  bots: z.tuple([z.enum(STYLES).nullable(), z.enum(STYLES).nullable(), z.enum(STYLES).nullable()]),
  /** A card file of the owner's, or null for the house card. Checked by the card validator. */
  card: z.unknown().nullable(),
});
export type OpenRoom = z.infer<typeof openRoomSchema>;

/** HTTP: `POST /api/rooms/CODE/seats`. */
export const claimSeatSchema = z.strictObject({ name: nameSchema, seat: seatSchema.nullable() });
export type ClaimSeat = z.infer<typeof claimSeatSchema>;

/** HTTP answers. */
export const roomOpenedSchema = z.object({ code: codeSchema, seat: seatSchema });
export const seatClaimedSchema = z.object({ seat: seatSchema });
export const ticketSchema = z.object({ ticket: z.string(), seat: seatSchema.nullable() });
/** `GET /api/rooms/CODE`: what a person with the code may know before sitting down. */
export const lobbySchema = z.object({
  code: codeSchema,
  seats: four(seatInfoSchema),
  terms: roomTermsSchema,
  card: z.object({ id: z.string(), name: z.string() }),
  round: z.int(),
});
/** Every HTTP answer that is not 2xx. */
export const httpRejectionSchema = z.object({
  code: rejectionCodeSchema,
  message: z.string(),
  /** What is wrong in a card file, one sentence each; empty for every other refusal. */
  problems: z.array(z.string()),
});
export type HttpRejection = z.infer<typeof httpRejectionSchema>;
