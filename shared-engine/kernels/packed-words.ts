// Arithmetic on four hands at a time, one a byte of a 32-bit word of packed sums (see `PackedCard`).

const LOW_NIBBLES = 0x0f0f0f0f;
const TOP_BITS = 0x80808080 | 0;

/** One value in each of the four bytes; 0–127. */
export function inEachByte(value: number): number {
  return value * 0x01010101;
}

/**
 * Tiles matched by four hands: the smaller of (high nibble + free) and (low nibble), where each byte of `free` holds
 * the tiles that fit any group. The top bit lent to each byte of `limit` comes back exactly where limit ≥ all.
 */
export function matchedWord(sums: number, free: number): number {
  const limit = sums & LOW_NIBBLES;
  const difference = ((limit | TOP_BITS) - (((sums >>> 4) & LOW_NIBBLES) + free)) | 0;
  const kept = difference & TOP_BITS;
  return (limit - (difference & (kept - (kept >>> 7)))) | 0;
}

/** The larger of two values in each byte. */
export function largerWord(x: number, y: number): number {
  const difference = ((x | TOP_BITS) - y) | 0;
  const kept = difference & TOP_BITS;
  return (y + (difference & (kept - (kept >>> 7)))) | 0;
}

/** Whether any byte of `word` is at least as large as the byte of `bar` at its place. */
export function reaches(word: number, bar: number): boolean {
  return (((word | TOP_BITS) - bar) & TOP_BITS) !== 0;
}

export function largestByte(word: number): number {
  return Math.max(word & 255, (word >>> 8) & 255, (word >>> 16) & 255, word >>> 24);
}
