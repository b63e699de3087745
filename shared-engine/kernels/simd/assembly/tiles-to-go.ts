// Tiles to go of one rack or many, by pattern, and how many hands are at each distance.
import { rowBytes, sumRows } from './card';
import { largest } from './packed-words';

/** Room for a row of tiles matched by hand. */
let matched: usize = 0;
let patternEnds: usize = 0;
let patterns: u32 = 0;
let hands: u32 = 0;

/** `ends` holds, pattern by pattern, the number of the first hand after it. */
export function setPatterns(room: usize, ends: usize, count: u32, allHands: u32): void {
  matched = room;
  patternEnds = ends;
  patterns = count;
  hands = allHands;
}

/** Tiles to go to the nearest hand, 0–14. */
export function toGo(rack: usize): u32 {
  return 14 - largest(sumRows(rack, 0, 0));
}

/** The same of `count` racks of 36 bytes, a byte each to `out`. */
export function toGoMany(racks: usize, count: u32, out: usize): void {
  for (let nth: u32 = 0; nth < count; nth++) {
    store<u8>(out + nth, <u8>toGo(racks + nth * 36));
  }
}

/** Tiles to go to the nearest hand of each pattern, a byte each; 14 for a pattern without hands. */
export function toGoByPattern(rack: usize, out: usize): void {
  sumRows(rack, 0, matched);
  let hand: u32 = 0;
  for (let pattern: u32 = 0; pattern < patterns; pattern++) {
    const end = load<u32>(patternEnds + pattern * 4);
    let most: u32 = 0;
    for (; hand < end; hand++) most = max<u32>(most, load<u8>(matched + hand));
    store<u8>(out + pattern, <u8>(14 - most));
  }
}

/** How many bytes of the row of tiles matched are `value`. */
function countOf(value: u32): u32 {
  const wanted = i8x16.splat(<i8>value);
  const end = matched + rowBytes();
  let sum = i32x4.splat(0);
  for (let at = matched; at < end; ) {
    // A counter of one byte holds 255 vectors at most.
    const stop = min<usize>(end, at + 240 * 16);
    let count = i8x16.splat(0);
    for (; at < stop; at += 64) {
      const first = i8x16.add(i8x16.eq(v128.load(at), wanted), i8x16.eq(v128.load(at, 16), wanted));
      const second = i8x16.add(i8x16.eq(v128.load(at, 32), wanted), i8x16.eq(v128.load(at, 48), wanted));
      count = i8x16.sub(count, i8x16.add(first, second));
    }
    sum = i32x4.add(sum, i32x4.extadd_pairwise_i16x8_u(i16x8.extadd_pairwise_i8x16_u(count)));
  }
  const pairs = i64x2.add(i64x2.extend_low_i32x4_u(sum), i64x2.extend_high_i32x4_u(sum));
  return <u32>(i64x2.extract_lane(pairs, 0) + i64x2.extract_lane(pairs, 1));
}

/** How many hands are at each distance 0–14, 15 words of 32 bits. */
export function histogram(rack: usize, out: usize): void {
  let value = <i32>largest(sumRows(rack, 0, matched));
  memory.fill(out, 0, 15 * 4);
  let left = hands;
  for (; value > 0 && left > 0; value--) {
    const count = countOf(value);
    store<u32>(out + (14 - value) * 4, count);
    left -= count;
  }
  // Lanes that hold no hand match nothing, so what is left over are the hands that match nothing.
  store<u32>(out, left, 14 * 4);
}
