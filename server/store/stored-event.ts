// The border between a store and the rooms: from the text a store has kept to a true event, or an error in words.
import { z } from 'zod';
import {
  cardFileSchema,
  faceSchema,
  four,
  hexSchema,
  MOVE_STEPS,
  type RoundEvent,
  roomTermsSchema,
  STYLES,
  seatSchema,
} from '../../shared-engine/index.ts';
import type { RoomEvent } from '../room/event.ts';

type OneOf<T extends { readonly kind: string }> = {
  readonly [K in T['kind']]: z.ZodType<Extract<T, { readonly kind: K }>>;
};

const tiles = z.array(faceSchema).readonly();
const actor = z.enum(['owner', 'bot', 'stand-in']);
const step = z.enum(MOVE_STEPS);

const settled = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('move'),
    step,
    own: four(tiles),
    forwarded: four(tiles),
    kept: four(tiles),
    blind: four(z.int()),
    voided: z.int(),
    by: four(actor.nullable()),
  }),
  z.strictObject({ kind: z.literal('vote'), go: four(z.boolean()), by: four(actor) }),
  z.strictObject({
    kind: z.literal('ask'),
    asked: four(z.int()),
    agreed: four(z.int()),
    by: four(actor),
  }),
]);

const ROUND_EVENTS: OneOf<RoundEvent> = {
  dealt: z.strictObject({
    kind: z.literal('dealt'),
    deal: z.union([
      z.strictObject({ seed: hexSchema, dealer: seatSchema }),
      z.strictObject({ seed: hexSchema, dealer: seatSchema, prepared: four(tiles) }),
    ]),
    terms: z.strictObject({ layOpen: z.boolean() }),
    commitment: hexSchema.nullable(),
  }),
  sealed: z.strictObject({
    kind: z.literal('sealed'),
    seat: seatSchema,
    step,
    pass: z.strictObject({ tiles, blind: z.int(), by: actor }),
  }),
  'taken-back': z.strictObject({ kind: z.literal('taken-back'), seat: seatSchema, step }),
  voted: z.strictObject({ kind: z.literal('voted'), seat: seatSchema, go: z.boolean(), by: actor }),
  asked: z.strictObject({ kind: z.literal('asked'), seat: seatSchema, count: z.int(), by: actor }),
  settled: z.strictObject({ kind: z.literal('settled'), outcome: settled }),
  closed: z.strictObject({ kind: z.literal('closed') }),
};

const ROOM_EVENTS: OneOf<RoomEvent> = {
  opened: z.strictObject({
    kind: z.literal('opened'),
    door: z.enum(['alone', 'friends']),
    terms: roomTermsSchema,
    card: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('house') }),
      z.strictObject({ kind: z.literal('file'), file: cardFileSchema }),
    ]),
  }),
  'seat-taken': z.strictObject({
    kind: z.literal('seat-taken'),
    seat: seatSchema,
    name: z.string(),
    key: z.string(),
  }),
  'seat-freed': z.strictObject({ kind: z.literal('seat-freed'), seat: seatSchema }),
  'bot-seated': z.strictObject({
    kind: z.literal('bot-seated'),
    seat: seatSchema,
    name: z.string(),
    style: z.enum(STYLES),
  }),
  ready: z.strictObject({ kind: z.literal('ready'), seat: seatSchema, ready: z.boolean() }),
  round: z.strictObject({ kind: z.literal('round'), event: z.union(Object.values(ROUND_EVENTS)) }),
  closed: z.strictObject({ kind: z.literal('closed') }),
};

const roomEvent: z.ZodType<RoomEvent> = z.union(Object.values(ROOM_EVENTS));

/** Throws when the text is no event this version knows; the error quotes nothing of it. */
export function eventFrom(text: string): RoomEvent {
  const parsed = roomEvent.safeParse(jsonFrom(text));
  if (parsed.success) return parsed.data;
  throw new Error('A kept event cannot be read; was it written by a newer version?');
}

function jsonFrom(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
