// The card in memory, one byte a target and one row a (face, count); a rack is the sum of a few rows.

/** Faces but the joker. */
const FACES: usize = 35;

/** The most a face counts: no target wants more than a whole rack of it. */
const MOST: u32 = 14;

/** Addresses of the rows that make up the rack looked at last. */
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
export function gather(rack: usize): usize {
  let count: usize = 0;
  // Without a branch: which faces are held is anybody's guess.
  for (let face: usize = 0; face < FACES; face++) {
    const row = load<u32>(rowOf + ((face << 4) + <usize>min<u32>(load<u8>(rack + face), MOST)) * 4);
    store<u32>(parts + count * 4, row);
    count += <usize>(row !== 0);
  }
  store<u32>(parts + count * 4, <u32>zero);
  return (count + 1) & ~1;
}

/** Tiles matched by 16 targets: the smaller of (high nibble + jokers) and (low nibble). */
function matchedOf(sums: v128, jokers: v128): v128 {
  const low = i8x16.splat(0x0f);
  return i8x16.min_u(i8x16.add(v128.and(i16x8.shr_u(sums, 4), low), jokers), v128.and(sums, low));
}

/**
 * Adds `count` gathered rows up. Writes sums to `sums` and tiles matched to `matched`, a row each, where these are
 * not 0; the most that any target matches, in one of 16 bytes.
 */
export function addUp(count: usize, jokerCount: u32, sums: usize, matched: usize): v128 {
  const jokers = i8x16.splat(<i8>jokerCount);
  const end = parts + count * 4;
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
    if (sums !== 0) {
      v128.store(sums + at, a);
      v128.store(sums + at, b, 16);
      v128.store(sums + at, c, 32);
      v128.store(sums + at, d, 48);
    }
    a = matchedOf(a, jokers);
    b = matchedOf(b, jokers);
    c = matchedOf(c, jokers);
    d = matchedOf(d, jokers);
    if (matched !== 0) {
      v128.store(matched + at, a);
      v128.store(matched + at, b, 16);
      v128.store(matched + at, c, 32);
      v128.store(matched + at, d, 48);
    }
    most = i8x16.max_u(most, i8x16.max_u(i8x16.max_u(a, b), i8x16.max_u(c, d)));
  }
  return most;
}

/** The largest of 16 bytes. */
export function largest(bytes: v128): u32 {
  let most = i8x16.max_u(
    bytes,
    i8x16.shuffle(bytes, bytes, 8, 9, 10, 11, 12, 13, 14, 15, 0, 1, 2, 3, 4, 5, 6, 7),
  );
  most = i8x16.max_u(most, i8x16.shuffle(most, most, 4, 5, 6, 7, 0, 1, 2, 3, 4, 5, 6, 7, 0, 1, 2, 3));
  const word = i32x4.extract_lane(most, 0);
  const upper = max<u32>((word >>> 24) & 0xff, (word >>> 16) & 0xff);
  return max<u32>(upper, max<u32>((word >>> 8) & 0xff, word & 0xff));
}
