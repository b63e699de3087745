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
  steps: { tile: 9, pair: 1, pairs: 9, concealed: 12 },
  weights: {
    reach: 0.295205,
    jokers: 0.113781,
    pairLack: -0.007107,
    concealed: -0.055808,
    live: 0.051324,
    jokersSquared: -0.032752,
    reachTimesJokers: 0.03097,
  },
  dealerOffsets: [0, 0.142784, 0.131572, 0.107348],
  wall: { start: 29.67612, center: -1.476912 },
};
