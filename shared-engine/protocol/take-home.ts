// Schemas of the deals of a class that its players may play again at home.
import { z } from 'zod';
import { classPartSchema } from '../drill/index.ts';
import { publishedDealSchema, publishedDrillSchema } from './published.ts';

/** `deal` holds the tiles of all seats, turned so that the player sits on seat 0. */
const takenDealSchema = publishedDealSchema.omit({ comments: true }).extend({
  /** Which round it was at the player's own table. */
  round: z.int(),
});

/** `GET /api/classes/CODE/deals`, a player's own: those that are over (rule TH3). */
export const takenHomeSchema = publishedDrillSchema
  .pick({ code: true, title: true, tableTerms: true, bots: true, card: true })
  .extend({
    /** Code of the player's own table. */
    room: z.string(),
    terms: classPartSchema.pick({ cardClosed: true }),
    deals: z.array(takenDealSchema).readonly(),
  });
export type TakenHome = z.infer<typeof takenHomeSchema>;
