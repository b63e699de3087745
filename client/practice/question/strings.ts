// What is said around a question that somebody answers alone.

export const QUESTION = {
  yours: 'Your pass',
  better: 'Better',
  blind: 'How many of the arriving tiles blind?',
  answer: 'That is my answer',
  compare: 'How good are these?',
} as const;

export function judgedBy(card: string): string {
  return `Judged by: ${card}.`;
}
