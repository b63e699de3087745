// What is said around a question that somebody answers alone.

export const QUESTION = {
  yours: 'Your pass',
  better: 'Better',
  blind: 'How many of the arriving tiles blind?',
  answer: 'That is my answer',
} as const;
