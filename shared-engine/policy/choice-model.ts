// How likely a seat is to pass these tiles from this rack.
import { expMinus, type TileValues } from '../kernels/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../rules/index.ts';

/** A pass is chosen by the value of its tiles this often; otherwise every legal pass is as likely. */
export const BY_VALUE = 0.95;

/**
 * The share of the near hands' weight that makes a tile e times less likely to be passed: that of a typical bot, our
 * guess at a club player. Of 350 passes of each style, a typical one is then likelier by 1.2 nats than any legal pass, a
 * strong one by 2.7, a casual one by 0.4. With 0.1 a strong one would be likelier by 3.5, but a typical one by 0.7 only,
 * and to believe that of casual players would be worse than to believe nothing (−0.5).
 */
const TEMPERATURE = 0.25;

const MAX_COPIES = 3;
/** Weights of one face, and coefficients of one polynomial. */
const STRIDE = MAX_COPIES + 1;

/**
 * Values add up over faces, so the sum over all passes of one size is a coefficient of a product of small
 * polynomials, one a face: exact, whatever the rack.
 */
export interface ChoiceModel {
  /** Reads the rack at `racks[at..at + 36)`, which the functions below are about. */
  read(racks: Uint8Array, at: number): void;
  /** Probability of a pass of so many tiles in all, given as counts by face at `pass[at..at + 36)`. */
  probability(pass: Uint8Array, at: number, size: number): number;
  /**
   * Draws a pass of `size` tiles that leaves the counts of `fixed` alone, into the 36 places of `pass`, by value alone.
   * `uniform()` gives a number in [0, 1). The probability of what was drawn among what could be drawn.
   */
  draw(fixed: Uint8Array, size: number, pass: Uint8Array, uniform: () => number): number;
}

export function createChoiceModel(tileValues: TileValues, temperature: number = TEMPERATURE): ChoiceModel {
  const rack = createWeightedRack(tileValues, temperature);
  const { held, weights, sums, legal } = rack;
  const partial = new Float64Array((FACE_COUNT + 1) * STRIDE);
  return {
    read: rack.read,
    probability(pass, at, size) {
      let weight = 1;
      for (let face = 0; face < FACE_COUNT; face++) {
        const copies = pass[at + face]!;
        if (copies === 0) continue;
        if (face === JOKER_INDEX || copies > held[face]! || copies > MAX_COPIES) return 0;
        weight *= weights[face * STRIDE + copies]!;
      }
      return (BY_VALUE * weight) / sums[size]! + (1 - BY_VALUE) / legal[size]!;
    },
    draw(fixed, size, pass, uniform) {
      fillPartial(partial, rack, fixed);
      const all = partial[JOKER_INDEX * STRIDE + size]!;
      let left = size;
      let weight = 1;
      pass.fill(0);
      if (all === 0) return 1;
      for (let face = JOKER_INDEX - 1; face >= 0 && left > 0; face--) {
        const from = face * STRIDE;
        const most = Math.min(MAX_COPIES, held[face]! - fixed[face]!, left);
        if (most <= 0) continue;
        let rest = uniform() * partial[from + STRIDE + left]! - partial[from + left]!;
        let copies = 0;
        while (rest >= 0 && copies < most) {
          copies++;
          rest -= partial[from + left - copies]! * weights[face * STRIDE + copies]!;
        }
        if (copies === 0) continue;
        // Rounding may leave the last face with none below it that could fill the pass.
        if (partial[from + left - copies] === 0) copies = Math.min(most, left);
        pass[face] = copies;
        weight *= weights[face * STRIDE + copies]!;
        left -= copies;
      }
      return weight / all;
    },
  };
}

interface WeightedRack {
  readonly held: Uint8Array;
  /** Weight of passing 0–3 tiles of a face, at face × 4. */
  readonly weights: Float64Array;
  /** Summed weight of all passes by their size, and their number. */
  readonly sums: Float64Array;
  readonly legal: Float64Array;
  read(racks: Uint8Array, at: number): void;
}

function createWeightedRack(tileValues: TileValues, temperature: number): WeightedRack {
  const held = new Uint8Array(FACE_COUNT);
  const weights = new Float64Array(FACE_COUNT * STRIDE);
  const sums = new Float64Array(STRIDE);
  const legal = new Float64Array(STRIDE);

  function weighFace(face: number, most: number): void {
    const total = tileValues.weights[0]!;
    let value = 0;
    let last = 0;
    for (let copies = 1; copies <= most; copies++) {
      const before = value;
      // A third tile is taken to be worth as much as the second.
      if (copies > 2) value += last;
      else value = total === 0 ? 0 : 1 - tileValues.weights[2 * face + copies]! / total;
      last = value - before;
      weights[face * STRIDE + copies] = expMinus(Math.min(100, value / temperature));
    }
  }

  function multiply(face: number, most: number): void {
    const one = weights[face * STRIDE + 1]!;
    const two = most > 1 ? weights[face * STRIDE + 2]! : 0;
    const three = most > 2 ? weights[face * STRIDE + 3]! : 0;
    sums[3] = sums[3]! + one * sums[2]! + two * sums[1]! + three;
    sums[2] = sums[2]! + one * sums[1]! + two;
    sums[1] = sums[1]! + one;
    legal[3] = legal[3]! + legal[2]! + (most > 1 ? legal[1]! : 0) + (most > 2 ? 1 : 0);
    legal[2] = legal[2]! + legal[1]! + (most > 1 ? 1 : 0);
    legal[1] = legal[1]! + 1;
  }

  return {
    held,
    weights,
    sums,
    legal,
    read(racks, at) {
      tileValues.read(racks, at);
      sums.fill(0);
      legal.fill(0);
      sums[0] = 1;
      legal[0] = 1;
      for (let face = 0; face < FACE_COUNT; face++) held[face] = racks[at + face]!;
      for (let face = 0; face < JOKER_INDEX; face++) {
        const most = Math.min(MAX_COPIES, held[face]!);
        if (most === 0) continue;
        weighFace(face, most);
        multiply(face, most);
      }
    },
  };
}

/** At face × 4 the coefficients of the faces below it, without the tiles of `fixed`. */
function fillPartial(partial: Float64Array, { held, weights }: WeightedRack, fixed: Uint8Array): void {
  partial.fill(0, 0, STRIDE);
  partial[0] = 1;
  for (let face = 0; face < JOKER_INDEX; face++) {
    const from = face * STRIDE;
    const most = Math.min(MAX_COPIES, held[face]! - fixed[face]!);
    for (let k = 0; k <= MAX_COPIES; k++) {
      let sum = partial[from + k]!;
      for (let copies = 1; copies <= Math.min(most, k); copies++) {
        sum += partial[from + k - copies]! * weights[face * STRIDE + copies]!;
      }
      partial[from + STRIDE + k] = sum;
    }
  }
}
