// Tiles to go by definition, one hand at a time: what every faster implementation is checked against.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { type Bag, FACE_COUNT, JOKER_INDEX, sizeOf } from '../../rules/index.ts';
import type { Kernel } from './kernel.ts';

/**
 * Tiles of `rack` that fit into `hand`, jokers included (0–14).
 *
 * A natural tile goes to a single or pair first, because a joker may not stand there; what is left goes to the
 * groups; jokers fill what is still missing in the groups.
 */
export function matched(hand: Hand, rack: Bag): number {
  let inSingles = 0;
  let inAll = 0;
  for (let face = 0; face < FACE_COUNT; face++) {
    if (face === JOKER_INDEX) continue;
    inSingles += Math.min(rack[face]!, hand.singles[face]!);
    inAll += Math.min(rack[face]!, hand.singles[face]! + hand.groups[face]!);
  }
  return Math.min(inAll + rack[JOKER_INDEX]!, sizeOf(hand.groups) + inSingles);
}

/** How many tiles are still missing in `hand`: 14 − matched. */
export function tilesToGo(hand: Hand, rack: Bag): number {
  return 14 - matched(hand, rack);
}

/** A kernel that goes through the hands one by one. */
export function createReferenceKernel(card: CompiledCard): Kernel {
  return {
    card,
    toGo(rack) {
      return card.hands.reduce((least, hand) => Math.min(least, tilesToGo(hand, rack)), 14);
    },
    toGoByPattern(rack) {
      const result = new Uint8Array(card.patterns.length).fill(14);
      for (const hand of card.hands) {
        result[hand.pattern] = Math.min(result[hand.pattern]!, tilesToGo(hand, rack));
      }
      return result;
    },
    histogram(rack) {
      const result = new Uint32Array(15);
      for (const hand of card.hands) result[tilesToGo(hand, rack)]!++;
      return result;
    },
  };
}
