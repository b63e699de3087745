// Arithmetic on 16 hands at a time, one a byte of a vector of packed sums: what `kernels/packed-words.ts` does with four.

/** Tiles that the rack has for any place of a hand: the high nibble and the jokers. */
export function allOf(sums: v128, jokers: v128): v128 {
  return i8x16.add(v128.and(i16x8.shr_u(sums, 4), i8x16.splat(0x0f)), jokers);
}

/** Tiles matched: the smaller of all and the low nibble. */
export function matchedOf(sums: v128, jokers: v128): v128 {
  return i8x16.min_u(allOf(sums, jokers), v128.and(sums, i8x16.splat(0x0f)));
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
