// What a choice of the class cost compared with the best one: on a scale for the picture, and in words.
import type { Cost } from '../../../shared-engine/index.ts';
import { SPREAD } from './strings.ts';

/** In wins of 100 games. */
export interface CostFigure {
  readonly value: number;
  readonly from: number;
  readonly to: number;
}

/** Less is not told apart from nothing. */
const LEAST = 0.05;

/** Null where nothing is known. */
export function costOf({ winsLost }: Pick<Cost, 'winsLost'>): CostFigure | null {
  if (winsLost === null) return null;
  const { value, halfWidth } = winsLost;
  return { value, from: value - halfWidth, to: value + halfWidth };
}

/** `about 2 fewer wins`, or `perhaps 0.3 fewer wins` where it may be nothing. */
export function costText(cost: CostFigure | null): string {
  if (cost === null) return SPREAD.unknown;
  const { value, from } = cost;
  if (value < LEAST) return SPREAD.none;
  return from > 0 ? SPREAD.about(winsText(value)) : SPREAD.perhaps(winsText(value));
}

/** The end of a scale on which all of these have room: whole wins. */
export function scaleEndOf(costs: readonly CostFigure[]): number {
  return Math.max(1, ...costs.map(({ to }) => Math.ceil(to)));
}

/** `2`, `0.4`; one place where that says something. */
function winsText(wins: number): string {
  return wins < 10 ? wins.toFixed(1).replace(/\.0$/, '') : wins.toFixed(0);
}
