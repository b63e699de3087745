// The targets nearest to a rack and what each tile of the rack means to them: one pass over the card.
import type { CompiledCard } from '../../card/compiled.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { packCard } from '../packed-card.ts';

const LOW = 0x0f0f0f0f;
const TOP = 0x80808080 | 0;
const ONES = 0x01010101;

/** Targets up to this many tiles behind the nearest still count. */
export const SLACK = 2;

/**
 * What a target counts that is so many tiles behind the nearest one: sixteen targets at one distance are worth one
 * that is a tile nearer. Whole numbers, so that sums do not depend on their order. Three removals add three.
 */
export const WEIGHTS: Float64Array = Float64Array.of(1_048_576, 65_536, 4_096, 256, 16, 1);

function matchedWord(sums: number, jokers: number): number {
  const b = sums & LOW;
  const difference = ((b | TOP) - (((sums >>> 4) & LOW) + jokers)) | 0;
  const kept = difference & TOP;
  return (b - (difference & (kept - (kept >>> 7)))) | 0;
}

function largerWord(x: number, y: number): number {
  const difference = ((x | TOP) - y) | 0;
  const kept = difference & TOP;
  return (y + (difference & (kept - (kept >>> 7)))) | 0;
}

/**
 * A rack and its near targets while tiles are taken away one at a time. For target i `all[i]` is what the tiles
 * match in all its places with the jokers, `most[i]` the limit that singles and pairs set; it matches the smaller.
 */
export interface Near {
  /** Reads the rack at `racks[at..at + 36)` and finds its near targets. */
  read(racks: Uint8Array, at: number): void;
  /** Tiles matched by the nearest target when the rack was read. */
  best(): number;
  /** Summed weight of the near targets as the rack is now. */
  total(): number;
  /** The part of `total` whose targets move one tile away when a tile of this face goes; 0 where none is held. */
  loss(face: number): number;
  /** `total` if so many tiles of this face were gone. */
  totalWithout(face: number, copies: number): number;
  /** Takes one tile away. */
  take(face: number): void;
  /** Tiles held now, by face. */
  readonly held: Uint8Array;
}

export function createNear(card: CompiledCard): Near {
  const { width, rows, startRow, offsets } = packCard(card);
  const bytes = new Uint8Array(rows.buffer, rows.byteOffset, rows.byteLength);
  const sums = new Int32Array(width);
  const matched = new Int32Array(width);
  const lanes = new Int32Array(width * 4);
  const all = new Int32Array(width * 4);
  const most = new Int32Array(width * 4);
  const held = new Uint8Array(FACE_COUNT);
  let count = 0;
  let best = 0;

  const byteRow = (face: number, copies: number): number => offsets[face * 15 + Math.min(copies, 14)]! * 4;
  const weight = (i: number): number => WEIGHTS[best - Math.min(all[i]!, most[i]!)] ?? 0;

  function addUp(): void {
    for (let w = 0; w < width; w++) sums[w] = rows[startRow + w]!;
    for (let face = 0; face < JOKER_INDEX; face++) {
      const row = held[face] === 0 ? 0 : offsets[face * 15 + Math.min(held[face]!, 14)]!;
      if (row === 0) continue;
      for (let w = 0; w < width; w++) sums[w] = (sums[w]! + rows[row + w]!) | 0;
    }
  }

  return {
    held,
    best: () => best,
    read(racks, at) {
      for (let face = 0; face < FACE_COUNT; face++) held[face] = racks[at + face]!;
      addUp();
      const jokers = held[JOKER_INDEX]!;
      let word = 0;
      for (let w = 0; w < width; w++) {
        matched[w] = matchedWord(sums[w]!, jokers * ONES);
        word = largerWord(word, matched[w]!);
      }
      best = Math.max(word & 255, (word >>> 8) & 255, (word >>> 16) & 255, word >>> 24);
      const least = Math.max(1, best - SLACK);
      const bar = least * ONES;
      count = 0;
      for (let w = 0; w < width; w++) {
        const four = matched[w]!;
        if ((((four | TOP) - bar) & TOP) === 0) continue;
        for (let shift = 0; shift < 32; shift += 8) {
          if (((four >>> shift) & 255) < least) continue;
          lanes[count] = w * 4 + shift / 8;
          all[count] = ((sums[w]! >>> (shift + 4)) & 15) + jokers;
          most[count++] = (sums[w]! >>> shift) & 15;
        }
      }
    },
    total() {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += weight(i);
      return sum;
    },
    loss(face) {
      if (held[face] === 0) return 0;
      const now = byteRow(face, held[face]!);
      const then = byteRow(face, held[face]! - 1);
      if (now === then) return 0;
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const lane = lanes[i]!;
        const part = bytes[now + lane]! - bytes[then + lane]!;
        // 0x11: fits a single or pair, so both limits fall; 0x10: fits a group, which matters where that limit binds.
        if (part === 0x11 || (part === 0x10 && all[i]! <= most[i]!)) sum += weight(i);
      }
      return sum;
    },
    totalWithout(face, copies) {
      const now = byteRow(face, held[face]!);
      const then = byteRow(face, held[face]! - copies);
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const lane = lanes[i]!;
        const part = bytes[now + lane]! - bytes[then + lane]!;
        sum += WEIGHTS[best - Math.min(all[i]! - (part >> 4), most[i]! - (part & 15))] ?? 0;
      }
      return sum;
    },
    take(face) {
      const now = byteRow(face, held[face]!);
      const then = byteRow(face, held[face]! - 1);
      held[face]!--;
      if (now === then) return;
      for (let i = 0; i < count; i++) {
        const lane = lanes[i]!;
        const part = bytes[now + lane]! - bytes[then + lane]!;
        all[i]! -= part >> 4;
        most[i]! -= part & 15;
      }
    },
  };
}
