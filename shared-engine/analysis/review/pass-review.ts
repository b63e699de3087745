// One pass, reviewed: the pass played among all that were legal.
import { type Kernel, sectionsInReach, sectionsNoFurther } from '../../kernels/index.ts';
import { riskGrade } from '../../policy/index.ts';
import { addTo, type Bag, type Face, facesOf, takeFrom } from '../../rules/index.ts';
import { thousandth } from '../comparison/estimate.ts';
import type { Worth } from './basis.ts';
import { passPartsOf } from './groups.ts';
import { type RankingOfPlayed, rankPlayed, type TriedPass } from './ranking.ts';
import type { OfferedMove } from './replay-decisions.ts';
import type { PassFindings, RankedPass } from './review.ts';

/** How many of the ranking are shown. */
const SHOWN_PASSES = 12;

export function rankMove(offer: OfferedMove, worth: Worth): RankingOfPlayed {
  return rankPlayed({ ...offer, size: offer.gave.length }, offer.gave, worth);
}

export function reviewPass(move: OfferedMove, ranking: RankingOfPlayed, kernel: Kernel): PassFindings {
  const { step, by, rack, gave, blind, received } = move;
  const rankedPass = ({ tiles, nearness }: TriedPass): RankedPass => ({
    tiles,
    nearness,
    toGo: kernel.toGo(keptOf(rack, tiles)),
    risk: riskGrade(tiles),
  });
  const first = ranking.tried.slice(0, SHOWN_PASSES);
  const shown = first.includes(ranking.played) ? first : [...first, ranking.played];
  const played = rankedPass(ranking.played);
  const best = rankedPass(ranking.best);
  const rest = keptOf(rack, gave);
  const findings: Omit<PassFindings, 'parts'> = {
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
    alternatives: shown.map(rankedPass),
    sectionsInReach: sectionsInReach(kernel, rack),
    sectionsInReachAfter: sectionsNoFurther(kernel, rest, kernel.toGo(rack) + 1),
    sectionsInReachAfterBest: sectionsNoFurther(kernel, keptOf(rack, best.tiles), kernel.toGo(rack) + 1),
  };
  return {
    ...findings,
    parts: passPartsOf(rack, { ...move, sectionTiles: sectionTilesOf(move, findings, kernel) }, findings),
  };
}

/** For every section that is farther away now, the tiles that it takes one of; none where one of them takes several. */
function sectionTilesOf(
  { rack, gave }: OfferedMove,
  { sectionsInReach: before, sectionsInReachAfter }: Omit<PassFindings, 'parts'>,
  kernel: Kernel,
): readonly Face[] {
  const lost = before.filter((id) => !sectionsInReachAfter.includes(id));
  if (lost.length === 0) return [];
  const most = kernel.toGo(rack) + 1;
  const given = [...new Set(gave)].map((face) => {
    const near = sectionsNoFurther(
      kernel,
      keptOf(
        rack,
        gave.filter((tile) => tile === face),
      ),
      most,
    );
    return { face, loses: lost.filter((id) => !near.includes(id)) };
  });
  const isTold = lost.every((id) => given.some(({ loses }) => loses.includes(id)));
  return isTold ? given.filter(({ loses }) => loses.length > 0).map(({ face }) => face) : [];
}

function keptOf(rack: Bag, tiles: readonly Face[]): Bag {
  return takeFrom(rack, tiles) ?? rack;
}
