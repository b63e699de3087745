// What to do instead: the alternative that a verdict rests on, as the difference to what was done.
import { namedAlternative } from '../choice-verdict.ts';
import { without } from '../groups.ts';
import type { ChoiceReview, NumberReview } from '../review.ts';
import { tileList } from './tiles.ts';

/**
 * "pass 3 bam, keep an east wind", "pass another 9 dot, keep 3 bam", "pass 2 blind", "continue"; what is kept is left out
 * where that is all three tiles.
 */
export function insteadPhrase(choice: ChoiceReview): string {
  if (choice.kind !== 'pass') return numberPhrase(choice.kind, namedNumber(choice));
  const { tiles } = choice.played;
  const named = namedAlternative(choice)?.tiles ?? tiles;
  const keep = without(tiles, named);
  const pass = `pass ${tileList(without(named, tiles), { faces: tiles, word: 'another' })}`;
  const kept = tileList(keep, { faces: named, word: 'one' });
  return keep.length === tiles.length ? pass : `${pass}, keep ${kept}`;
}

/** "pass 2 blind", "continue", "ask for 0". */
export function numberPhrase(kind: NumberReview['kind'], number: number): string {
  switch (kind) {
    case 'blind':
      return number === 0 ? 'pass nothing blind' : `pass ${number} blind`;
    case 'vote':
      return number === 1 ? 'continue' : 'stop';
    case 'ask':
      return `ask for ${number}`;
  }
}

export function namedNumber(choice: NumberReview): number {
  return namedAlternative(choice)?.number ?? choice.played;
}
