// Schemas of a class report as it is sent over HTTP: the spread of each step and the costliest mistakes.
import { z } from 'zod';
import { MISTAKE_CATEGORY_NAMES, VERDICTS } from '../analysis/index.ts';
import { CLASS_REPORT_FORMAT } from '../drill/index.ts';
import { faceSchema, MOVE_STEPS, seatSchema, stepSchema } from '../rules/index.ts';
import { measuredSchema } from './review.ts';

const meanSchema = z.object({
  n: z.int(),
  mean: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});
const costShape = {
  winsLost: measuredSchema.nullable(),
  costly: z.int().nullable(),
};
const aimsSchema = z.array(z.object({ section: z.string(), count: z.int(), share: z.number() })).readonly();
const chosenSchema = z.union([z.array(faceSchema).readonly(), z.int()]);

/** One step's spread as the report and the big screen show it; no choice says whose it was. */
export const spreadSchema = z.object({
  seat: seatSchema,
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  step: stepSchema,
  players: z.int(),
  stoodIn: z.int(),
  racks: z.int(),
  rack: z.array(faceSchema).readonly().nullable(),
  choices: z
    .array(
      z.object({
        chosen: chosenSchema,
        count: z.int(),
        share: z.number(),
        mistakes: z.array(z.enum(MISTAKE_CATEGORY_NAMES)).readonly(),
        ...costShape,
      }),
    )
    .readonly(),
  pending: z.int(),
  best: z.object({ chosen: chosenSchema, why: z.string() }).nullable(),
  hidden: z.int().exactOptional(),
  withheld: z.literal(true).exactOptional(),
  aims: aimsSchema,
  advancedWith: chosenSchema.exactOptional(),
  ...costShape,
});

/** What is told of one kind of choice at a frozen step of an anonymous class, as a class stores it. */
export const frozenSpreadSchema = z.strictObject({
  seat: seatSchema,
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  step: stepSchema,
  stoodIn: z.int(),
  rack: z.array(faceSchema).readonly().nullable(),
  cells: z
    .array(
      // Earlier editions stored figures of the quick look here, which are told no more.
      z.object({
        chosen: chosenSchema,
        count: z.int(),
        decisionId: z.string().nullable().default(null),
      }),
    )
    .readonly(),
  other: z.int(),
  aims: aimsSchema,
});

/** What a deep analysis says of a choice, as a class stores it. */
export const analyzedChoiceSchema = z.strictObject({
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  step: z.enum([...MOVE_STEPS, 'vote', 'courtesy-ask']),
  verdict: z.enum(VERDICTS),
  loss: measuredSchema.nullable(),
  best: z.strictObject({ chosen: chosenSchema, wins: z.number(), why: z.string() }),
  mistakes: z.array(z.enum(MISTAKE_CATEGORY_NAMES)).readonly(),
  sectionsLeft: z.array(z.string()).readonly(),
});

const mistakeSchema = z.object({
  category: z.enum(MISTAKE_CATEGORY_NAMES),
  label: z.string(),
  choices: z.int(),
  players: z.int().nullable(),
  totalWinsLost: z.number(),
});

export const classReportSchema = z.object({
  format: z.literal(CLASS_REPORT_FORMAT),
  deal: z.string(),
  title: z.string().nullable(),
  players: z.int(),
  pending: z.int(),
  toGoStart: meanSchema.nullable(),
  toGoEnd: meanSchema.nullable(),
  steps: z.array(spreadSchema).readonly(),
  mistakes: z.array(mistakeSchema).readonly(),
  sections: z.record(z.string(), z.string()),
});

/** One deal of one player, from the choices that were the player's own. */
const playerDealSchema = z.object({
  deal: z.string(),
  /** Null until the deal is closed. */
  toGoStart: z.number().nullable(),
  toGoEnd: z.number().nullable(),
  /** Sum over the choices that something better is told of; null while some are still being analyzed. */
  winsLost: z.number().nullable(),
  /** Choices that a bot made instead, which are not counted. */
  stoodIn: z.int(),
});

/** `GET /api/classes/CODE/report`, the teacher alone. */
export const drillReportSchema = z.object({
  title: z.string(),
  ended: z.boolean(),
  /** Whether the class was told that nobody can tell who chose what (rule AN1). */
  anonymous: z.boolean(),
  deals: z.array(classReportSchema),
  /** Each player by name, null unless the terms allow it; racks and choices stay with the player. */
  players: z
    .array(
      z.object({
        name: z.string(),
        deals: z.array(playerDealSchema),
      }),
    )
    .nullable(),
});
export type DrillReport = z.infer<typeof drillReportSchema>;
