// Zod schemas of a view of a round; the compiler checks them against the rules' own types.
import { z } from 'zod';
import {
  actorSchema,
  four,
  hexSchema,
  type LeafProof,
  MOVE_STEPS,
  type OpenedRound,
  PASS_STEPS,
  type PublicStage,
  type PublicStep,
  type Resolved,
  type ResolvedMove,
  type SeatAnswer,
  type SeatRecord,
  type SeatStep,
  type SeatView,
  type SpectatorView,
  seatSchema,
  termsSchema,
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

export const recordSchema: z.ZodType<SeatRecord> = z.object({
  seat: seatSchema,
  dealer: seatSchema,
  terms: termsSchema,
  start: tilesSchema,
  steps: z.array(seatStepSchema).readonly(),
  actualSteps: z.array(seatStepSchema.nullable()).readonly().exactOptional(),
});

/** A pass with the tiles of all four seats, as the close reveals it where racks are revealed. */
const openMoveSchema: z.ZodType<ResolvedMove> = z.object({
  ...publicMoveShape,
  gave: four(tilesSchema),
  forwarded: four(tilesSchema),
  received: four(tilesSchema),
});

/** The outcome of a step with the tiles of all four seats, as a table in the page stores it. */
export const resolvedSchema: z.ZodType<Resolved> = z.union([openMoveSchema, voteStep, askStep]);

export const openedRoundSchema: z.ZodType<OpenedRound> = z.object({
  seed: hexSchema,
  moves: z.array(openMoveSchema).max(MOVE_STEPS.length).readonly(),
});

export const leafProofSchema: z.ZodType<LeafProof> = z.object({
  salt: hexSchema,
  path: z.array(hexSchema).max(8).readonly(),
});

const stageSchema: z.ZodType<PublicStage> = z.discriminatedUnion('phase', [
  z.object({ phase: z.literal('passing'), step: z.enum(PASS_STEPS), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('voting'), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('asking'), answered: four(z.boolean()) }),
  z.object({ phase: z.literal('giving'), counts: four(countSchema), answered: four(z.boolean()) }),
  z.object({
    phase: z.literal('closed'),
    opened: openedRoundSchema.nullable(),
    racks: four(tilesSchema).nullable(),
  }),
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
  terms: termsSchema,
  stage: stageSchema,
};

const seatViewSchema: z.ZodType<SeatView> = z.object({
  audience: z.literal('seat'),
  ...publicFacts,
  rack: tilesSchema,
  answer: answerSchema,
  record: recordSchema,
  ownLeaf: leafProofSchema.nullable(),
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
    ownLeaf: leafProofSchema.exactOptional(),
  }),
  z.object({
    audience: z.literal('spectator'),
    stage: stageSchema,
    steps: z.array(publicStepSchema).readonly(),
  }),
]);
