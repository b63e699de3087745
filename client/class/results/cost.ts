// What a choice of the class cost compared with the best one, as a figure for the picture and in words.
import type { Cost } from '../../../shared-engine/index.ts';
import { twoPlaces } from '../../ui/numbers.ts';
import { SPREAD } from './strings.ts';

/** In wins of 100 games. */
export interface CostFigure {
  readonly value: number;
  readonly from: number;
  readonly to: number;
}

/** Null where nothing is known. */
export function costOf({ winsLost }: Pick<Cost, 'winsLost'>): CostFigure | null {
  if (winsLost === null) return null;
  const { value, halfWidth } = winsLost;
  return { value, from: value - halfWidth, to: value + halfWidth };
}

/** `2.00 fewer wins (1.50 to 2.50)`. */
export function costText(cost: CostFigure | null): string {
  if (cost === null) return SPREAD.unknown;
  const { value, from, to } = cost;
  if (to < 0.005) return SPREAD.none;
  const size = `${twoPlaces(value)} fewer wins`;
  return to - from < 0.005 ? size : `${size} (${twoPlaces(from)} to ${twoPlaces(to)})`;
}
