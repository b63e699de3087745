// What one option of a choice among a few numbers is called.
import type { NumberReview } from '../../shared-engine/index.ts';
import { tileCount } from '../tiles/tile-names.ts';

export function optionName(kind: NumberReview['kind'], value: number): string {
  if (kind === 'vote') return value === 1 ? 'Go on' : 'Stop';
  if (kind === 'blind') return value === 0 ? 'None unseen' : `${value} unseen`;
  return value === 0 ? 'No tiles' : tileCount(value);
}
