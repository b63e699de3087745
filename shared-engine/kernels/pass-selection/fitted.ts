// How a simulated seat weighs the hands of its card; written by the command it names, never by hand.
import type { FittedSelection } from './selection.ts';

export const FITTED_SELECTION: FittedSelection = {
  made: {
    command:
      'npm run build:pass-selection -- --seed apprentice --date 2026-11-26 --situations 600 --rounds 2',
    seed: 'apprentice',
    date: '2026-11-26',
    situations: 600,
    rounds: 2,
  },
  steps: { tile: 2, pair: 1, concealed: 2 },
  spareShare: 0.2,
};
