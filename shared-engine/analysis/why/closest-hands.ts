// The hands of a card that a rack is closest to, one by one: what a seat would most likely play for.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { FACE_COUNT, FULL_SET, JOKER_INDEX } from '../../rules/index.ts';

export interface ClosestHands {
  readonly toGo: number;
  /** All hands at that distance; indexes into the card's hands. */
  readonly hands: readonly number[];
  /** All that are one tile farther away. */
  readonly farther: readonly number[];
}

export interface HandFinder {
  /** The closest hands of the rack at `racks[at..at + 36)`. */
  closest(racks: ArrayLike<number>, at: number): ClosestHands;
  /** How many sections have a hand that is at most so many tiles away. */
  sectionsWithin(rack: ArrayLike<number>, most: number): number;
}

/** How many tiles of one face a hand wants where no joker may stand, and in groups. */
interface Want {
  readonly face: number;
  readonly single: number;
  readonly group: number;
}

function wantsOf({ singles, groups }: Hand): readonly Want[] {
  return singles.flatMap((single, face) => {
    const group = groups[face]!;
    return single + group > 0 ? [{ face, single, group }] : [];
  });
}

export function createHandFinder({ hands, patterns }: CompiledCard): HandFinder {
  const wants = hands.map(wantsOf);

  function toGo(wanted: readonly Want[], racks: ArrayLike<number>, at: number): number {
    let all = racks[at + JOKER_INDEX]!;
    let limit = 0;
    for (const { face, single, group } of wanted) {
      const held = racks[at + face]!;
      all += Math.min(held, single + group);
      limit += group + Math.min(held, single);
    }
    return 14 - Math.min(all, limit);
  }

  return {
    closest(racks, at) {
      let least = 15;
      let closest: number[] = [];
      let farther: number[] = [];
      for (const [index, wanted] of wants.entries()) {
        const distance = toGo(wanted, racks, at);
        if (distance > least + 1) continue;
        if (distance < least) {
          farther = distance === least - 1 ? closest : [];
          closest = [];
          least = distance;
        }
        (distance === least ? closest : farther).push(index);
      }
      return { toGo: least, hands: closest, farther };
    },
    sectionsWithin(rack, most) {
      const near = hands.filter((_, index) => toGo(wants[index]!, rack, 0) <= most);
      return new Set(near.map(({ pattern }) => patterns[pattern]!.section)).size;
    },
  };
}

/** Jokers of the rack that this hand has no place for: they stand only in groups of three or more. */
export function idleJokers({ singles, groups }: Hand, racks: ArrayLike<number>, at: number): number {
  let room = 0;
  for (let face = 0; face < FACE_COUNT; face++) {
    const inGroups = Math.max(0, racks[at + face]! - singles[face]!);
    room += Math.max(0, groups[face]! - inGroups);
  }
  return Math.max(0, racks[at + JOKER_INDEX]! - room);
}

/** Tiles that this hand lacks of which none is left in the wall: the other racks at `racks` hold the rest. */
export function goneTiles({ singles, groups }: Hand, racks: ArrayLike<number>, seat: number): number {
  let gone = 0;
  for (let face = 0; face < FACE_COUNT; face++) {
    const lack = singles[face]! + groups[face]! - racks[seat * FACE_COUNT + face]!;
    if (lack <= 0) continue;
    let left = FULL_SET[face]!;
    for (let other = 0; other < 4; other++) left -= racks[other * FACE_COUNT + face]!;
    gone += Math.max(0, lack - left);
  }
  return gone;
}

/** Tiles of singles and pairs of this hand that the rack lacks: no joker fills them. */
export function lackingInPairs({ singles }: Hand, racks: ArrayLike<number>, at: number): number {
  let lacking = 0;
  for (let face = 0; face < FACE_COUNT; face++) lacking += Math.max(0, singles[face]! - racks[at + face]!);
  return lacking;
}
