// Schemas of the same deal among friends: opened without a teacher, and what each may know of the others' choices.
import { z } from 'zod';
import { drillSchema } from '../drill/index.ts';
import { STYLES } from '../policy/index.ts';
import { stepSchema, tilesSchema } from '../rules/index.ts';

/** `POST /api/same-deals` → `classOpenedSchema`; whoever opened it joins like the others. */
export const openSameDealSchema = z.strictObject({
  /** How the three bots of each friend play. */
  style: z.enum(STYLES),
  ways: drillSchema.shape.ways,
  /** A card file, or null for the house card. */
  card: z.unknown().nullable(),
});
export type OpenSameDeal = z.infer<typeof openSameDealSchema>;

const friendChoiceSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('pass'), tiles: tilesSchema, blind: z.int() }),
  z.object({ kind: z.literal('vote'), go: z.boolean() }),
  z.object({ kind: z.literal('ask'), count: z.int() }),
]);
export type FriendChoice = z.infer<typeof friendChoiceSchema>;

/** `GET /api/classes/CODE/choices`, a player alone: steps that this player has come past, in their order. */
export const friendChoicesSchema = z.object({
  version: z.number(),
  /** Names of the others who have joined. */
  friends: z.array(z.string()).readonly(),
  steps: z
    .array(
      z.object({
        step: stepSchema,
        own: friendChoiceSchema,
        others: z
          .array(
            z.object({
              name: z.string(),
              /** Whether they held the same tiles as the asker when they chose. */
              sameTiles: z.boolean(),
              choice: friendChoiceSchema,
            }),
          )
          .readonly(),
      }),
    )
    .readonly(),
});
export type FriendChoices = z.infer<typeof friendChoicesSchema>;
