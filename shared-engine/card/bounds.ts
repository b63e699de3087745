// The first look at a card file from a stranger: how large, how deep, and no name that could harm.
import { type CardProblem, cardProblem } from './problem.ts';

const MAX_VALUES = 60_000;
const MAX_DEPTH = 10;

/** What forbids even reading this value, or null. Takes what JSON.parse gives. */
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
        // The limit is looked at while a layer grows, so that a huge one is never copied in full.
        if (next.push(child) + values > MAX_VALUES) break;
      }
    }
    layer = next;
  }
  return null;
}
