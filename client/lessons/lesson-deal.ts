// The deal of the example: two pairs, a joker and a flower, and a first pass that brings a partner for the west wind.
import type { SharedDeal } from '../app/routes/deal-link.ts';

export const LESSON_DEAL: SharedDeal = {
  deal: { seed: '73'.padStart(64, '0'), dealer: 0 },
  seat: 0,
  cardOf: null,
};
