// How rare the racks of a constraint are: an exact share times a share estimated from racks drawn for it.
import { stream } from '../rules/deal/random.ts';
import { type Interval, wilson } from './interval.ts';
import type { Sampler } from './sampler.ts';

/** Racks that are looked at: at least so many, and enough for about so many that fit. */
const SURVEY = { least: 2_000, fitting: 40 } as const;

/** How many of all racks of this size fit: the share, and where it was counted in a sample its 95 % interval. */
export interface Rarity extends Interval {
  readonly share: number;
  /** Racks drawn with the jokers, flowers and multiples of the constraint, and how many of them fitted; 0 of 0 where the share is exact. */
  readonly drawn: number;
  readonly fitted: number;
}

/**
 * The exact share of possible shapes times the share of racks of those shapes that fit. The second is counted in
 * racks of their own: how many are looked at follows from how long a search took (`tried` racks) and never from what
 * is counted here, so that Wilson's interval holds; the exact factor scales it.
 */
export function rarityOf(sampler: Sampler, tried: number, most: number, seed: string): Rarity {
  const { share, later } = sampler;
  if (later.length === 0) return { share, low: share, high: share, drawn: 0, fitted: 0 };
  const random = stream(seed, 'how rare');
  const drawn = Math.min(most, Math.max(SURVEY.least, tried * SURVEY.fitting));
  let fitted = 0;
  for (let n = 0; n < drawn; n++) if (sampler.misses(sampler.draw(random)) === null) fitted++;
  const { low, high } = wilson(fitted, drawn);
  return { share: (share * fitted) / drawn, low: share * low, high: share * high, drawn, fitted };
}
