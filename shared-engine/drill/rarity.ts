// How rare the racks of a constraint are: an exact share times a share estimated from racks drawn for it.
import { stream } from '../rules/index.ts';
import type { Sampler } from './sampler.ts';

/** The two-sided 95 % point of the normal distribution. */
const POINT = 1.959963984540054;

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Wilson's 95 % interval of the true share after `hits` of `trials`, at least one trial (Wilson 1927). */
export function wilson(hits: number, trials: number): Interval {
  const share = hits / trials;
  const squared = (POINT * POINT) / trials;
  const center = share + squared / 2;
  const half = POINT * Math.sqrt((share * (1 - share)) / trials + squared / trials / 4);
  return {
    // At the ends the two terms differ at most in the last bit.
    low: hits === 0 ? 0 : (center - half) / (1 + squared),
    high: hits === trials ? 1 : (center + half) / (1 + squared),
  };
}

/** Racks that are checked: at least `least`, and enough that about `fitting` of them fit. */
const SURVEY = { least: 2_000, fitting: 40 } as const;

/** How many of all racks of this size fit: the share, and where it was counted in a sample its 95 % interval. */
export interface Rarity extends Interval {
  readonly share: number;
  /** Racks drawn with the jokers, flowers and multiples of the constraint, and how many of them fitted; 0 of 0 where the share is exact. */
  readonly drawn: number;
  readonly fitted: number;
}

/**
 * The exact share of possible shapes times the share of racks of those shapes that fit. The second is counted in racks
 * drawn for this alone: their number follows from how long a search took (`tried` racks) and never from the count
 * itself, so that Wilson's interval holds; the exact factor scales it.
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
