// Zod schemas of what a view may carry; the types are the engine's own, the compiler holds the two together.
import { z } from 'zod';
import { SEATS } from '../rules/deal/seat.ts';
import { ACTORS } from '../rules/exchange/round.ts';
import { MOVE_STEPS, PASS_STEPS } from '../rules/exchange/schedule.ts';
import { FACES, type Four } from '../rules/tiles/face.ts';
import type { ViewNews } from '../rules/view/delta.ts';
import type { PublicStep, SeatRecord, SeatStep } from '../rules/view/record.ts';
import type { OwnAnswer, PublicStage, SeatView, View, SpectatorView } from '../rules/view/view.ts';

export const seatSchema = z.literal(SEATS);
export const faceSchema = z.enum(FACES as [(typeof FACES)[number], ...(typeof FACES)[number][]]);
export const tilesSchema = z.array(faceSchema).max(14).readonly();
const actorSchema = z.enum(ACTORS);
const countSchema = z.int().min(0).max(14);
export const hexSchema = z.string().regex(/^[0-9a-f]{64}$/);

export function four<T>(item: z.ZodType<T>): z.ZodType<Four<T>> {
  return z.tuple([item, item, item, item]).readonly();
}

const publicMoveShape = {
  kind: z.literal('move'),
  step: z.enum(MOVE_STEPS),
  blind: four(countSchema),
  voided: countSchema,
  by: four(actorSchema.nullable()),
};
const voteStep = z.object({ kind: z.literal('vote'), go: four(z.boolean()), by: four(actorSchema) });
const askStep = z.object({
  kind: z.literal('ask'),
  asked: four(countSchema),
  agreed: four(countSchema),
  by: four(actorSchema),
});

const publicStepSchema: z.ZodType<PublicStep> = z.discriminatedUnion('kind', [
  z.object(publicMoveShape),
  voteStep,
  askStep,
]);

const seatStepSchema: z.ZodType<SeatStep> = z.discriminatedUnion('kind', [
  z.object({
    ...publicMoveShape,
    to: seatSchema,
    from: seatSchema,
    gave: tilesSchema,
    received: tilesSchema,
  }),
  voteStep,
  askStep,
]);

const recordSchema: z.ZodType<SeatRecord> = z.object({
  seat: seatSchema,
  dealer: seatSchema,
  start: tilesSchema,
  steps: z.array(seatStepSchema).readonly(),
  own: z.array(seatStepSchema.nullable()).readonly().exactOptional(),
});

const stageSchema: z.ZodType<PublicStage> = z.discriminatedUnion('phase', [
  z.object({ phase: z.literal('passing'), step: z.enum(PASS_STEPS), sealed: four(z.boolean()) }),
  z.object({ phase: z.literal('voting'), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('asking'), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('giving'), counts: four(countSchema), sealed: four(z.boolean()) }),
  z.object({ phase: z.literal('closed'), seed: hexSchema.nullable(), racks: four(tilesSchema).nullable() }),
]);

const answerSchema: z.ZodType<OwnAnswer> = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('pass'), tiles: tilesSchema, blind: countSchema }),
    z.object({ kind: z.literal('vote'), go: z.boolean() }),
    z.object({ kind: z.literal('ask'), count: countSchema }),
  ])
  .nullable();

const publicFacts = {
  dealer: seatSchema,
  commitment: hexSchema.nullable(),
  layOpen: z.boolean(),
  stage: stageSchema,
};

const seatViewSchema: z.ZodType<SeatView> = z.object({
  audience: z.literal('seat'),
  ...publicFacts,
  rack: tilesSchema,
  answer: answerSchema,
  record: recordSchema,
});
const watcherViewSchema: z.ZodType<SpectatorView> = z.object({
  audience: z.literal('watcher'),
  ...publicFacts,
  steps: z.array(publicStepSchema).readonly(),
});

export const viewSchema: z.ZodType<View> = z.union([seatViewSchema, watcherViewSchema]);

export const viewNewsSchema: z.ZodType<ViewNews> = z.discriminatedUnion('audience', [
  z.object({
    audience: z.literal('seat'),
    stage: stageSchema,
    rack: tilesSchema.exactOptional(),
    answer: answerSchema,
    steps: z.array(seatStepSchema).readonly(),
  }),
  z.object({
    audience: z.literal('watcher'),
    stage: stageSchema,
    steps: z.array(publicStepSchema).readonly(),
  }),
]);
