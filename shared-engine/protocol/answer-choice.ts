// An answer to a step as it is sent by a teacher, and by a device that played a published drill.
import { z } from 'zod';
import { type AnswerChoice, MOVE_STEPS, PASS_SIZE, tilesSchema } from '../rules/index.ts';

/** An answer to a step, such as the one that all tables of a guided deal continue from; the round checks whether it is legal. */
export const answerChoiceSchema: z.ZodType<AnswerChoice> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('pass'),
    step: z.enum(MOVE_STEPS),
    tiles: tilesSchema,
    blind: z.int().min(0).max(PASS_SIZE),
  }),
  z.strictObject({ kind: z.literal('vote'), step: z.literal('vote'), go: z.boolean() }),
  z.strictObject({
    kind: z.literal('ask'),
    step: z.literal('courtesy-ask'),
    count: z.int().min(0).max(PASS_SIZE),
  }),
]);
