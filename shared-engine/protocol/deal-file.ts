// The file that a player saves from the review, to check later that the deal was fair (rule D4).
import { z } from 'zod';
import { hexSchema, seatSchema, tilesSchema } from '../rules/index.ts';

export const DEAL_FILE_FORMAT = 'quadrille-deal/1';

const firstRack = {
  dealer: seatSchema,
  /** Whose first rack is written below. */
  seat: seatSchema,
  /** The tiles as dealt, in any order. */
  rack: tilesSchema,
};

export const dealFileSchema = z.strictObject({
  format: z.literal(DEAL_FILE_FORMAT),
  /** As shown since the deal. */
  commitment: hexSchema,
  /** As revealed at the close. */
  seed: hexSchema,
  ...firstRack,
});
export type DealFile = z.infer<typeof dealFileSchema>;

/** A teacher prepared the deal: there is no commitment, so there is nothing to check. */
export const preparedDealFileSchema = z.strictObject({
  format: z.literal(DEAL_FILE_FORMAT),
  prepared: z.literal(true),
  ...firstRack,
});
