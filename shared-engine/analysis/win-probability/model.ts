// The fitted win model; written by the command it names, never by hand.
import type { WinModel } from './model-format.ts';

export const WIN_MODEL: WinModel = {
  made: {
    command: 'npm run build:win-model -- --seed every-size --date 2026-11-26 --rounds 5000 --plays 4',
    seed: 'every-size',
    date: '2026-11-26',
    plays: 20064,
    cards: 33,
  },
  steps: { tile: 8, pair: 0, pairs: 6, concealed: 7 },
  weights: {
    reach: 0.319016,
    jokers: 0.178075,
    pairLack: -0.044096,
    concealed: -0.017637,
    live: 0.106335,
    jokersSquared: -0.068148,
    reachTimesJokers: 0.036397,
  },
  dealerOffsets: [0, 0.134269, 0.060107, 0.027133],
  wall: { start: 16.493434, center: -0.742565 },
};
