// The file that a player saves from the review, to check the deal later (rules D4, Z2).
import { z } from 'zod';
import {
  checkRound,
  DEAL_FORMAT,
  four,
  hexSchema,
  isCommittedRack,
  MOVE_STEPS,
  type RoundCheck,
  type SeenMove,
  seatSchema,
  termsSchema,
  tilesSchema,
} from '../rules/index.ts';
import { leafProofSchema, openedRoundSchema } from './views.ts';

const firstRack = {
  format: z.literal(DEAL_FORMAT),
  dealer: seatSchema,
  /** Whose first rack is written below. */
  seat: seatSchema,
  /** The tiles as dealt, in any order. */
  rack: tilesSchema,
};

const committed = {
  ...firstRack,
  roundId: z.string().max(120),
  terms: termsSchema,
  /** As the page has kept it from the deal on. */
  commitment: hexSchema,
};

const seenMoveSchema: z.ZodType<SeenMove> = z.strictObject({
  step: z.enum(MOVE_STEPS),
  gave: tilesSchema,
  received: tilesSchema,
});

/** By what the file can be checked. */
export const dealFileSchema = z.discriminatedUnion('kind', [
  /** Racks stayed private: this seat's own can be checked, and nothing else. */
  z.strictObject({ kind: z.literal('own-rack'), ...committed, ownLeaf: leafProofSchema }),
  /** Racks were revealed: the whole round can be dealt and played again. */
  z.strictObject({
    kind: z.literal('open-round'),
    ...committed,
    opened: openedRoundSchema,
    /** All four at the close. */
    racks: four(tilesSchema),
    /** What the seat itself gave and received. */
    moves: z.array(seenMoveSchema).max(MOVE_STEPS.length).readonly(),
  }),
  /** A teacher prepared the deal: nothing was committed to, so there is nothing to check. */
  z.strictObject({ kind: z.literal('prepared'), ...firstRack }),
]);
export type DealFile = z.infer<typeof dealFileSchema>;

/** Null where there is nothing to check. */
export function checkDealFile(file: DealFile): RoundCheck | null {
  switch (file.kind) {
    case 'prepared':
      return null;
    case 'own-rack': {
      const fits = isCommittedRack(file.commitment, file, file, file.ownLeaf);
      return fits ? { ok: true } : { ok: false, reason: 'wrong-commitment' };
    }
    case 'open-round': {
      const { seat, rack, moves } = file;
      return checkRound({ ...file, ...file.opened, seen: { seat, rack, moves } });
    }
  }
}
