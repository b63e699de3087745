// All legal passes in order: first by the tiles they keep, then the first of them by what may arrive as well.
import { legalPasses } from '../../policy/index.ts';
import { type Bag, FACES, type Face, sortFaces } from '../../rules/index.ts';
import { thousandth } from '../comparison/estimate.ts';
import { arrivals } from './arrivals.ts';
import { BASIS, type Worth } from './basis.ts';

export interface PassOffer {
  readonly rack: Bag;
  readonly hidden: Bag;
  /** Names the arrivals, so that each step has its own. */
  readonly step: string;
  /** Own tiles to give, 0–3; as many arrive and stay. */
  readonly size: number;
}

/** A pass that was tried with arrivals. */
export interface TriedPass {
  readonly tiles: readonly Face[];
  /** Mean worth of the tiles kept together with each arrival, to the thousandth. */
  readonly nearness: number;
}

export interface Ranking {
  readonly legal: number;
  /** Best first. */
  readonly tried: readonly TriedPass[];
  readonly best: TriedPass;
}

export interface RankingOfPlayed extends Ranking {
  readonly played: TriedPass;
  /** 1 for the best; behind all that were tried, its place by the tiles kept. */
  readonly rank: number;
}

interface LegalPass {
  readonly tiles: readonly Face[];
  readonly rest: Bag;
  readonly kept: number;
}

export function rankPasses(offer: PassOffer, worth: Worth): Ranking {
  const passes = byTilesKept(offer, worth);
  return ranked(passes, tryPasses(offer, passes.slice(0, BASIS.passesTried), worth));
}

export function rankPlayed(offer: PassOffer, played: readonly Face[], worth: Worth): RankingOfPlayed {
  const passes = byTilesKept(offer, worth);
  const wanted = sortFaces(played).join();
  const place = passes.findIndex(({ tiles }) => tiles.join() === wanted);
  const first = passes.slice(0, BASIS.passesTried);
  const tried = tryPasses(offer, place < first.length ? first : [...first, passes[place]!], worth);
  const own = tried[Math.min(place, tried.length - 1)]!;
  // Among equals the pass played comes first: nobody is told of a better pass that is not better.
  const ranking = ranked(passes, [own, ...tried.filter((other) => other !== own)]);
  const above = tried.filter((other) => other.nearness > own.nearness).length;
  return { ...ranking, played: own, rank: 1 + (above === first.length ? place : above) };
}

function ranked(passes: readonly LegalPass[], tried: readonly TriedPass[]): Ranking {
  const order = [...tried].sort((a, b) => b.nearness - a.nearness);
  return { legal: passes.length, tried: order, best: order[0]! };
}

function byTilesKept({ rack, size }: PassOffer, worth: Worth): readonly LegalPass[] {
  return legalPasses(rack, size)
    .map((faces): LegalPass => {
      const rest = [...rack];
      for (const face of faces) rest[face]!--;
      return { tiles: faces.map((face) => FACES[face]!), rest, kept: worth(rest) };
    })
    .sort((a, b) => b.kept - a.kept);
}

function tryPasses(offer: PassOffer, passes: readonly LegalPass[], worth: Worth): readonly TriedPass[] {
  const { hidden, step, size } = offer;
  // Always bundles of three, of which the first tiles are used: passes of different sizes see the same arrivals.
  const bundles =
    size === 0
      ? [[]]
      : arrivals(hidden, { step, size: 3, count: BASIS.arrivals }).map((bundle) => bundle.slice(0, size));
  return passes.map(({ tiles, rest }) => {
    const rack = [...rest];
    let sum = 0;
    for (const bundle of bundles) {
      for (const face of bundle) rack[face]!++;
      sum += worth(rack);
      for (const face of bundle) rack[face]!--;
    }
    return { tiles, nearness: thousandth(sum / bundles.length) };
  });
}
