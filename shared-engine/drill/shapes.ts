// The shapes of racks, counted exactly: how many jokers, flowers and faces held once to four times, in how many ways.

/** What a rack is drawn from; the whole set, unless a proof wants one small enough to write down every rack. */
export interface Stock {
  /** Indexes of the faces that are neither flower nor joker; the set holds four tiles of each. */
  readonly plain: readonly number[];
  readonly flowers: number;
  readonly jokers: number;
}

export const WHOLE_SET: Stock = {
  plain: Array.from({ length: 34 }, (_, face) => face),
  flowers: 8,
  jokers: 8,
};

export interface Shape {
  readonly jokers: number;
  readonly flowers: number;
  /** How many plain faces are held exactly once, twice, three and four times. */
  readonly alike: readonly [number, number, number, number];
  /** Faces held at least two, three and four times, flowers among them. */
  readonly pairs: number;
  readonly pungs: number;
  readonly kongs: number;
  /** How many sets of physical tiles are racks of this shape. */
  readonly ways: bigint;
}

/** C(n, k), 0 for k > n. */
export function binomial(n: number, k: number): bigint {
  let result = 1n;
  for (let i = 1; i <= k; i++) result = (result * BigInt(n - k + i)) / BigInt(i);
  return k > n ? 0n : result;
}

const ofWholeSet = new Map<number, readonly Shape[]>();

/** Every shape of a rack of `size` tiles. Their ways add up to C(tiles in the stock, size). */
export function shapesOf(size: number, stock: Stock = WHOLE_SET): readonly Shape[] {
  if (stock !== WHOLE_SET) return counted(size, stock);
  // A drill asks for the same two sizes again and again.
  const shapes = ofWholeSet.get(size) ?? counted(size, stock);
  ofWholeSet.set(size, shapes);
  return shapes;
}

function counted(size: number, stock: Stock): readonly Shape[] {
  const shapes: Shape[] = [];
  for (let jokers = 0; jokers <= Math.min(stock.jokers, size); jokers++) {
    for (let flowers = 0; flowers <= Math.min(stock.flowers, size - jokers); flowers++) {
      const apart = binomial(stock.jokers, jokers) * binomial(stock.flowers, flowers);
      for (const alike of multiplicities(size - jokers - flowers, stock.plain.length)) {
        const [, twos, threes, fours] = alike;
        shapes.push({
          jokers,
          flowers,
          alike,
          pairs: twos + threes + fours + Number(flowers >= 2),
          pungs: threes + fours + Number(flowers >= 3),
          kongs: fours + Number(flowers >= 4),
          ways: apart * waysOf(alike, stock.plain.length),
        });
      }
    }
  }
  return shapes;
}

/** Every way to make `tiles` out of faces held one to four times, of which there are `faces`. */
function multiplicities(tiles: number, faces: number): Shape['alike'][] {
  const result: Shape['alike'][] = [];
  for (let fours = 0; fours * 4 <= tiles; fours++) {
    for (let threes = 0; fours * 4 + threes * 3 <= tiles; threes++) {
      for (let twos = 0; fours * 4 + threes * 3 + twos * 2 <= tiles; twos++) {
        const ones = tiles - fours * 4 - threes * 3 - twos * 2;
        if (ones + twos + threes + fours <= faces) result.push([ones, twos, threes, fours]);
      }
    }
  }
  return result;
}

/** Which faces are held how often, times which of its four tiles each face is held with: 4, 6, 4 and 1 ways. */
function waysOf([ones, twos, threes, fours]: Shape['alike'], faces: number): bigint {
  const which =
    binomial(faces, fours) *
    binomial(faces - fours, threes) *
    binomial(faces - fours - threes, twos) *
    binomial(faces - fours - threes - twos, ones);
  return which * power(4n, ones + threes) * power(6n, twos);
}

function power(base: bigint, times: number): bigint {
  let result = 1n;
  for (let n = 0; n < times; n++) result *= base;
  return result;
}
