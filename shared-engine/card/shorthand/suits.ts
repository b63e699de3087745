// The suit that the shorthand is in while it is read: the first one from the start, another after each slash.
import type { Suit } from '../../rules/index.ts';
import { STANDARD_NAMES } from '../canonical.ts';
import { suitWord } from './words.ts';

/** A suit as the format has it. */
export type SuitValue = Suit | { readonly var: string };

export interface SuitsInUse {
  /** After a slash, with what stood behind it; returns what is wrong with that, or null. */
  turn(typed: string): string | null;
  /** The suit of the tile that is read now; null when all three are in use already. */
  current(): SuitValue | null;
}

export function openSuits(): SuitsInUse {
  // A suit is only taken when a tile needs it, so that a slash at the end, or twice, means no more than one.
  let now: SuitValue | 'next' = 'next';
  let used = 0;
  return {
    turn(typed) {
      if (typed === '') now = 'next';
      else if (/^\d$/.test(typed)) {
        const nth = Number(typed);
        if (nth < 1 || nth > used) {
          return `"/${typed}" goes back to a suit that is not there yet; type "/" alone for another suit.`;
        }
        now = { var: STANDARD_NAMES.suit[nth - 1]! };
      } else {
        const suit = suitWord(typed);
        if (!suit.ok) return `"/${typed}": ${suit.advice}`;
        now = suit.value;
      }
      return null;
    },
    current() {
      if (now !== 'next') return now;
      const name = STANDARD_NAMES.suit[used];
      if (name === undefined) return null;
      used++;
      now = { var: name };
      return now;
    },
  };
}
