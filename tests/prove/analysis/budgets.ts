// How long proofs look at a choice where many choices matter more than long looks.
import type { Budget } from '../../../shared-engine/index.ts';

/** Hardly more than one look: for claims that hold whatever the numbers are. */
export const GLANCE: Budget = {
  field: 12,
  rounds: [{ batches: 1, stay: 4 }],
  looks: [4],
};
