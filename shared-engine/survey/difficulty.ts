// How hard each pattern of a card is, measured: the tiles still missing when half the wall is gone.
import type { CompiledCard, Hand } from '../card/index.ts';
import { FACE_COUNT, FULL_SET, faceIndex, facesOf, JOKER_INDEX, shuffled, stream } from '../rules/index.ts';

/** Turns after which the missing tiles are counted: about half the wall. */
const TURNS = 12;

const NOTHING: readonly number[] = new Array<number>(FACE_COUNT).fill(0);

interface Wanted {
  readonly faces: readonly { readonly face: number; readonly singles: number; readonly groups: number }[];
  readonly inGroups: number;
}

/**
 * Mean number of tiles still missing to each pattern after 12 turns of a seat that aims at nothing else, by pattern index.
 *
 * The seat starts with 13 tiles of a shuffled set and keeps everything. Each turn brings it one tile of its own
 * and shows three discards of the others; for an open pattern a discard counts in groups of three or more, a
 * discarded joker never does. It flatters every pattern alike: no limit to the rack, no rival for a discard.
 */
export function meanMissing(card: CompiledCard, seed: string, deals: number): number[] {
  const missingIn = missingByDeal(card, seed);
  const sums = card.patterns.map(() => 0);
  for (let deal = 0; deal < deals; deal++) {
    for (const [pattern, tilesMissing] of missingIn(deal).entries()) sums[pattern]! += tilesMissing;
  }
  return sums.map((sum) => sum / deals);
}

/** The same for one deal after the other: tiles missing to each pattern in the deal of this number. */
export function missingByDeal(card: CompiledCard, seed: string): (deal: number) => number[] {
  const hands = card.hands.map(wanted);
  return (deal) => {
    const tiles = shuffled(facesOf(FULL_SET), stream(seed, `difficulty-${deal}`)).map(faceIndex);
    const own = new Array<number>(FACE_COUNT).fill(0);
    const shown = new Array<number>(FACE_COUNT).fill(0);
    tiles.slice(0, 13 + 4 * TURNS).forEach((face, place) => {
      if (place < 13 || (place - 13) % 4 === 0) own[face]!++;
      else shown[face]!++;
    });
    const least = card.patterns.map(() => 14);
    card.hands.forEach(({ pattern }, index) => {
      const callable = card.patterns[pattern]!.concealed ? NOTHING : shown;
      least[pattern] = Math.min(least[pattern]!, missing(hands[index]!, own, callable));
    });
    return least;
  };
}

/** Points of a pattern: ten for each tile missing on average. */
export function pointsFor(tilesMissing: number): number {
  return Math.round(10 * tilesMissing);
}

/** Seed and number of deals behind the points that the house card carries. */
export const POINTS_SEED = 'quadrille';
export const POINTS_DEALS = 20_000;

function wanted({ singles, groups }: Hand): Wanted {
  return {
    faces: Array.from({ length: FACE_COUNT }, (_, face) => ({
      face,
      singles: singles[face]!,
      groups: groups[face]!,
    })).filter((entry) => entry.singles + entry.groups > 0),
    inGroups: groups.reduce((sum, count) => sum + count, 0),
  };
}

function missing(hand: Wanted, own: readonly number[], callable: readonly number[]): number {
  let inSingles = 0;
  let inGroups = own[JOKER_INDEX]!;
  for (const { face, singles, groups } of hand.faces) {
    const natural = Math.min(own[face]!, singles);
    inSingles += natural;
    inGroups += Math.min(own[face]! - natural + callable[face]!, groups);
  }
  return 14 - inSingles - Math.min(inGroups, hand.inGroups);
}
