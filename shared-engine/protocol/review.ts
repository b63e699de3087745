// Zod schema of the private review; the compiler checks it against the review's own type.
import { z } from 'zod';
import {
  type Analysis,
  type ChoiceWhy,
  type Finalist,
  LEDGER_UNIT,
  type Ledger,
  type MeasuredValue,
  MISTAKE_CATEGORY_NAMES,
  type PassParts,
  type RankedPass,
  type Review,
  type SideBySide,
  type Story,
  VERDICTS,
} from '../analysis/index.ts';
import { RISK_GRADES } from '../policy/index.ts';
import {
  actorSchema,
  DIRECTIONS,
  faceSchema,
  MOVE_STEPS,
  seatSchema,
  stepSchema,
  tilesSchema,
} from '../rules/index.ts';

const alternativeSchema: z.ZodType<RankedPass> = z.object({
  tiles: tilesSchema,
  nearness: z.number(),
  toGo: z.int(),
  risk: z.enum(RISK_GRADES),
});

const sentencesSchema = z.array(z.string()).readonly();
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
  sectionCount: z.int(),
  sectionsKept: z.int(),
  sectionsKeptByBest: z.int(),
  sectionTiles: z.record(z.string(), tilesSchema),
  returned: tilesSchema,
  betterToGive: tilesSchema,
  betterToKeep: tilesSchema,
});

export const measuredSchema: z.ZodType<MeasuredValue> = z.object({
  value: z.number(),
  halfWidth: z.number(),
});

const finalistSchema: z.ZodType<Finalist> = z.object({
  tiles: tilesSchema,
  number: z.int().nullable(),
  winProbability: measuredSchema,
  difference: measuredSchema,
  giveaway: measuredSchema.nullable(),
  amongBest: z.boolean(),
});

const besideSchema: z.ZodType<SideBySide> = z.object({ played: z.number(), named: z.number() });
const usesSchema = z.array(z.object({ face: faceSchema, copies: z.int(), share: z.number() })).readonly();

const whySchema: z.ZodType<ChoiceWhy> = z.object({
  deals: z.int(),
  reason: z.object({ keep: faceSchema, pass: faceSchema, share: z.number() }).nullable(),
  keep: usesSchema,
  pass: usesSchema,
  farther: z
    .object({ keep: faceSchema, pass: faceSchema, shares: besideSchema, section: z.string() })
    .nullable(),
  sections: z.record(z.string(), besideSchema),
  sectionsKept: besideSchema,
  toGoKept: besideSchema,
  toGo: besideSchema,
  lacking: besideSchema,
  gone: besideSchema,
  idleJokers: besideSchema,
  handsNear: besideSchema,
  points: besideSchema,
  concealed: besideSchema,
});

export const analysisSchema: z.ZodType<Analysis> = z.discriminatedUnion('depth', [
  z.object({ depth: z.literal('quick'), verdict: z.literal('pending') }),
  z.object({
    depth: z.literal('deep'),
    verdict: z.enum(VERDICTS),
    loss: measuredSchema.nullable(),
    atMost: z.number(),
    giveaway: measuredSchema.nullable(),
    played: z.int(),
    bestAlternative: z.int().nullable(),
    finalists: z.array(finalistSchema).readonly(),
    alternatives: z.int(),
    typicalPass: measuredSchema.nullable(),
    sampledDeals: z.int(),
    smallLoss: z.number(),
    why: whySchema.nullable(),
    others: measuredSchema.nullable(),
  }),
]);

const passReviewSchema = z.object({
  kind: z.literal('pass'),
  step: z.enum(MOVE_STEPS),
  by: actorSchema,
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
  sectionsInReach: idsSchema,
  sectionsInReachAfter: idsSchema,
  sectionsInReachAfterBest: idsSchema,
  parts: partsSchema,
  analysis: analysisSchema,
});

const numberReviewSchema = z.object({
  kind: z.enum(['blind', 'vote', 'ask']),
  step: z.enum([...MOVE_STEPS, 'vote', 'courtesy-ask']),
  by: actorSchema,
  toGo: z.int(),
  spare: z.int(),
  options: z.array(z.object({ value: z.int(), nearness: z.number() })).readonly(),
  played: z.int(),
  best: z.int(),
  anotherStopped: z.boolean(),
  askedAcross: z.int().nullable(),
  loss: z.number(),
  analysis: analysisSchema,
});

const storySchema: z.ZodType<Story> = z.object({
  headline: sentencesSchema,
  opened: z.int(),
  choices: z
    .array(
      z.object({
        verdict: z.enum(VERDICTS),
        sentences: sentencesSchema,
        rows: z.array(z.int()).readonly(),
        mistakes: z.array(z.enum(MISTAKE_CATEGORY_NAMES)).readonly(),
      }),
    )
    .readonly(),
  fed: z.object({ toward: z.enum(DIRECTIONS), passes: z.int(), cost: measuredSchema }).nullable(),
  ledger: sentencesSchema,
});

export const ledgerSchema: z.ZodType<Ledger> = z.object({
  unit: z.literal(LEDGER_UNIT),
  average: z.number().nullable(),
  start: measuredSchema,
  close: measuredSchema,
  luck: measuredSchema,
  choices: measuredSchema,
  standIns: z.number(),
  jumps: z.number(),
  entries: z
    .array(
      z.object({
        kind: z.enum(['blind', 'pass', 'vote', 'ask']),
        step: stepSchema,
        by: actorSchema,
        value: measuredSchema,
        choice: z.number(),
        after: z.number(),
        afterBy: z.enum(['luck', 'class']),
      }),
    )
    .readonly(),
  sampledDeals: z.int(),
  neighbors: z
    .array(
      z.object({
        toward: z.enum(DIRECTIONS),
        longest: z.object({ bam: z.number(), crak: z.number(), dot: z.number() }),
      }),
    )
    .readonly(),
});

export const reviewSchema: z.ZodType<Review> = z.object({
  seat: seatSchema,
  cardId: z.string(),
  cardName: z.string(),
  sections: z.record(z.string(), z.string()),
  toGoStart: z.int(),
  toGoEnd: z.int(),
  firstDiscard: faceSchema.nullable(),
  basis: z.object({ passesTried: z.int(), arrivals: z.int(), smallLoss: z.number() }),
  choices: z.array(z.union([passReviewSchema, numberReviewSchema])).readonly(),
  ledger: ledgerSchema.nullable(),
  story: storySchema,
  method: z.string(),
});
