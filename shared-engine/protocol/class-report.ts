// Schemas of a class report as it is sent over HTTP: the spread of each step and the costliest mistakes.
import { z } from 'zod';
import { MISTAKE_CATEGORY_NAMES } from '../analysis/index.ts';
import { CLASS_REPORT_FORMAT } from '../drill/index.ts';
import { faceSchema, seatSchema, stepSchema } from '../rules/index.ts';
import { measuredSchema } from './review.ts';

const meanSchema = z.object({
  n: z.int(),
  mean: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});
const costShape = {
  loss: meanSchema.nullable(),
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
    .array(z.object({ chosen: chosenSchema, count: z.int(), share: z.number(), ...costShape }))
    .readonly(),
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
      z.strictObject({
        chosen: chosenSchema,
        count: z.int(),
        loss: z.number().nullable(),
        costly: z.boolean().nullable(),
        mistakes: z.array(z.enum(MISTAKE_CATEGORY_NAMES)).readonly(),
      }),
    )
    .readonly(),
  other: z.int(),
  aims: aimsSchema,
});

const mistakeSchema = z.object({
  category: z.enum(MISTAKE_CATEGORY_NAMES),
  label: z.string(),
  choices: z.int(),
  players: z.int().nullable(),
  total: z.number(),
  loss: meanSchema,
  totalWinsLost: z.number().nullable(),
});

export const classReportSchema = z.object({
  format: z.literal(CLASS_REPORT_FORMAT),
  deal: z.string(),
  title: z.string().nullable(),
  players: z.int(),
  reviewed: z.int(),
  toGoStart: meanSchema.nullable(),
  toGoEnd: meanSchema.nullable(),
  steps: z.array(spreadSchema).readonly(),
  mistakes: z.array(mistakeSchema).readonly(),
  sections: z.record(z.string(), z.string()),
});

/** `GET /api/classes/CODE/report`, the teacher alone. */
export const drillReportSchema = z.object({
  title: z.string(),
  /** Whether the class was told that nobody can tell who chose what (rule AN1). */
  anonymous: z.boolean(),
  deals: z.array(classReportSchema),
  /** Each player by name, null unless the terms allow it; racks and choices stay with the player. */
  players: z
    .array(
      z.object({
        name: z.string(),
        deals: z.array(
          z.object({ deal: z.string(), toGoStart: z.number(), toGoEnd: z.number(), loss: z.number() }),
        ),
      }),
    )
    .nullable(),
});
export type DrillReport = z.infer<typeof drillReportSchema>;
