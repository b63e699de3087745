// How many racks are of a kind, counted by generating functions: coefficients of polynomials, whole numbers throughout.

/** Coefficients by number of tiles. */
type Ways = readonly bigint[];

/** Ways to hold 0 to 4 of the four tiles of one face. */
const ONE_FACE: Ways = [1n, 4n, 6n, 4n, 1n];
/** Honors, flowers and jokers: 7 × 4 + 8 + 8 tiles. */
const OTHER_TILES = 44;

function times(a: Ways, b: Ways, most: number): Ways {
  const product = new Array<bigint>(Math.min(most, a.length + b.length - 2) + 1).fill(0n);
  for (const [i, x] of a.entries()) {
    for (const [j, y] of b.entries()) if (i + j <= most) product[i + j]! += x * y;
  }
  return product;
}

/** C(n, k) for k = 0…most. */
export function binomials(n: number, most: number): Ways {
  const row = [1n];
  for (let k = 1; k <= most; k++) row.push((row[k - 1]! * BigInt(n - k + 1)) / BigInt(k));
  return row;
}

/** How many sets of `size` of the 152 tiles hold no row of more than `longest` neighbors in one suit. */
export function racksWithRowUpTo(longest: number, size: number): bigint {
  let suit: bigint[] = new Array<bigint>(size + 1).fill(0n);
  for (let held = 0; held < 512; held++) {
    const rows = held.toString(2).split('0');
    if (rows.some((row) => row.length > longest)) continue;
    let ways: Ways = [1n];
    for (const bit of held.toString(2)) if (bit === '1') ways = times(ways, [0n, 4n, 6n, 4n, 1n], size);
    suit = suit.map((count, tiles) => count + (ways[tiles] ?? 0n));
  }
  const numbered = times(times(suit, suit, size), suit, size);
  return times(numbered, binomials(OTHER_TILES, size), size)[size]!;
}

/** How many sets of `size` of the 152 tiles hold at most `most` tiles of any number that is held in two suits. */
export function racksWithLikeUpTo(most: number, size: number): bigint {
  const number = new Array<bigint>(13).fill(0n);
  for (let bam = 0; bam <= 4; bam++) {
    for (let crak = 0; crak <= 4; crak++) {
      for (let dot = 0; dot <= 4; dot++) {
        const tiles = bam + crak + dot;
        const suits = [bam, crak, dot].filter((count) => count > 0).length;
        if (suits < 2 || tiles <= most) number[tiles]! += ONE_FACE[bam]! * ONE_FACE[crak]! * ONE_FACE[dot]!;
      }
    }
  }
  let ways: Ways = binomials(OTHER_TILES, size);
  for (let n = 0; n < 9; n++) ways = times(ways, number, size);
  return ways[size]!;
}
