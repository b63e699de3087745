// One pass, judged: the pass played among all that were legal.
import { openFamilies } from '../../kernels/tiles-to-go/by-section.ts';
import type { Kernel } from '../../kernels/tiles-to-go/kernel.ts';
import { giftGrade } from '../../policy/gift.ts';
import { addTo, type Bag, facesOf, takeFrom } from '../../rules/tiles/bag.ts';
import type { Face } from '../../rules/tiles/face.ts';
import { partsOf } from './groups.ts';
import { type RankedPass, type RankingOfPlayed, rankPlayed } from './ranking.ts';
import type { OfferedMove } from './replay-decisions.ts';
import type { Alternative, PassReview } from './review.ts';
import { thousandth } from './rounding.ts';
import type { Worth } from './worth.ts';

/** The front of the ranking that is shown. */
const SHOWN = 12;

export function rankMove(offer: OfferedMove, worth: Worth): RankingOfPlayed {
  return rankPlayed({ ...offer, size: offer.gave.length }, offer.gave, worth);
}

export function judgePass(
  { step, by, rack, gave, blind, received, receivedLast }: OfferedMove,
  ranking: RankingOfPlayed,
  kernel: Kernel,
): Omit<PassReview, 'words' | 'judgement'> {
  const alternative = ({ tiles, nearness }: RankedPass): Alternative => ({
    tiles,
    nearness,
    toGo: kernel.toGo(keptOf(rack, tiles)),
    gift: giftGrade(tiles),
  });
  const front = ranking.closely.slice(0, SHOWN);
  const shown = front.includes(ranking.played) ? front : [...front, ranking.played];
  const played = alternative(ranking.played);
  const best = alternative(ranking.best);
  const rest = keptOf(rack, gave);
  const judged: Omit<PassReview, 'words' | 'judgement' | 'parts'> = {
    kind: 'pass',
    step,
    by,
    rack: facesOf(rack),
    received,
    blind,
    toGoBefore: kernel.toGo(rack),
    toGoAfter: kernel.toGo(addTo(rest, received)),
    played,
    best,
    loss: thousandth(best.nearness - played.nearness),
    rank: ranking.rank,
    legal: ranking.legal,
    alternatives: shown.map(alternative),
    open: openFamilies(kernel, rack),
    openAfter: openFamilies(kernel, rest),
    openAfterBest: openFamilies(kernel, keptOf(rack, best.tiles)),
  };
  return { ...judged, parts: partsOf(rack, receivedLast, judged) };
}

function keptOf(rack: Bag, tiles: readonly Face[]): Bag {
  return takeFrom(rack, tiles) ?? rack;
}
