// What is said around a question that somebody answers alone.

export const QUESTION = {
  yours: 'Your pass',
  better: 'Better',
  /** Beside a pass that is about as good. */
  best: 'The best',
  blind: 'How many of the arriving tiles blind?',
  answer: 'That is my answer',
  compare: 'How good are these?',
  working: 'Playing the rest of the round many times…',
  failed: 'The choice could not be judged on this device. You can go on without.',
  /** The two parts of a pass of which some may be blind. */
  parts: { blind: 'How many blind', pass: 'which tiles' },
  notJudged: 'not judged',
} as const;

/** `instead` says why it is not the card that was chosen; null where it is. */
export function judgedBy(card: string, instead: string | null): string {
  return instead === null ? `Judged by: ${card}.` : `${instead} Until then judged by: ${card}.`;
}
