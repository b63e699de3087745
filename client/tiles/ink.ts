// Which ink class each kind of tile is drawn in; color only repeats what the shapes already say.
import { type Face, numbered } from '../../shared-engine/index.ts';

/** Class name that gives a tile its ink. */
export function inkOf(face: Face): string {
  const suited = numbered(face);
  if (suited) return `ink-${suited.suit}`;
  switch (face) {
    case 'green':
    case 'red':
    case 'white':
    case 'flower':
    case 'joker':
      return `ink-${face}`;
    default:
      return 'ink-wind';
  }
}
