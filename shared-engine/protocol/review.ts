// Zod schema of the private review; the type is the review's own, the compiler holds the two together.
import { z } from 'zod';
import type { Finalist, Judgement, Measured } from '../analysis/review/judgement.ts';
import type { Alternative, PassParts, Review } from '../analysis/review/review.ts';
import { GIFT_GRADES } from '../policy/gift.ts';
import { ACTORS } from '../rules/exchange/round.ts';
import { MOVE_STEPS } from '../rules/exchange/schedule.ts';
import { faceSchema, seatSchema, tilesSchema } from './views.ts';

const alternativeSchema: z.ZodType<Alternative> = z.object({
  tiles: tilesSchema,
  nearness: z.number(),
  toGo: z.int(),
  gift: z.enum(GIFT_GRADES),
});

const wordsSchema = z.tuple([z.string(), z.string()]).readonly();
const idsSchema = z.array(z.string()).readonly();

const groupsSchema = z.array(z.object({ face: faceSchema, count: z.int() })).readonly();

const partsSchema: z.ZodType<PassParts> = z.object({
  groups: groupsSchema,
  formed: groupsSchema,
  broken: groupsSchema,
  brokenByBest: groupsSchema,
  groupCount: z.int(),
  groupsKept: z.int(),
  groupsKeptByBest: z.int(),
  familyCount: z.int(),
  familiesKept: z.int(),
  familiesKeptByBest: z.int(),
  betterToGive: tilesSchema,
  betterToKeep: tilesSchema,
});

const measuredSchema: z.ZodType<Measured> = z.object({ value: z.number(), within: z.number() });

const finalistSchema: z.ZodType<Finalist> = z.object({
  tiles: tilesSchema,
  number: z.int().nullable(),
  outlook: measuredSchema,
  ahead: measuredSchema,
  gift: measuredSchema.nullable(),
  inFront: z.boolean(),
});

export const judgementSchema: z.ZodType<Judgement> = z.discriminatedUnion('depth', [
  z.object({ depth: z.literal('quick'), verdict: z.literal('not-looked-at') }),
  z.object({
    depth: z.literal('deep'),
    verdict: z.enum(['better-exists', 'as-good', 'too-close']),
    decided: z.boolean(),
    loss: measuredSchema.nullable(),
    gift: measuredSchema.nullable(),
    played: z.int(),
    rival: z.int().nullable(),
    finalists: z.array(finalistSchema).readonly(),
    rivals: z.int(),
    mean: measuredSchema.nullable(),
    worlds: z.int(),
    smallLoss: z.number(),
    words: z.array(z.string()).readonly(),
  }),
]);

const passReviewSchema = z.object({
  kind: z.literal('pass'),
  step: z.enum(MOVE_STEPS),
  by: z.enum(ACTORS),
  rack: tilesSchema,
  received: tilesSchema,
  blind: z.int(),
  toGoBefore: z.int(),
  toGoAfter: z.int(),
  played: alternativeSchema,
  best: alternativeSchema,
  loss: z.number(),
  rank: z.int(),
  legal: z.int(),
  alternatives: z.array(alternativeSchema).readonly(),
  open: idsSchema,
  openAfter: idsSchema,
  openAfterBest: idsSchema,
  parts: partsSchema,
  words: wordsSchema,
  judgement: judgementSchema,
});

const numberReviewSchema = z.object({
  kind: z.enum(['blind', 'vote', 'ask']),
  step: z.enum([...MOVE_STEPS, 'vote', 'courtesy-ask']),
  by: z.enum(ACTORS),
  toGo: z.int(),
  spare: z.int(),
  options: z.array(z.object({ value: z.int(), nearness: z.number() })).readonly(),
  played: z.int(),
  best: z.int(),
  loss: z.number(),
  words: wordsSchema,
  judgement: judgementSchema,
});

export const reviewSchema: z.ZodType<Review> = z.object({
  seat: seatSchema,
  cardId: z.string(),
  cardName: z.string(),
  families: z.record(z.string(), z.string()),
  toGoStart: z.int(),
  toGoEnd: z.int(),
  basis: z.object({ closely: z.int(), arrivals: z.int(), smallLoss: z.number() }),
  lesson: z.string(),
  choices: z.array(z.union([passReviewSchema, numberReviewSchema])).readonly(),
  method: z.string(),
});
