// One pass, reviewed: the pass played among all that were legal.
import { type Kernel, sectionsInReach, sectionsNoFurther } from '../../kernels/index.ts';
import { riskGrade } from '../../policy/index.ts';
import { addTo, type Bag, type Face, facesOf, takeFrom } from '../../rules/index.ts';
import { thousandth } from '../comparison/estimate.ts';
import type { Worth } from './basis.ts';
import { passPartsOf } from './groups.ts';
import { type RankingOfPlayed, rankPlayed, type TriedPass } from './ranking.ts';
import type { OfferedMove } from './replay-decisions.ts';
import type { PassFindings, PassParts, RankedPass } from './review.ts';

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

/** For every section that is farther away now, the tiles passed that put it there: each alone, or else several together. */
function sectionTilesOf(
  { rack, gave }: OfferedMove,
  { sectionsInReach: before, sectionsInReachAfter }: Omit<PassFindings, 'parts'>,
  kernel: Kernel,
): PassParts['sectionTiles'] {
  const lost = before.filter((id) => !sectionsInReachAfter.includes(id));
  const most = kernel.toGo(rack) + 1;
  const sets = lost.length === 0 ? [] : subsetsOf([...new Set(gave)]);
  const tried = sets.map((faces) => {
    const without = keptOf(
      rack,
      gave.filter((tile) => faces.includes(tile)),
    );
    return { faces, near: sectionsNoFurther(kernel, without, most) };
  });
  return Object.fromEntries(
    lost.map((id) => {
      const enough = tried.filter(({ near }) => !near.includes(id)).map(({ faces }) => faces);
      const least = Math.min(...enough.map((faces) => faces.length));
      const tiles = new Set(enough.filter((faces) => faces.length === least).flat());
      return [id, [...tiles]];
    }),
  );
}

function subsetsOf(faces: readonly Face[]): readonly (readonly Face[])[] {
  return faces.reduce<readonly (readonly Face[])[]>(
    (sets, face) => sets.concat(sets.map((set) => [...set, face])),
    [[]],
  );
}

function keptOf(rack: Bag, tiles: readonly Face[]): Bag {
  return takeFrom(rack, tiles) ?? rack;
}
