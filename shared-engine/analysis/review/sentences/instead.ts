// What to do instead: the alternative that a verdict rests on, as the difference to what was done.
import type { Finalist } from '../analysis.ts';
import { namedAlternative } from '../choice-verdict.ts';
import { without } from '../groups.ts';
import type { ChoiceReview, NumberReview } from '../review.ts';
import { tileList } from './tiles.ts';

/**
 * "pass 3 bam instead of an east wind", "pass another 9 dot instead of 3 bam", "pass 2 blind", "continue"; what was passed
 * is left out where every tile changes.
 */
export function insteadPhrase(
  choice: ChoiceReview,
  alternative: Pick<Finalist, 'tiles' | 'number'> | null = namedAlternative(choice),
): string {
  if (choice.kind !== 'pass') return numberPhrase(choice.kind, alternative?.number ?? choice.played);
  const { blind, played } = choice;
  const { tiles } = played;
  const named = alternative?.tiles ?? tiles;
  const kept = without(tiles, named);
  const pass = `pass ${tileList(without(named, tiles), { faces: tiles, word: 'another' })}`;
  const changed = `${pass} instead of ${tileList(kept, { faces: named, word: 'one' })}`;
  if (blind === 0) return kept.length === tiles.length ? pass : changed;
  return `${kept.length === tiles.length ? `${pass} instead` : changed}, and ${blind} blind as before`;
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
