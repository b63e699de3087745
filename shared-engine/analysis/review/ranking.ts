// All legal passes in order: first by the tiles they keep, then the front of them by what may arrive as well.
import { type Bag, sortFaces } from '../../rules/tiles/bag.ts';
import { type Face, faceIndex } from '../../rules/tiles/face.ts';
import { arrivals } from './arrivals.ts';
import { BASIS } from './basis.ts';
import { legalPasses } from './passes.ts';
import { thousandth } from './rounding.ts';
import type { Worth } from './worth.ts';

export interface PassOffer {
  readonly rack: Bag;
  readonly unseen: Bag;
  /** Names the arrivals, so that each step has its own. */
  readonly step: string;
  /** Own tiles to give, 0–3; as many arrive and stay. */
  readonly size: number;
}

/** A pass that was looked at closely. */
export interface RankedPass {
  readonly tiles: readonly Face[];
  /** Mean worth of the tiles kept together with each arrival, to the thousandth. */
  readonly nearness: number;
}

export interface Ranking {
  readonly legal: number;
  /** Best first. */
  readonly closely: readonly RankedPass[];
  readonly best: RankedPass;
}

export interface RankingOfPlayed extends Ranking {
  readonly played: RankedPass;
  /** 1 for the best; behind all that were looked at closely, its place by the tiles kept. */
  readonly rank: number;
}

interface Candidate {
  readonly tiles: readonly Face[];
  readonly rest: Bag;
  readonly kept: number;
}

export function rankPasses(offer: PassOffer, worth: Worth): Ranking {
  const candidates = byTilesKept(offer, worth);
  return ranked(candidates, lookClosely(offer, candidates.slice(0, BASIS.closely), worth));
}

export function rankPlayed(offer: PassOffer, played: readonly Face[], worth: Worth): RankingOfPlayed {
  const candidates = byTilesKept(offer, worth);
  const wanted = sortFaces(played).join();
  const place = candidates.findIndex(({ tiles }) => tiles.join() === wanted);
  const front = candidates.slice(0, BASIS.closely);
  const looked = lookClosely(offer, place < front.length ? front : [...front, candidates[place]!], worth);
  const own = looked[Math.min(place, looked.length - 1)]!;
  // Among equals the pass played comes first: nobody is told of a better pass that is not better.
  const ranking = ranked(candidates, [own, ...looked.filter((other) => other !== own)]);
  const above = looked.filter((other) => other.nearness > own.nearness).length;
  return { ...ranking, played: own, rank: 1 + (above === front.length ? place : above) };
}

function ranked(candidates: readonly Candidate[], looked: readonly RankedPass[]): Ranking {
  const closely = [...looked].sort((a, b) => b.nearness - a.nearness);
  return { legal: candidates.length, closely, best: closely[0]! };
}

function byTilesKept({ rack, size }: PassOffer, worth: Worth): readonly Candidate[] {
  return legalPasses(rack, size)
    .map((tiles): Candidate => {
      const rest = [...rack];
      for (const face of tiles) rest[faceIndex(face)]!--;
      return { tiles, rest, kept: worth(rest) };
    })
    .sort((a, b) => b.kept - a.kept);
}

function lookClosely(
  offer: PassOffer,
  candidates: readonly Candidate[],
  worth: Worth,
): readonly RankedPass[] {
  // Always bundles of three, of which the first tiles are used: passes of different sizes see the same worlds.
  const bundles =
    offer.size === 0 ? [[]] : arrivals(offer.unseen, offer.step, 3, BASIS.arrivals).map(first(offer.size));
  return candidates.map(({ tiles, rest }) => {
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

function first(size: number): (bundle: readonly number[]) => readonly number[] {
  return (bundle) => bundle.slice(0, size);
}
