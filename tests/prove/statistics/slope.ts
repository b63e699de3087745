// The slope of a line through points that come in groups, and how far it may be off.
import { NORMAL_POINT } from './wilson.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Slope {
  readonly slope: number;
  /** Half the width of its 95 % interval. */
  readonly halfWidth: number;
}

/** Least squares with a constant; the error holds where the points of a group depend on each other (Liang & Zeger 1986). */
export function slopeOf(groups: readonly (readonly Point[])[]): Slope {
  const points = groups.flat();
  const meanOf = (of: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [middle, level] = [meanOf(({ x }) => x), meanOf(({ y }) => y)];
  const squares = points.reduce((sum, { x }) => sum + (x - middle) ** 2, 0);
  const slope = points.reduce((sum, { x, y }) => sum + (x - middle) * (y - level), 0) / squares;
  const scores = groups.map((group) =>
    group.reduce((sum, { x, y }) => sum + (x - middle) * (y - level - slope * (x - middle)), 0),
  );
  const spread = scores.reduce((sum, score) => sum + score * score, 0);
  return { slope, halfWidth: (NORMAL_POINT['95'] * Math.sqrt(spread)) / squares };
}
