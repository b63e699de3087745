// The fitted win model; written by the command it names, never by hand.
import type { WinModel } from './model-format.ts';

export const WIN_MODEL: WinModel = {
  made: {
    command: 'npm run build:win-model -- --seed house-card --date 2026-11-26 --rounds 5000 --plays 4',
    seed: 'house-card',
    date: '2026-11-26',
    plays: 20000,
    cards: 17,
  },
  steps: { tile: 8, pair: 0, pairs: 8, concealed: 4 },
  weights: {
    reach: 0.327528,
    jokers: 0.16198,
    pairLack: -0.007621,
    concealed: -0.085265,
    live: 0.067566,
    jokersSquared: -0.072628,
    reachTimesJokers: 0.028866,
  },
  dealerOffsets: [0, 0.134122, 0.087558, 0.065017],
  wall: { start: 26.864625, center: -1.183133 },
};
