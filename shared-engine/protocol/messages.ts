// The schemas of every message on the socket between a page and the server, in both directions.
import { z } from 'zod';
import { STYLES } from '../policy/index.ts';
import { askedTermsSchema, type Choice, faceSchema, MOVE_STEPS, seatSchema } from '../rules/index.ts';
import { rejectionCodeSchema } from './rejections.ts';
import { reviewSchema } from './review.ts';
import { PHRASES, tableDeltaSchema, tableSchema } from './table.ts';

/**
 * Made by the client and returned with the answer. Random, so that no id comes twice: a command with an id that the
 * same person has used before, on any page, is not carried out again and gets the earlier answer.
 */
const idSchema = z.string().min(1).max(36);

/** A seat's choice, as it crosses the wire and as the page stores it. */
export const choiceSchema: z.ZodType<Choice> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('pass'),
    step: z.enum(MOVE_STEPS),
    // Longer than any legal pass, so that the round itself rejects a wrong number of tiles with its message.
    tiles: z.array(faceSchema).max(14).readonly(),
    blind: z.number(),
  }),
  z.strictObject({ kind: z.literal('withdraw'), step: z.enum(MOVE_STEPS) }),
  z.strictObject({ kind: z.literal('vote'), step: z.literal('vote'), go: z.boolean() }),
  z.strictObject({ kind: z.literal('ask'), step: z.literal('courtesy-ask'), count: z.number() }),
]);

/** What a person may do at the table besides choosing in a round. */
const tableActionSchema = z.discriminatedUnion('kind', [
  /** Whether this person wants the next deal; it is dealt when every person present wants it. */
  z.strictObject({ kind: z.literal('ready'), ready: z.boolean() }),
  /** Host only: seats a bot of this style on a seat that no person holds. */
  z.strictObject({ kind: z.literal('seat-bot'), seat: seatSchema, style: z.enum(STYLES) }),
  /**
   * Host only: removes whoever holds the seat, a bot of the server between rounds alone; in a round one takes over the
   * tiles of a person or of an external bot.
   */
  z.strictObject({ kind: z.literal('unseat'), seat: seatSchema }),
  /** Host only: the link that was made for an external bot on this seat seats nobody any more. */
  z.strictObject({ kind: z.literal('revoke-invitation'), seat: seatSchema }),
  /**
   * Host only, between rounds: how the table plays from the next deal on; what is not named is as usual. Whoever was
   * ready is asked again.
   */
  z.strictObject({ kind: z.literal('set-terms'), terms: askedTermsSchema }),
  /** Before the first deal: changes places with a seat that nobody holds; the host with any seat. */
  z.strictObject({ kind: z.literal('swap-seats'), seat: seatSchema }),
  /** To everybody, where `to` is null; `your-turn` to a person whom the table waits for. */
  z.strictObject({ kind: z.literal('say'), phrase: z.enum(PHRASES), to: seatSchema.nullable() }),
  /** Gives up one's own seat. */
  z.strictObject({ kind: z.literal('leave') }),
]);
export type TableAction = z.infer<typeof tableActionSchema>;

const connectionOriginSchema = z.strictObject({ page: idSchema, nth: z.int().min(0) });
/** Which page opened a connection, and how many connections it had opened before. */
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
    /** Number and seat of the last table that this page has of the room; the server may then send a `delta` to it. */
    resume: z.strictObject({ seq: z.int().min(0), you: seatSchema.nullable() }).optional(),
    /** So that a connection that arrives late never replaces a newer one of the same page. */
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
  /**
   * Who analyzes the choices of the own seat in this round as long as this connection is open: the page itself, or the
   * server, which is as usual. The server then leaves them to the end; a page that cannot do it after all says `server`.
   */
  z.strictObject({
    kind: z.literal('analyzed-by'),
    id: idSchema,
    round: z.int().min(1),
    by: z.enum(['page', 'server']),
  }),
]);
export type ClientMessage = z.infer<typeof clientMessageSchema>;
/** The table that a page has already. */
export type Resume = NonNullable<Extract<ClientMessage, { kind: 'hello' }>['resume']>;

/** Frames from the server to a page. */
export const serverMessageSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('welcome'), id: idSchema, version: z.int() }),
  /** The command with this id is carried out and stored. */
  z.object({ kind: z.literal('ack'), id: idSchema }),
  /** The command changed nothing; `id` is null when the message was not read, or not far enough to find one. */
  z.object({
    kind: z.literal('rejected'),
    id: idSchema.nullable(),
    code: rejectionCodeSchema,
    message: z.string(),
  }),
  /** Everything this audience may know now; replaces what was sent before. `seq` counts the room's events and never falls. */
  z.object({ kind: z.literal('table'), seq: z.int(), table: tableSchema }),
  /**
   * What has changed since the table with number `after`: the one sent last, or the one that a `hello` resumes from.
   * A page that does not have it connects again and resumes from nothing.
   */
  z.object({ kind: z.literal('delta'), after: z.int(), seq: z.int(), table: tableDeltaSchema }),
  /** Whether the server can store anything at the moment. While it cannot, the table can only be looked at. */
  z.object({ kind: z.literal('storage'), writable: z.boolean() }),
  /** Somebody has brought an old secret of this seat and was turned away; the one in use stays good. */
  z.object({ kind: z.literal('old-secret-shown') }),
  /** Sent at regular intervals: a connection that is silent for longer than two of them is dead. */
  z.object({ kind: z.literal('heartbeat') }),
  /**
   * This seat's private review of a closed round: the quick one first, then again as deep analyses arrive. `more` is
   * false with the last one; a choice that has no deep analysis by then keeps its quick one.
   */
  z.object({
    kind: z.literal('review'),
    round: z.int(),
    review: reviewSchema,
    more: z.boolean().optional(),
  }),
]);
export type ServerMessage = z.infer<typeof serverMessageSchema>;
