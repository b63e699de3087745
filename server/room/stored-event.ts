// The JSON of a room's events and snapshots: what is stored today is read back tomorrow, or an error says so.
import { z } from 'zod';
import {
  four,
  MODES,
  PHRASES,
  STYLES,
  seatSchema,
  stepSchema,
  termsSchema,
} from '../../shared-engine/index.ts';
import type { EventCodec } from '../aggregate/recorded.ts';
import { storedJson } from '../aggregate/stored-json.ts';
import type { RoomEvent } from './event.ts';
import { cardChoiceSchema, dealtSchema, roundEventSchema, usedSchema } from './stored-round.ts';

const origin = z.strictObject({ page: z.string(), nth: z.int() });
const style = z.enum(STYLES);

const secrets = z.strictObject({
  current: z.string(),
  successors: z.array(z.strictObject({ hash: z.string(), parent: z.string() })).readonly(),
  retired: z.array(z.strictObject({ hash: z.string(), at: z.number(), shown: z.boolean() })).readonly(),
});

const controls = z.strictObject({
  holdBefore: stepSchema.nullable(),
  standIn: z.array(seatSchema).readonly(),
  guided: z.boolean().exactOptional(),
  cardClosed: z.boolean().exactOptional(),
  coach: z.literal(true).exactOptional(),
  classOver: z.literal(true).exactOptional(),
  amongFriends: z.literal(true).exactOptional(),
});

const said = { seat: seatSchema, phrase: z.enum(PHRASES), to: seatSchema.nullable() };

/** Whoever holds a seat by a secret, as a snapshot has it. */
const holding = {
  name: z.string(),
  secrets,
  warn: z.boolean(),
  since: z.int(),
  presence: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('connected'),
      node: z.string(),
      connection: z.string(),
      from: origin.exactOptional(),
    }),
    z.strictObject({
      kind: z.literal('disconnected'),
      since: z.number(),
      last: z.strictObject({ connection: z.string(), from: origin.exactOptional() }).nullable(),
    }),
  ]),
};

const roomEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('opened'),
    mode: z.enum(MODES),
    terms: termsSchema,
    card: cardChoiceSchema,
    classCode: z.string().nullable(),
  }),
  z.strictObject({
    kind: z.literal('seat-taken'),
    seat: seatSchema,
    name: z.string(),
    secretHash: z.string(),
  }),
  z.strictObject({ kind: z.literal('seat-vacated'), seat: seatSchema }),
  z.strictObject({ kind: z.literal('seat-renamed'), seat: seatSchema, name: z.string() }),
  z.strictObject({ kind: z.literal('bot-seated'), seat: seatSchema, name: z.string(), style }),
  z.strictObject({ kind: z.literal('bot-invited'), seat: seatSchema, secretHash: z.string() }),
  z.strictObject({ kind: z.literal('invitation-revoked'), seat: seatSchema }),
  z.strictObject({
    kind: z.literal('external-bot-seated'),
    seat: seatSchema,
    name: z.string(),
    secretHash: z.string(),
  }),
  z.strictObject({
    kind: z.literal('connected'),
    seat: seatSchema,
    node: z.string(),
    connection: z.string(),
    from: origin.exactOptional(),
  }),
  z.strictObject({ kind: z.literal('disconnected'), seat: seatSchema, connection: z.string() }),
  z.strictObject({
    kind: z.literal('secret-issued'),
    seat: seatSchema,
    secretHash: z.string(),
    shown: z.string(),
  }),
  z.strictObject({ kind: z.literal('secret-confirmed'), seat: seatSchema, secretHash: z.string() }),
  z.strictObject({ kind: z.literal('old-secret-shown'), seat: seatSchema, secretHash: z.string() }),
  z.strictObject({
    kind: z.literal('timer-claimed'),
    node: z.string(),
    others: z.array(z.string()).readonly(),
  }),
  z.strictObject({ kind: z.literal('seats-swapped'), seat: seatSchema, other: seatSchema }),
  z.strictObject({ kind: z.literal('said'), ...said }),
  z.strictObject({ kind: z.literal('terms-changed'), terms: termsSchema }),
  z.strictObject({ kind: z.literal('ready'), seat: seatSchema, ready: z.boolean() }),
  z.strictObject({ kind: z.literal('controls-changed'), controls }),
  z.strictObject({ kind: z.literal('more-time'), seconds: z.int() }),
  z.strictObject({ kind: z.literal('round'), event: roundEventSchema }),
  z.strictObject({ kind: z.literal('closed') }),
]);

const seatState = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('empty') }),
  z.strictObject({ kind: z.literal('bot'), name: z.string(), style }),
  z.strictObject({ kind: z.literal('person'), ...holding, ready: z.boolean(), unready: z.int() }),
  z.strictObject({ kind: z.literal('external-bot'), ...holding }),
]);

/** A room at any moment, without what cannot change after its opening; the round is the deal and the shortest log behind it. */
const roomSnapshot = z.strictObject({
  seq: z.int(),
  at: z.int(),
  /** As they were changed last. */
  terms: termsSchema,
  seats: four(seatState),
  host: seatSchema.nullable(),
  invitations: four(z.string().nullable()),
  controls,
  timerOwners: z.array(z.string()).readonly(),
  returns: four(usedSchema),
  sittings: four(usedSchema),
  moves: four(usedSchema),
  changes: usedSchema,
  said: z.array(z.strictObject({ ...said, nth: z.int() })).readonly(),
  phrases: four(usedSchema),
  play: z
    .strictObject({
      number: z.int(),
      dealtSeq: z.int(),
      dealt: dealtSchema,
      stepAt: z.number(),
      withdrawals: four(z.int()),
      moreTime: z.number(),
      events: z.array(roundEventSchema).readonly(),
    })
    .nullable(),
});

/** Takes any event there is, or this does not compile. */
export const roomEvents: EventCodec<RoomEvent> = {
  textOf: (events: readonly z.infer<typeof roomEvent>[]) => JSON.stringify(events),
  eventsFrom: (text) => storedJson(z.array(roomEvent), text),
};

export type RoomSnapshot = z.infer<typeof roomSnapshot>;

export function roomSnapshotFrom(text: string): RoomSnapshot {
  return storedJson(roomSnapshot, text);
}
