// Tiles to go in TypeScript alone: four hands at a time in one 32-bit word (SIMD within a register).
import type { CompiledCard } from '../../card/index.ts';
import { type Bag, JOKER_INDEX } from '../../rules/index.ts';
import { packCard, rowAt } from '../packed-card.ts';
import { inEachByte, largerWord, largestByte, matchedWord } from '../packed-words.ts';
import { createRunningSums } from '../running-sums.ts';
import type { Kernel } from './kernel.ts';

export function createSwarKernel(card: CompiledCard): Kernel {
  const packed = packCard(card);
  const { width, offsets, patternStarts, padding } = packed;
  const running = createRunningSums(packed);
  const { sums } = running;
  const pairs = new Int32Array(256);
  const pairsAbove = new Int32Array(256);

  /** Brings `sums` to this rack; its jokers, in each byte. */
  function read(rack: Bag): number {
    running.update((face) => offsets[rowAt(face, rack[face]!)]!);
    return inEachByte(rack[JOKER_INDEX]!);
  }

  /** The fewest tiles to go among the hands of these words. */
  function leastToGo(from: number, to: number, jokers: number): number {
    let most = 0;
    for (let w = from; w < to; w++) most = largerWord(most, matchedWord(sums[w]!, jokers));
    return 14 - largestByte(most);
  }

  return {
    card,
    toGo(rack) {
      return leastToGo(0, width, read(rack));
    },
    toGoByPattern(rack) {
      const jokers = read(rack);
      const result = new Uint8Array(patternStarts.length - 1);
      for (let pattern = 0; pattern < result.length; pattern++) {
        result[pattern] = leastToGo(patternStarts[pattern]! / 4, patternStarts[pattern + 1]! / 4, jokers);
      }
      return result;
    },
    histogram(rack) {
      const jokers = read(rack);
      // Two bytes of at most 14 fold into one index, so that half as many counters are touched.
      pairs.fill(0);
      pairsAbove.fill(0);
      for (let w = 0; w < width; w++) {
        const word = matchedWord(sums[w]!, jokers);
        const folded = word | (word >>> 4);
        pairs[folded & 255]!++;
        pairsAbove[(folded >>> 16) & 255]!++;
      }
      const result = new Uint32Array(15);
      for (let x = 0; x < 15; x++) {
        for (let y = 0; y < 15; y++) {
          const count = pairs[x * 16 + y]! + pairsAbove[x * 16 + y]!;
          result[14 - x]! += count;
          result[14 - y]! += count;
        }
      }
      result[14]! -= padding;
      return result;
    },
  };
}
