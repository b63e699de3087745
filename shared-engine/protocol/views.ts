// Zod schemas of a view of a round; the compiler checks them against the rules' own types.
import { z } from 'zod';
import {
  actorSchema,
  four,
  hexSchema,
  MOVE_STEPS,
  PASS_STEPS,
  type PublicStage,
  type PublicStep,
  type SeatAnswer,
  type SeatRecord,
  type SeatStep,
  type SeatView,
  type SpectatorView,
  seatSchema,
  tilesSchema,
  type View,
  type ViewDelta,
} from '../rules/index.ts';

const countSchema = z.int().min(0).max(14);

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
  actualSteps: z.array(seatStepSchema.nullable()).readonly().exactOptional(),
});

const stageSchema: z.ZodType<PublicStage> = z.discriminatedUnion('phase', [
  z.object({ phase: z.literal('passing'), step: z.enum(PASS_STEPS), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('voting'), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('asking'), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('giving'), counts: four(countSchema), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('closed'), seed: hexSchema.nullable(), racks: four(tilesSchema).nullable() }),
]);

const answerSchema: z.ZodType<SeatAnswer> = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('pass'), tiles: tilesSchema, blind: countSchema }),
    z.object({ kind: z.literal('vote'), go: z.boolean() }),
    z.object({ kind: z.literal('ask'), count: countSchema }),
  ])
  .nullable();

const publicFacts = {
  dealer: seatSchema,
  commitment: hexSchema.nullable(),
  revealRacks: z.boolean(),
  stage: stageSchema,
};

const seatViewSchema: z.ZodType<SeatView> = z.object({
  audience: z.literal('seat'),
  ...publicFacts,
  rack: tilesSchema,
  answer: answerSchema,
  record: recordSchema,
});
const spectatorViewSchema: z.ZodType<SpectatorView> = z.object({
  audience: z.literal('spectator'),
  ...publicFacts,
  steps: z.array(publicStepSchema).readonly(),
});

export const viewSchema: z.ZodType<View> = z.union([seatViewSchema, spectatorViewSchema]);

export const viewDeltaSchema: z.ZodType<ViewDelta> = z.discriminatedUnion('audience', [
  z.object({
    audience: z.literal('seat'),
    stage: stageSchema,
    rack: tilesSchema.exactOptional(),
    answer: answerSchema,
    steps: z.array(seatStepSchema).readonly(),
  }),
  z.object({
    audience: z.literal('spectator'),
    stage: stageSchema,
    steps: z.array(publicStepSchema).readonly(),
  }),
]);
