// What a choice of the class cost, as a figure for the picture and as words.
import type { Cost } from '../../shared-engine/index.ts';
import { figure } from '../review/strings.ts';
import { WALL } from './strings.ts';

export interface CostFigure {
  readonly value: number;
  readonly from: number;
  readonly to: number;
  readonly unit: 'tiles' | 'points';
}

type Costs = Pick<Cost, 'loss' | 'points'>;

/** Points of outlook once every choice was looked at closely, so that all stand on one scale; tiles until then. */
export function commonUnit(choices: readonly Costs[]): CostFigure['unit'] {
  return choices.length > 0 && choices.every(({ points }) => points !== null) ? 'points' : 'tiles';
}

/** Null where nothing is known. */
export function costOf({ loss, points }: Costs, unit: CostFigure['unit']): CostFigure | null {
  if (points && unit === 'points') {
    const { value, within } = points;
    return { value, from: value - within, to: value + within, unit };
  }
  if (loss === null) return null;
  return { value: loss.mean, from: loss.low ?? loss.mean, to: loss.high ?? loss.mean, unit: 'tiles' };
}

export function costWords(cost: CostFigure | null): string {
  if (cost === null) return WALL.unknown;
  const { value, from, to, unit } = cost;
  if (to < 0.005) return WALL.none;
  const size = `${figure(value)} ${unit}`;
  return to - from < 0.005 ? size : `${size} (${figure(from)} to ${figure(to)})`;
}
