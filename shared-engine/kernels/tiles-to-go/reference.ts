// Tiles to go by its definition, one target at a time: the plain twin that every faster kernel is checked against.
import type { CompiledCard, Target } from '../../card/compiled.ts';
import { type Bag, sizeOf } from '../../rules/tiles/bag.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import type { Kernel } from './kernel.ts';

/**
 * Tiles of `rack` that fit into `target`, jokers included (0–14).
 *
 * A natural tile goes to a single or pair first, because a joker may not stand there; what is left goes to the
 * groups; jokers fill the group slots that are still open.
 */
export function matched(target: Target, rack: Bag): number {
  let inSingles = 0;
  let inAll = 0;
  for (let face = 0; face < FACE_COUNT; face++) {
    if (face === JOKER_INDEX) continue;
    inSingles += Math.min(rack[face]!, target.singles[face]!);
    inAll += Math.min(rack[face]!, target.singles[face]! + target.groups[face]!);
  }
  return Math.min(inAll + rack[JOKER_INDEX]!, sizeOf(target.groups) + inSingles);
}

/** How many tiles are still missing to `target`: 14 − matched. */
export function tilesToGo(target: Target, rack: Bag): number {
  return 14 - matched(target, rack);
}

/** A kernel that goes through the targets one by one. */
export function createPlainKernel(card: CompiledCard): Kernel {
  return {
    card,
    toGo(rack) {
      return card.targets.reduce((least, target) => Math.min(least, tilesToGo(target, rack)), 14);
    },
    toGoByLine(rack) {
      const result = new Uint8Array(card.lines.length).fill(14);
      for (const target of card.targets) {
        result[target.line] = Math.min(result[target.line]!, tilesToGo(target, rack));
      }
      return result;
    },
    histogram(rack) {
      const result = new Uint32Array(15);
      for (const target of card.targets) result[tilesToGo(target, rack)]!++;
      return result;
    },
  };
}
