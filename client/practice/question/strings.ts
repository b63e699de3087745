// What is said around a question that somebody answers alone.

export const QUESTION = {
  yours: 'Your pass',
  better: 'Better',
  failed: 'This cannot be judged just now. Reload the page and try again.',
} as const;
