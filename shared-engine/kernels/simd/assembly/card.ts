// The card in memory, one byte a hand and one row a face and count; a rack is the sum of a few rows.
import { matchedOf } from './packed-words';

/** Faces but the joker. */
const FACES: usize = 35;

/** The most a face counts: no hand wants more than a whole rack of it. */
const MOST: u32 = 14;

/** Addresses of the rows that make up the rack read last. */
const parts: usize = memory.data(40 * 4, 16);

let width: usize = 0;
let start: usize = 0;
let zero: usize = 0;
let rowOf: usize = 0;

/**
 * `bytes` is the length of a row, a multiple of 64; `startRow` the row that every sum begins with; `zeroRow` a row
 * of zeros; `rows` a table of row addresses by face × 16 + count, 0 where the tiles fit nowhere.
 */
export function setCard(bytes: usize, startRow: usize, zeroRow: usize, rows: usize): void {
  width = bytes;
  start = startRow;
  zero = zeroRow;
  rowOf = rows;
}

/** Bytes a row. */
export function rowBytes(): usize {
  return width;
}

/** Jokers of a rack, as far as they matter. */
export function jokersOf(rack: usize): u32 {
  return min<u32>(load<u8>(rack, 35), MOST);
}

/** Finds the rows of a rack of 36 counts; their number, made even. */
function gatherRows(rack: usize): usize {
  let count: usize = 0;
  // Without a branch, because which faces are held is unpredictable.
  for (let face: usize = 0; face < FACES; face++) {
    const row = load<u32>(rowOf + ((face << 4) + <usize>min<u32>(load<u8>(rack + face), MOST)) * 4);
    store<u32>(parts + count * 4, row);
    count += <usize>(row !== 0);
  }
  store<u32>(parts + count * 4, <u32>zero);
  return (count + 1) & ~1;
}

/**
 * Adds up the rows of a rack. Writes sums to `sums` and tiles matched to `matched`, a row each, where these are not
 * 0; the most that any hand matches, in one of 16 bytes.
 */
export function sumRows(rack: usize, sums: usize, matched: usize): v128 {
  const end = parts + gatherRows(rack) * 4;
  const jokers = i8x16.splat(<i8>jokersOf(rack));
  let most = i8x16.splat(0);
  for (let at: usize = 0; at < width; at += 64) {
    let a = v128.load(start + at);
    let b = v128.load(start + at, 16);
    let c = v128.load(start + at, 32);
    let d = v128.load(start + at, 48);
    for (let part = parts; part < end; part += 8) {
      const row = load<u32>(part) + at;
      const other = load<u32>(part, 4) + at;
      a = i8x16.add(a, i8x16.add(v128.load(row), v128.load(other)));
      b = i8x16.add(b, i8x16.add(v128.load(row, 16), v128.load(other, 16)));
      c = i8x16.add(c, i8x16.add(v128.load(row, 32), v128.load(other, 32)));
      d = i8x16.add(d, i8x16.add(v128.load(row, 48), v128.load(other, 48)));
    }
    if (sums !== 0) storeFour(sums + at, a, b, c, d);
    a = matchedOf(a, jokers);
    b = matchedOf(b, jokers);
    c = matchedOf(c, jokers);
    d = matchedOf(d, jokers);
    if (matched !== 0) storeFour(matched + at, a, b, c, d);
    most = i8x16.max_u(most, i8x16.max_u(i8x16.max_u(a, b), i8x16.max_u(c, d)));
  }
  return most;
}

function storeFour(at: usize, a: v128, b: v128, c: v128, d: v128): void {
  v128.store(at, a);
  v128.store(at, b, 16);
  v128.store(at, c, 32);
  v128.store(at, d, 48);
}
