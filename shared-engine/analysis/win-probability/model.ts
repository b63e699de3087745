// The fitted win model; written by the command it names, never by hand.
import type { WinModel } from './model-format.ts';

export const WIN_MODEL: WinModel = {
  made: {
    command: 'npm run build:win-model -- --seed table-value --date 2026-11-26 --rounds 5000 --plays 4',
    seed: 'table-value',
    date: '2026-11-26',
    plays: 20000,
    cards: 17,
  },
  steps: { tile: 9, pair: 2, pairs: 9, concealed: 11 },
  weights: {
    reach: 0.296533,
    jokers: 0.117394,
    pairLack: -0.000501,
    concealed: -0.083793,
    live: 0.051562,
    jokersSquared: -0.03497,
    reachTimesJokers: 0.031657,
  },
  dealerOffsets: [0, 0.142701, 0.130809, 0.107015],
  wall: -1.795745,
};
