// The border between a store and the rooms: from the text a store has kept to a true event, or an error in words.
import { z } from 'zod';
import {
  cardFileSchema,
  classTermsSchema,
  drillSchema,
  faceSchema,
  four,
  hexSchema,
  MOVE_STEPS,
  roomTermsSchema,
  STYLES,
  seatSchema,
  stepSchema,
  wallChoiceSchema,
} from '../../shared-engine/index.ts';
import type { RoomEvent } from '../room/event.ts';

const tiles = z.array(faceSchema).readonly();
const actor = z.enum(['owner', 'bot', 'stand-in']);
const step = z.enum(MOVE_STEPS);

const preparedDeal = z.strictObject({ seed: hexSchema, dealer: seatSchema, prepared: four(tiles) });
const card = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('house') }),
  z.strictObject({ kind: z.literal('file'), file: cardFileSchema }),
]);

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

const roundEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('dealt'),
    deal: z.union([z.strictObject({ seed: hexSchema, dealer: seatSchema }), preparedDeal]),
    terms: z.strictObject({ layOpen: z.boolean() }),
    commitment: hexSchema.nullable(),
  }),
  z.strictObject({
    kind: z.literal('sealed'),
    seat: seatSchema,
    step,
    pass: z.strictObject({ tiles, blind: z.int(), by: actor }),
  }),
  z.strictObject({ kind: z.literal('taken-back'), seat: seatSchema, step }),
  z.strictObject({ kind: z.literal('voted'), seat: seatSchema, go: z.boolean(), by: actor }),
  z.strictObject({ kind: z.literal('asked'), seat: seatSchema, count: z.int(), by: actor }),
  z.strictObject({ kind: z.literal('settled'), outcome: settled }),
  z.strictObject({ kind: z.literal('followed'), outcome: settled }),
  z.strictObject({ kind: z.literal('closed') }),
]);

const classEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('opened'),
    drill: drillSchema,
    deals: z.array(preparedDeal).readonly(),
    terms: classTermsSchema,
    card,
    key: z.string(),
  }),
  z.strictObject({
    kind: z.literal('joined'),
    name: z.string(),
    key: z.string(),
    room: z.string(),
    seat: seatSchema,
  }),
  z.strictObject({ kind: z.literal('dealt') }),
  z.strictObject({ kind: z.literal('hold'), before: stepSchema.nullable() }),
  z.strictObject({ kind: z.literal('stand-in'), pupil: z.int(), on: z.boolean() }),
  z.strictObject({ kind: z.literal('shown'), choice: wallChoiceSchema.nullable() }),
  z.strictObject({ kind: z.literal('gone-on'), outcome: settled, closed: z.boolean() }),
  z.strictObject({
    kind: z.literal('aimed'),
    pupil: z.int(),
    deal: z.int(),
    step: stepSchema,
    families: z.array(z.string()).readonly(),
  }),
  z.strictObject({ kind: z.literal('left'), pupil: z.int() }),
  z.strictObject({ kind: z.literal('ended') }),
]);

const roomEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('opened'),
    door: z.enum(['alone', 'friends', 'class']),
    terms: roomTermsSchema,
    card,
  }),
  z.strictObject({
    kind: z.literal('seat-taken'),
    seat: seatSchema,
    name: z.string(),
    key: z.string(),
  }),
  z.strictObject({ kind: z.literal('seat-freed'), seat: seatSchema }),
  z.strictObject({
    kind: z.literal('bot-seated'),
    seat: seatSchema,
    name: z.string(),
    style: z.enum(STYLES),
  }),
  z.strictObject({
    kind: z.literal('came'),
    seat: seatSchema,
    node: z.string(),
    line: z.string(),
    from: z.strictObject({ page: z.string(), nth: z.int() }).exactOptional(),
  }),
  z.strictObject({ kind: z.literal('went'), seat: seatSchema, line: z.string() }),
  z.strictObject({ kind: z.literal('key-changed'), seat: seatSchema, key: z.string(), before: z.string() }),
  z.strictObject({ kind: z.literal('in-hand'), node: z.string(), others: z.array(z.string()).readonly() }),
  z.strictObject({ kind: z.literal('ready'), seat: seatSchema, ready: z.boolean() }),
  z.strictObject({
    kind: z.literal('led'),
    lead: z.strictObject({
      holdBefore: stepSchema.nullable(),
      standIn: z.array(seatSchema).readonly(),
      oneLine: z.boolean().exactOptional(),
      cardClosed: z.boolean().exactOptional(),
    }),
  }),
  z.strictObject({ kind: z.literal('more-time'), seconds: z.int() }),
  z.strictObject({ kind: z.literal('class'), event: classEvent }),
  z.strictObject({ kind: z.literal('round'), event: roundEvent }),
  z.strictObject({ kind: z.literal('closed') }),
]);

/** Takes any event there is, or this does not compile: what is kept today must be readable tomorrow. */
export function textOf(event: z.infer<typeof roomEvent>): string {
  return JSON.stringify(event);
}

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
