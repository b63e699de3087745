// The ten hands of a card that a rack is nearest to, one a pattern, the easier first among equally near ones.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { tilesToGo } from '../../kernels/index.ts';
import { type Bag, JOKER_INDEX } from '../../rules/index.ts';

export interface NearHand {
  readonly hand: Hand;
  readonly toGo: number;
  /** Of the tiles that are missing, those that no joker may stand for. */
  readonly naturals: number;
}

/** So many hands are spoken of at most; a card with fewer patterns has fewer. */
export const SPOKEN_OF = 10;

/** Of each pattern the nearest way to make it; then the nearest patterns, those first that jokers help most. */
export function nearestHands({ hands }: CompiledCard, rack: Bag): readonly NearHand[] {
  const nearest: NearHand[] = [];
  for (const hand of hands) {
    const known = nearest[hand.pattern];
    const toGo = tilesToGo(hand, rack);
    if (known && toGo > known.toGo) continue;
    const near = { hand, toGo, naturals: naturalsMissing(hand, rack) };
    if (!known || isNearer(near, known)) nearest[hand.pattern] = near;
  }
  return nearest
    .filter(Boolean)
    .sort((a, b) => a.toGo - b.toGo || a.naturals - b.naturals)
    .slice(0, SPOKEN_OF);
}

function isNearer(one: NearHand, other: NearHand): boolean {
  return one.toGo < other.toGo || (one.toGo === other.toGo && one.naturals < other.naturals);
}

/** Tiles of singles and pairs that the rack does not hold. */
function naturalsMissing({ singles }: Hand, rack: Bag): number {
  return singles.reduce(
    (sum, wanted, face) => (face === JOKER_INDEX ? sum : sum + Math.max(0, wanted - rack[face]!)),
    0,
  );
}

/** Whether a hand has a place for this face. */
export function wants({ singles, groups }: Hand, face: number): boolean {
  return singles[face]! + groups[face]! > 0;
}
