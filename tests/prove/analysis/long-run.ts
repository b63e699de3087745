// A long run that shares nothing with the analysis: other deals, other noise, every alternative to the end.
import type { OfferedChoice } from '../../../shared-engine/analysis/belief/situation.ts';
import type { Alternative } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import { type Estimate, estimate } from '../../../shared-engine/analysis/comparison/estimate.ts';
import {
  always,
  column,
  createDealSource,
} from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import { analyst } from './choices.ts';

/** No analysis uses this seed. */
const SEED = 0x0e_fe_0e_ce;

export interface LongRun {
  /** By how much one alternative is better than another, each by its place, with a 95 % interval. */
  difference(one: number, other: number): Estimate;
  /** Mean win probability of each. */
  readonly means: readonly number[];
}

/** Runs that begin at other batches share no deals. */
export function longRunOf(
  { situation }: OfferedChoice,
  alternatives: readonly Alternative[],
  batches: number,
  first = 0,
): LongRun {
  const source = createDealSource(analyst, situation, { deals: SEED, noise: SEED });
  const results = source.rollOut(
    { first, batches },
    alternatives.map(({ action }) => always(action)),
  );
  const columns = alternatives.map((_, a) => column(results, a, situation.seat));
  return {
    means: columns.map((values) => values.reduce((sum, value) => sum + value, 0) / batches),
    difference(one, other) {
      const values = columns[one]!.map((value, b) => value - columns[other]![b]!);
      return estimate(Float64Array.from(values), 0.025);
    },
  };
}
