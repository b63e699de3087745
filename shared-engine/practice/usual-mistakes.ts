// How often a typical bot makes each kind of mistake; written by the command it names, never by hand.

/** By kind of choice and part of the exchange; `MistakeCounts` says what is counted. */
export const USUAL_MISTAKES = {
  made: {
    command: 'npm run build:usual-mistakes -- --seed usual --rounds 21',
    judge: '2026-11-26',
    rounds: 21,
  },
  choices: {
    pass: { first: 63, second: 54, neither: 20 },
    blind: { first: 21, second: 18, neither: 0 },
    vote: { first: 0, second: 0, neither: 21 },
    ask: { first: 0, second: 0, neither: 21 },
  },
  cases: {
    'new-multiple': { first: 0, second: 1, neither: 0 },
    'broken-multiple': { first: 1, second: 0, neither: 0 },
    'pair-given': { first: 0, second: 0, neither: 0 },
    'like-numbers-given': { first: 0, second: 0, neither: 0 },
    'same-suit-given': { first: 0, second: 0, neither: 0 },
    'flower-given': { first: 0, second: 0, neither: 0 },
    'neighbor-fed': { first: 0, second: 0, neither: 0 },
    'lone-honor-kept': { first: 6, second: 6, neither: 2 },
    'committed-too-soon': { first: 12, second: 0, neither: 0 },
    'committed-too-late': { first: 0, second: 5, neither: 2 },
    'pairs-chased': { first: 20, second: 23, neither: 6 },
    'concealed-chased': { first: 12, second: 15, neither: 5 },
    'tiles-gone': { first: 1, second: 0, neither: 0 },
    'jokers-for-pairs': { first: 4, second: 5, neither: 3 },
    'aim-left': { first: 0, second: 0, neither: 0 },
    'poorer-fit': { first: 0, second: 0, neither: 1 },
    'too-many-blind': { first: 6, second: 3, neither: 0 },
    'too-few-blind': { first: 0, second: 1, neither: 0 },
    continued: { first: 0, second: 0, neither: 7 },
    stopped: { first: 0, second: 0, neither: 0 },
    'asked-too-many': { first: 0, second: 0, neither: 3 },
    'asked-too-few': { first: 0, second: 0, neither: 5 },
  },
} as const;
