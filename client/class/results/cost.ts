// What a choice of the class cost compared with the best one, as a figure for the picture and in words.
import type { Cost } from '../../../shared-engine/index.ts';
import { twoPlaces } from '../../ui/numbers.ts';
import { SPREAD } from './strings.ts';

export interface CostFigure {
  readonly value: number;
  readonly from: number;
  readonly to: number;
  readonly unit: 'tiles' | 'wins';
}

type Costs = Pick<Cost, 'loss' | 'winsLost'>;

/** Wins in 100 games once every choice has its deep analysis, so that all share one scale; tiles to go until then. */
export function commonUnit(choices: readonly Costs[]): CostFigure['unit'] {
  return choices.length > 0 && choices.every(({ winsLost }) => winsLost !== null) ? 'wins' : 'tiles';
}

/** Null where nothing is known. */
export function costOf({ loss, winsLost }: Costs, unit: CostFigure['unit']): CostFigure | null {
  if (winsLost && unit === 'wins') {
    const { value, halfWidth } = winsLost;
    return { value, from: value - halfWidth, to: value + halfWidth, unit };
  }
  if (loss === null) return null;
  return { value: loss.mean, from: loss.low ?? loss.mean, to: loss.high ?? loss.mean, unit: 'tiles' };
}

/** `2.00 fewer wins (1.50 to 2.50)`. */
export function costText(cost: CostFigure | null): string {
  if (cost === null) return SPREAD.unknown;
  const { value, from, to, unit } = cost;
  if (to < 0.005) return SPREAD.none;
  const size = `${twoPlaces(value)} ${unit === 'wins' ? 'fewer wins' : 'more tiles'}`;
  return to - from < 0.005 ? size : `${size} (${twoPlaces(from)} to ${twoPlaces(to)})`;
}
