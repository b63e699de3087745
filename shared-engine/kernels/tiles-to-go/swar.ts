// The kernel in plain TypeScript: four targets at a time in one 32-bit word.
import type { CompiledCard } from '../../card/compiled.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { packCard } from '../packed-card.ts';
import type { Kernel } from './kernel.ts';

const LOW = 0x0f0f0f0f;
const TOP = 0x80808080 | 0;
const ONES = 0x01010101;

/**
 * Tiles matched by four targets, one a byte: the smaller of (high nibble + jokers) and (low nibble).
 * With the top bit lent to each byte of `b`, the difference keeps it exactly where b ≥ a.
 */
function matchedWord(sums: number, jokers: number): number {
  const b = sums & LOW;
  const difference = ((b | TOP) - (((sums >>> 4) & LOW) + jokers)) | 0;
  const kept = difference & TOP;
  return (b - (difference & (kept - (kept >>> 7)))) | 0;
}

/** The larger of two values in each byte. */
function largerWord(x: number, y: number): number {
  const difference = ((x | TOP) - y) | 0;
  const kept = difference & TOP;
  return (y + (difference & (kept - (kept >>> 7)))) | 0;
}

function largestByte(word: number): number {
  return Math.max(word & 255, (word >>> 8) & 255, (word >>> 16) & 255, word >>> 24);
}

export function createKernel(card: CompiledCard): Kernel {
  const { width, rows, startRow, offsets, lineStarts, padding } = packCard(card);
  const sums = rows.slice(startRow, startRow + width);
  const held = new Int32Array(FACE_COUNT);
  const next = new Int32Array(FACE_COUNT);
  const gone = new Int32Array(FACE_COUNT);
  const came = new Int32Array(FACE_COUNT);
  const pairs = new Int32Array(256);
  const pairsAbove = new Int32Array(256);

  /** Brings `sums` from the rack asked about last to this one: by what differs, or anew where that is less. */
  function hold(rack: Bag): void {
    let changed = 0;
    let faces = 0;
    for (let face = 0; face < JOKER_INDEX; face++) {
      const row = offsets[face * 15 + Math.min(rack[face]!, 14)]!;
      const old = held[face]!;
      if (row !== old) {
        gone[changed] = old;
        came[changed++] = row;
        held[face] = row;
      }
      if (row !== 0) next[faces++] = row;
    }
    if (changed * 2 <= faces) step(changed);
    else rebuild(faces);
  }

  function step(changed: number): void {
    if (changed % 2 === 1) {
      gone[changed] = 0;
      came[changed] = 0;
    }
    for (let i = 0; i < changed; i += 2) {
      const out = gone[i]!;
      const out2 = gone[i + 1]!;
      const inn = came[i]!;
      const inn2 = came[i + 1]!;
      for (let w = 0; w < width; w++) {
        sums[w] = (sums[w]! + rows[inn + w]! - rows[out + w]! + rows[inn2 + w]! - rows[out2 + w]!) | 0;
      }
    }
  }

  function rebuild(faces: number): void {
    for (let pad = faces; pad < faces + 4 && pad < FACE_COUNT; pad++) next[pad] = 0;
    sums.set(rows.subarray(startRow, startRow + width));
    for (let i = 0; i < faces; i += 4) {
      const a = next[i]!;
      const b = next[i + 1]!;
      const c = next[i + 2]!;
      const d = next[i + 3]!;
      for (let w = 0; w < width; w++) {
        sums[w] = (sums[w]! + rows[a + w]! + rows[b + w]! + rows[c + w]! + rows[d + w]!) | 0;
      }
    }
  }

  return {
    card,
    toGo(rack) {
      hold(rack);
      const jokers = rack[JOKER_INDEX]! * ONES;
      let most = 0;
      for (let w = 0; w < width; w++) most = largerWord(most, matchedWord(sums[w]!, jokers));
      return 14 - largestByte(most);
    },
    toGoByLine(rack) {
      hold(rack);
      const jokers = rack[JOKER_INDEX]! * ONES;
      const result = new Uint8Array(lineStarts.length - 1);
      for (let line = 0; line < result.length; line++) {
        const end = lineStarts[line + 1]! / 4;
        let most = 0;
        for (let w = lineStarts[line]! / 4; w < end; w++)
          most = largerWord(most, matchedWord(sums[w]!, jokers));
        result[line] = 14 - largestByte(most);
      }
      return result;
    },
    histogram(rack) {
      hold(rack);
      const jokers = rack[JOKER_INDEX]! * ONES;
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
