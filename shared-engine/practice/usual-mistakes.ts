// How often a typical bot makes each kind of mistake; written by the command it names, never by hand.

/** By kind of choice and part of the exchange; `MistakeCounts` says what is counted. */
export const USUAL_MISTAKES = {
  made: {
    command: 'npm run build:usual-mistakes -- --seed usual --rounds 80',
    judge: '2026-11-26',
    rounds: 80,
  },
  choices: {
    pass: { first: 239, second: 197, neither: 78 },
    blind: { first: 80, second: 66, neither: 0 },
    vote: { first: 0, second: 0, neither: 80 },
    ask: { first: 0, second: 0, neither: 80 },
  },
  cases: {
    'new-multiple': { first: 0, second: 3, neither: 2 },
    'broken-multiple': { first: 3, second: 2, neither: 2 },
    'pair-given': { first: 0, second: 1, neither: 0 },
    'like-numbers-given': { first: 0, second: 0, neither: 0 },
    'same-suit-given': { first: 0, second: 0, neither: 0 },
    'flower-given': { first: 4, second: 2, neither: 2 },
    'neighbor-fed': { first: 0, second: 1, neither: 0 },
    'lone-honor-kept': { first: 18, second: 13, neither: 9 },
    'committed-too-soon': { first: 39, second: 0, neither: 0 },
    'committed-too-late': { first: 0, second: 17, neither: 6 },
    'pairs-chased': { first: 48, second: 57, neither: 18 },
    'concealed-chased': { first: 28, second: 33, neither: 11 },
    'tiles-gone': { first: 1, second: 3, neither: 4 },
    'jokers-for-pairs': { first: 5, second: 5, neither: 4 },
    'aim-left': { first: 0, second: 0, neither: 0 },
    'poorer-fit': { first: 6, second: 12, neither: 5 },
    'too-many-blind': { first: 13, second: 10, neither: 0 },
    'too-few-blind': { first: 4, second: 1, neither: 0 },
    continued: { first: 0, second: 0, neither: 29 },
    stopped: { first: 0, second: 0, neither: 0 },
    'asked-too-many': { first: 0, second: 0, neither: 17 },
    'asked-too-few': { first: 0, second: 0, neither: 11 },
  },
} as const;
