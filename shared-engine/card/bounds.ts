// Checks an unknown value before it is parsed as a card: its size, its depth and names that could do harm.
import { type CardProblem, cardProblem } from './problem.ts';

const MAX_VALUES = 60_000;
const MAX_DEPTH = 10;

/** Why this value, as JSON.parse returned it, is not parsed at all; null where it may be. */
export function boundsProblem(json: unknown): CardProblem | null {
  let values = 0;
  let layer: unknown[] = [json];
  for (let depth = 0; layer.length > 0; depth++) {
    values += layer.length;
    if (depth > MAX_DEPTH || values > MAX_VALUES) {
      return cardProblem(
        'too-large',
        null,
        null,
        'the file is too large or nested too deep; a card has at most 300 patterns of at most 14 groups.',
      );
    }
    const next: unknown[] = [];
    for (const value of layer) {
      if (typeof value !== 'object' || value === null) continue;
      if (Object.hasOwn(value, '__proto__')) {
        return cardProblem('unsafe-name', null, null, '"__proto__" is no name of the format; remove it.');
      }
      for (const child of Object.values(value)) {
        // The limit is checked while a layer grows, so that a huge one is never copied as a whole.
        if (next.push(child) + values > MAX_VALUES) break;
      }
    }
    layer = next;
  }
  return null;
}
