// The JSON of rounds, cards and what was used of an allowance, as the logs of rooms and classes hold it.
import { z } from 'zod';
import {
  type CardFile,
  faceSchema,
  four,
  hexSchema,
  MOVE_STEPS,
  seatSchema,
  termsSchema,
} from '../../shared-engine/index.ts';
import { storedCardFile } from '../playing-card.ts';

const tiles = z.array(faceSchema).readonly();
const actor = z.enum(['player', 'bot', 'stand-in']);
const step = z.enum(MOVE_STEPS);

/** Of something that may be repeated so often. */
export const usedSchema = z.strictObject({ count: z.number(), at: z.number() });

export const preparedDealSchema = z.strictObject({
  seed: hexSchema,
  dealer: seatSchema,
  prepared: four(tiles),
});

const cardFile = z.unknown().transform((json, context): CardFile => {
  const file = storedCardFile(json);
  if (file !== null) return file;
  context.addIssue({ code: 'custom', message: 'is no card' });
  return z.NEVER;
});

export const cardChoiceSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('house') }),
  z.strictObject({ kind: z.literal('file'), file: cardFile }),
]);

export const resolvedSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('move'),
    step,
    gave: four(tiles),
    forwarded: four(tiles),
    received: four(tiles),
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

const scriptedAnswer = z.strictObject({
  seat: seatSchema,
  choice: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('pass'), step, tiles, blind: z.int() }),
    z.strictObject({ kind: z.literal('vote'), step: z.literal('vote'), go: z.boolean() }),
    z.strictObject({ kind: z.literal('ask'), step: z.literal('courtesy-ask'), count: z.int() }),
  ]),
});

export const dealtSchema = z.strictObject({
  kind: z.literal('dealt'),
  roundId: z.string(),
  deal: z.union([z.strictObject({ seed: hexSchema, dealer: seatSchema }), preparedDealSchema]),
  terms: termsSchema,
  commitment: hexSchema.nullable(),
  script: z.array(scriptedAnswer).readonly().exactOptional(),
});

export const roundEventSchema = z.discriminatedUnion('kind', [
  dealtSchema,
  z.strictObject({
    kind: z.literal('submitted'),
    seat: seatSchema,
    step,
    pass: z.strictObject({ tiles, blind: z.int(), by: actor }),
  }),
  z.strictObject({ kind: z.literal('withdrawn'), seat: seatSchema, step }),
  z.strictObject({ kind: z.literal('voted'), seat: seatSchema, go: z.boolean(), by: actor }),
  z.strictObject({ kind: z.literal('asked'), seat: seatSchema, count: z.int(), by: actor }),
  z.strictObject({ kind: z.literal('resolved'), outcome: resolvedSchema }),
  z.strictObject({ kind: z.literal('advanced'), outcome: resolvedSchema }),
  z.strictObject({ kind: z.literal('closed') }),
]);
