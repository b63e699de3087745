// The hands of a card that a rack is closest to, one by one: what a seat would most likely play for.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';

export interface ClosestHands {
  readonly toGo: number;
  /** All hands at that distance; indexes into the card's hands. */
  readonly hands: readonly number[];
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

/** The closest hands of the rack at `racks[at..at + 36)`. */
export type FindClosest = (racks: Uint8Array, at: number) => ClosestHands;

export function createFindClosest(card: CompiledCard): FindClosest {
  const wants = card.hands.map(wantsOf);
  return (racks, at) => {
    const jokers = racks[at + JOKER_INDEX]!;
    let most = -1;
    let hands: number[] = [];
    for (const [index, wanted] of wants.entries()) {
      let all = jokers;
      let limit = 0;
      for (const { face, single, group } of wanted) {
        const held = racks[at + face]!;
        all += Math.min(held, single + group);
        limit += group + Math.min(held, single);
      }
      const matched = Math.min(all, limit);
      if (matched < most) continue;
      if (matched > most) hands = [];
      most = matched;
      hands.push(index);
    }
    return { toGo: 14 - most, hands };
  };
}

/** Tiles of singles and pairs of this hand that the rack lacks: no joker fills them. */
export function lackingInPairs({ singles }: Hand, racks: Uint8Array, at: number): number {
  let lacking = 0;
  for (let face = 0; face < FACE_COUNT; face++) lacking += Math.max(0, singles[face]! - racks[at + face]!);
  return lacking;
}
