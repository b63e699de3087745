// What the report of a class says and the spread of one step on its way: zod schemas over HTTP.
import { z } from 'zod';
import { CLASS_REPORT_FORMAT } from '../drill/report/class-report.ts';
import { THEME_NAMES } from '../drill/report/mistake-categories.ts';
import { SEATS } from '../rules/deal/seat.ts';
import { STEPS } from '../rules/exchange/schedule.ts';
import { faceSchema } from './views.ts';

export const stepSchema = z.enum(STEPS);

const measuredSchema = z.object({ value: z.number(), within: z.number() });
const meanSchema = z.object({
  n: z.int(),
  mean: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});
const costShape = {
  loss: meanSchema.nullable(),
  points: measuredSchema.nullable(),
  costly: z.int().nullable(),
};
const chosenSchema = z.union([z.array(faceSchema).readonly(), z.int()]);

/** One step's spread as the report and the wall have it; no choice says whose it was. */
export const spreadSchema = z.object({
  seat: z.literal(SEATS),
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  step: stepSchema,
  pupils: z.int(),
  stoodIn: z.int(),
  racks: z.int(),
  rack: z.array(faceSchema).readonly().nullable(),
  choices: z
    .array(z.object({ chosen: chosenSchema, count: z.int(), share: z.number(), ...costShape }))
    .readonly(),
  unshown: z.int().exactOptional(),
  aims: z.array(z.object({ family: z.string(), count: z.int(), share: z.number() })).readonly(),
  wentOn: chosenSchema.exactOptional(),
  ...costShape,
});

const themeSchema = z.object({
  theme: z.enum(THEME_NAMES),
  words: z.string(),
  choices: z.int(),
  pupils: z.int(),
  total: z.number(),
  loss: meanSchema,
  totalPoints: z.number().nullable(),
});

export const classReportSchema = z.object({
  format: z.literal(CLASS_REPORT_FORMAT),
  deal: z.string(),
  title: z.string().nullable(),
  pupils: z.int(),
  reviewed: z.int(),
  toGoStart: meanSchema.nullable(),
  toGoEnd: meanSchema.nullable(),
  steps: z.array(spreadSchema).readonly(),
  themes: z.array(themeSchema).readonly(),
  families: z.record(z.string(), z.string()),
});

/** `GET /api/classes/CODE/report`, the teacher alone. */
export const drillReportSchema = z.object({
  title: z.string(),
  deals: z.array(classReportSchema),
  /** By name, where the terms say so; what a pupil chose and held stays with the pupil. */
  pupils: z
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
