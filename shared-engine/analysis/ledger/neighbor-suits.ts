// What the passes told of each neighbor by the close: which suit it probably holds most of.
import { DIRECTIONS, FACE_COUNT, neighbor } from '../../rules/index.ts';
import type { Belief } from '../belief/belief.ts';
import { type BatchRange, DEALS_PER_BATCH } from '../belief/particle-filter.ts';
import type { Situation } from '../belief/situation.ts';
import { thousandth } from '../comparison/estimate.ts';
import { DEAL_BYTES } from '../rollouts/batch.ts';
import { longestSuit, type NeighborSuits, USUAL } from './longest-suit.ts';

/**
 * What is left of the distance from the usual share: players pass less alike than belief takes them to, so that even
 * endless deals are too sure of what they hold, and few deals are rough, as if so many batches said nothing. Fitted to
 * rounds of typical bots. Where belief changes, the slope that `prove -- neighbors` finds is what to multiply the first by.
 */
const RELIANCE = 0.82;
const SILENT_BATCHES = 7;

/** What the seat may believe in this situation, from so many batches of deals that fit what it knows. */
export function neighborSuits(
  belief: Belief,
  situation: Situation,
  seed: number,
  range: BatchRange,
): readonly NeighborSuits[] {
  const deals = belief.sampledDeals(situation, seed, range);
  const count = range.batches * DEALS_PER_BATCH;
  const reliance = (RELIANCE * range.batches) / (range.batches + SILENT_BATCHES);
  return DIRECTIONS.map((toward): NeighborSuits => {
    const at = neighbor(situation.seat, toward) * FACE_COUNT;
    const hits = [0, 0, 0];
    for (let deal = 0; deal < count; deal++) {
      const place = longestSuit(deals, deal * DEAL_BYTES + at);
      if (place !== null) hits[place]!++;
    }
    const [bam, crak, dot] = hits.map((hit) => thousandth(USUAL + reliance * (hit / count - USUAL))) as [
      number,
      number,
      number,
    ];
    return { toward, longest: { bam, crak, dot } };
  });
}
