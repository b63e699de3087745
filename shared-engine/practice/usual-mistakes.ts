// How often a typical bot makes each kind of mistake; written by the command it names, never by hand.

/** Rounds by part of the exchange; `MistakeCounts` says which. */
export const USUAL_MISTAKES = {
  source: {
    command: 'npm run build:usual-mistakes -- --seed usual --rounds 80',
    judge: '2026-11-26',
    rounds: 80,
  },
  offered: {
    pass: { any: 80, first: 80, second: 66 },
    blind: { any: 80, first: 80, second: 66 },
    vote: { any: 80, first: 0, second: 0 },
    ask: { any: 80, first: 0, second: 0 },
  },
  made: {
    'new-multiple': { any: 5, first: 0, second: 3 },
    'broken-multiple': { any: 6, first: 3, second: 1 },
    'pair-given': { any: 1, first: 0, second: 1 },
    'like-numbers-given': { any: 0, first: 0, second: 0 },
    'same-suit-given': { any: 0, first: 0, second: 0 },
    'flower-given': { any: 8, first: 4, second: 2 },
    'neighbor-fed': { any: 1, first: 0, second: 1 },
    'lone-honor-kept': { any: 27, first: 14, second: 10 },
    'committed-too-soon': { any: 32, first: 32, second: 0 },
    'committed-too-late': { any: 15, first: 0, second: 12 },
    'pairs-chased': { any: 54, first: 31, second: 34 },
    'concealed-chased': { any: 33, first: 20, second: 20 },
    'tiles-gone': { any: 8, first: 1, second: 3 },
    'jokers-for-pairs': { any: 7, first: 3, second: 2 },
    'aim-left': { any: 0, first: 0, second: 0 },
    'poorer-fit': { any: 17, first: 6, second: 11 },
    'too-many-blind': { any: 22, first: 13, second: 10 },
    'too-few-blind': { any: 5, first: 4, second: 1 },
    continued: { any: 29, first: 0, second: 0 },
    stopped: { any: 0, first: 0, second: 0 },
    'asked-too-many': { any: 17, first: 0, second: 0 },
    'asked-too-few': { any: 11, first: 0, second: 0 },
  },
} as const;
