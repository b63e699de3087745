// What a vote does to the other three: whether stopping or continuing helps them, taken together.
import type { Alternative } from '../comparison/alternatives.ts';
import { type Estimate, estimate } from '../comparison/estimate.ts';
import { always, column, type DealSource } from '../comparison/sampled-deals.ts';
import { SHOWN_TAIL } from '../comparison/series.ts';

export interface TwoVotes {
  readonly seat: number;
  readonly played: Alternative;
  readonly named: Alternative;
}

/** Wins in 100 games that the vote named brings the others together, in batches from `first` on. */
export function othersAfterVote(
  source: DealSource,
  { seat, played, named }: TwoVotes,
  range: { readonly first: number; readonly batches: number },
): Estimate {
  const results = source.rollOut(range, [always(played.action), always(named.action)]);
  const seats = [0, 1, 2, 3].filter((other) => other !== seat);
  const byBatch = [0, 1].map((action) => seats.map((other) => column(results, action, other)));
  const differences = Float64Array.from({ length: range.batches }, (_, batch) =>
    seats.reduce((sum, _seat, n) => sum + byBatch[1]![n]![batch]! - byBatch[0]![n]![batch]!, 0),
  );
  return estimate(differences, SHOWN_TAIL);
}
