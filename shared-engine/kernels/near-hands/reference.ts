// The hands nearest to a rack and what each tile of the rack means to them: one pass over the card.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import { packCard, rowAt } from '../packed-card.ts';
import { inEachByte, largerWord, largestByte, matchedWord, reaches } from '../packed-words.ts';
import { createRunningSums } from '../running-sums.ts';

/** Hands up to this many tiles behind the nearest still count. */
const SLACK = 2;

/**
 * What a hand counts by how many tiles it is behind the nearest one: sixteen hands at one distance are worth one
 * that is a tile nearer. Whole numbers, so that sums do not depend on their order. Removals add distances.
 */
export const WEIGHTS: Float64Array = Float64Array.of(1_048_576, 65_536, 4_096, 256, 16, 1);

/** A rack and its near hands. */
export interface NearHands {
  /** Reads the rack at `racks[at..at + 36)` and finds its near hands. */
  read(racks: Uint8Array, at: number): void;
  /** Summed weight of the near hands. */
  total(): number;
  /** `total` if so many tiles of this face were gone. */
  totalWithout(face: number, copies: number): number;
  /** Tiles held now, by face. */
  readonly held: Uint8Array;
}

/** The near hands of a rack, numbered in the order of their lanes. */
interface NearList {
  count: number;
  /** Tiles that the nearest hand matched when the rack was read. */
  best: number;
  readonly lanes: Int32Array;
  /** What the tiles match in all places of each hand with the jokers, and what singles and pairs limit that to. */
  readonly all: Int32Array;
  readonly limit: Int32Array;
  /** What each hand of the card matches, four to a word. */
  readonly matched: Int32Array;
}

function createNearList(width: number): NearList {
  const byLane = () => new Int32Array(width * 4);
  return {
    count: 0,
    best: 0,
    lanes: byLane(),
    all: byLane(),
    limit: byLane(),
    matched: new Int32Array(width),
  };
}

export function createNearHands(card: CompiledCard): NearHands {
  const packed = packCard(card);
  const { width, rows, offsets } = packed;
  const bytes = new Uint8Array(rows.buffer, rows.byteOffset, rows.byteLength);
  const running = createRunningSums(packed);
  const held = new Uint8Array(FACE_COUNT);
  const list = createNearList(width);
  const { lanes, all, limit } = list;

  const byteRow = (face: number, copies: number): number => offsets[rowAt(face, copies)]! * 4;
  const weight = (i: number): number => WEIGHTS[list.best - Math.min(all[i]!, limit[i]!)] ?? 0;

  return {
    held,
    read(racks, at) {
      for (let face = 0; face < FACE_COUNT; face++) held[face] = racks[at + face]!;
      running.update((face) => offsets[rowAt(face, held[face]!)]!);
      findNear(list, running.sums, held[JOKER_INDEX]!);
    },
    total() {
      let sum = 0;
      for (let i = 0; i < list.count; i++) sum += weight(i);
      return sum;
    },
    totalWithout(face, copies) {
      const now = byteRow(face, held[face]!);
      const then = byteRow(face, held[face]! - copies);
      let sum = 0;
      for (let i = 0; i < list.count; i++) {
        const lane = lanes[i]!;
        const part = bytes[now + lane]! - bytes[then + lane]!;
        sum += WEIGHTS[list.best - Math.min(all[i]! - (part >> 4), limit[i]! - (part & 15))] ?? 0;
      }
      return sum;
    },
  };
}

/** Fills the list from the packed sums of a rack. */
function findNear(list: NearList, sums: Int32Array, jokers: number): void {
  const { lanes, all, limit, matched } = list;
  const free = inEachByte(jokers);
  let most = 0;
  for (let w = 0; w < sums.length; w++) {
    matched[w] = matchedWord(sums[w]!, free);
    most = largerWord(most, matched[w]!);
  }
  list.best = largestByte(most);
  const least = Math.max(1, list.best - SLACK);
  const bar = inEachByte(least);
  let count = 0;
  for (let w = 0; w < sums.length; w++) {
    const word = matched[w]!;
    if (!reaches(word, bar)) continue;
    for (let shift = 0; shift < 32; shift += 8) {
      if (((word >>> shift) & 255) < least) continue;
      lanes[count] = w * 4 + shift / 8;
      all[count] = ((sums[w]! >>> (shift + 4)) & 15) + jokers;
      limit[count++] = (sums[w]! >>> shift) & 15;
    }
  }
  list.count = count;
}
