// A situation for games that are not the exchange: the race looks at nothing of it but the seat.
import type { Situation } from '../../../shared-engine/index.ts';

export const NOWHERE: Situation = {
  seat: 0,
  dealer: 1,
  step: 0,
  agreed: [0, 0, 0, 0],
  start: [],
  rack: [],
  past: [],
};
