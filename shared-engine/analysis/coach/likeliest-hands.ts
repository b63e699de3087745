// Which hands of a card a rack is likeliest to reach: in this order the card lists them, and of the first ten the coach speaks.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { tilesToGo } from '../../kernels/index.ts';
import { type Bag, JOKER_INDEX } from '../../rules/index.ts';
import type { Reach } from './reach.ts';

/** A pattern in the way to make it that a rack is nearest to. */
export interface NearestWay {
  readonly hand: Hand;
  readonly toGo: number;
  /** Of the tiles that are missing, those that no joker may stand for. */
  readonly naturals: number;
}

/** The coach speaks of so many hands at most; a card with fewer patterns has fewer. */
export const SPOKEN_OF = 10;

/** By pattern the nearest way to make it, of equally near ones the one that jokers help most; none where it has no hand. */
export function nearestWays({ hands, patterns }: CompiledCard, rack: Bag): readonly (NearestWay | null)[] {
  const nearest: (NearestWay | null)[] = patterns.map(() => null);
  for (const hand of hands) {
    const known = nearest[hand.pattern] ?? null;
    const toGo = tilesToGo(hand, rack);
    if (known !== null && toGo > known.toGo) continue;
    const way = { hand, toGo, naturals: naturalsMissing(hand, rack) };
    if (known === null || isNearer(way, known)) nearest[hand.pattern] = way;
  }
  return nearest;
}

function isNearer(one: NearestWay, other: NearestWay): boolean {
  return one.toGo < other.toGo || (one.toGo === other.toGo && one.naturals < other.naturals);
}

/** Tiles of singles and pairs that the rack does not hold. */
function naturalsMissing({ singles }: Hand, rack: Bag): number {
  return singles.reduce(
    (sum, wanted, face) => (face === JOKER_INDEX ? sum : sum + Math.max(0, wanted - rack[face]!)),
    0,
  );
}

/** Places of patterns, given how often each is reached: what is reached most often first, then what comes nearest. */
export function likeliestFirst(reach: readonly Reach[]): readonly number[] {
  return [...reach.keys()].sort((a, b) => {
    const [one, other] = [reach[a]!, reach[b]!];
    return other.rate - one.rate || one.left - other.left;
  });
}

/** The hands that the coach speaks of, each in its nearest way, in the order of the card. */
export function likeliestHands(
  card: CompiledCard,
  rack: Bag,
  reach: readonly Reach[],
): readonly NearestWay[] {
  const ways = nearestWays(card, rack);
  return likeliestFirst(reach)
    .flatMap((pattern) => ways[pattern] ?? [])
    .slice(0, SPOKEN_OF);
}

/** Whether a hand has a place for this face. */
export function wants({ singles, groups }: Hand, face: number): boolean {
  return singles[face]! + groups[face]! > 0;
}
