// How often a typical bot makes each kind of mistake; written by the command it names, never by hand.

/** Rounds by part of the exchange; `MistakeCounts` says which. */
export const USUAL_MISTAKES = {
  source: {
    command: 'npm run build:usual-mistakes -- --seed usual --rounds 300',
    judge: '2026-11-26',
    rounds: 300,
  },
  offered: {
    pass: { any: 300, first: 300, second: 238 },
    blind: { any: 300, first: 300, second: 238 },
    vote: { any: 300, first: 0, second: 0 },
    ask: { any: 300, first: 0, second: 0 },
    'first-flower': { any: 169, first: 152, second: 124 },
  },
  made: {
    'new-multiple': { any: 30, first: 8, second: 13 },
    'broken-multiple': { any: 55, first: 23, second: 22 },
    'pair-given': { any: 8, first: 3, second: 2 },
    'like-numbers-given': { any: 1, first: 0, second: 1 },
    'same-suit-given': { any: 0, first: 0, second: 0 },
    'flower-given': { any: 12, first: 9, second: 14 },
    'neighbor-fed': { any: 18, first: 4, second: 8 },
    'lone-honor-kept': { any: 92, first: 42, second: 37 },
    'committed-too-soon': { any: 114, first: 114, second: 0 },
    'committed-too-late': { any: 37, first: 0, second: 25 },
    'pairs-chased': { any: 172, first: 106, second: 86 },
    'concealed-chased': { any: 92, first: 37, second: 49 },
    'tiles-gone': { any: 31, first: 14, second: 15 },
    'jokers-for-pairs': { any: 8, first: 3, second: 1 },
    'aim-left': { any: 0, first: 0, second: 0 },
    'poorer-fit': { any: 78, first: 32, second: 37 },
    'too-many-blind': { any: 107, first: 56, second: 62 },
    'too-few-blind': { any: 44, first: 21, second: 24 },
    continued: { any: 113, first: 0, second: 0 },
    stopped: { any: 3, first: 0, second: 0 },
    'asked-too-many': { any: 59, first: 0, second: 0 },
    'asked-too-few': { any: 63, first: 0, second: 0 },
  },
} as const;
