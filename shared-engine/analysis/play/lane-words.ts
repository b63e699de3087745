// Arithmetic on four targets at a time, one a byte of a 32-bit word of packed sums (see `PackedCard`).

const LOW = 0x0f0f0f0f;
const TOP = 0x80808080 | 0;

/** One value in each of the four bytes; 0–127. */
export function inEachByte(value: number): number {
  return value * 0x01010101;
}

/**
 * Tiles matched by four targets: the smaller of (high nibble + free) and (low nibble), where `free` holds in each
 * byte the tiles that fit any group place. With the top bit lent to each byte of `b`, the difference keeps it
 * exactly where b is the larger.
 */
export function matchedWord(sums: number, free: number): number {
  const b = sums & LOW;
  const difference = ((b | TOP) - (((sums >>> 4) & LOW) + free)) | 0;
  const kept = difference & TOP;
  return (b - (difference & (kept - (kept >>> 7)))) | 0;
}

/** The larger of two values in each byte. */
export function largerWord(x: number, y: number): number {
  const difference = ((x | TOP) - y) | 0;
  const kept = difference & TOP;
  return (y + (difference & (kept - (kept >>> 7)))) | 0;
}

/** Whether any byte of `word` is as large as the byte of `bar` at its place. */
export function reaches(word: number, bar: number): boolean {
  return (((word | TOP) - bar) & TOP) !== 0;
}

export function largestByte(word: number): number {
  return Math.max(word & 255, (word >>> 8) & 255, (word >>> 16) & 255, word >>> 24);
}
