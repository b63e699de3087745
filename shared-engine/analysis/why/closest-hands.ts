// The hands of a card that a rack is closest to, one by one: what a seat would most likely play for.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';

export interface ClosestHands {
  readonly toGo: number;
  /** All hands at that distance; indexes into the card's hands. */
  readonly hands: readonly number[];
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
      for (const [index, wanted] of wants.entries()) {
        const distance = toGo(wanted, racks, at);
        if (distance > least) continue;
        if (distance < least) closest = [];
        least = distance;
        closest.push(index);
      }
      return { toGo: least, hands: closest };
    },
    sectionsWithin(rack, most) {
      const near = hands.filter((_, index) => toGo(wants[index]!, rack, 0) <= most);
      return new Set(near.map(({ pattern }) => patterns[pattern]!.section)).size;
    },
  };
}

/** Tiles of singles and pairs of this hand that the rack lacks: no joker fills them. */
export function lackingInPairs({ singles }: Hand, racks: ArrayLike<number>, at: number): number {
  let lacking = 0;
  for (let face = 0; face < FACE_COUNT; face++) lacking += Math.max(0, singles[face]! - racks[at + face]!);
  return lacking;
}
