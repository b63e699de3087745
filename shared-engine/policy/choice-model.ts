// How likely a seat is to pass these tiles from this rack: the belief's picture of the others.

import type { Uses } from '../kernels/near-hands/tile-value.ts';
import { FACE_COUNT, JOKER_INDEX } from '../rules/tiles/face.ts';
import { expOfMinus } from './exp.ts';

/** A pass is this often chosen by the usefulness of its tiles; otherwise every legal pass is as likely. */
export const BY_USE = 0.95;

/**
 * The share of its near targets that makes a tile e times less likely to be passed. Fitted to passes of the
 * product's own bots; see `npm run prove -- belief`.
 */
export const TEMPERATURE = 0.1;

const MOST = 3;

/**
 * Usefulness adds up over faces, so the sum over all passes of one size is a coefficient of a product of small
 * polynomials, one a face: exact, whatever the rack.
 */
export interface ChoiceModel {
  /** Reads the rack at `racks[at..at + 36)`; the questions below are about it. */
  read(racks: Uint8Array, at: number): void;
  /** Probability of a pass of so many tiles in all, given as counts by face at `pass[at..at + 36)`. */
  probability(pass: Uint8Array, at: number, size: number): number;
  /**
   * Draws a pass of `size` tiles that leaves the counts of `bound` alone, into `pass[at..at + 36)`, by usefulness
   * alone. `uniform()` gives a number in [0, 1). The probability of what was drawn among what could be.
   */
  draw(bound: Uint8Array, size: number, pass: Uint8Array, at: number, uniform: () => number): number;
}

export function createChoiceModel(uses: Uses, temperature: number = TEMPERATURE): ChoiceModel {
  const held = new Uint8Array(FACE_COUNT);
  /** Weight of passing 0–3 tiles of a face, at face × 4. */
  const weights = new Float64Array(FACE_COUNT * 4);
  const sums = new Float64Array(MOST + 1);
  const legal = new Float64Array(MOST + 1);
  const partial = new Float64Array((FACE_COUNT + 1) * (MOST + 1));

  return {
    read(racks, at) {
      uses.read(racks, at);
      const total = uses.weights[0]!;
      sums.fill(0);
      legal.fill(0);
      sums[0] = 1;
      legal[0] = 1;
      for (let face = 0; face < FACE_COUNT; face++) held[face] = racks[at + face]!;
      for (let face = 0; face < JOKER_INDEX; face++) {
        const most = Math.min(MOST, held[face]!);
        if (most === 0) continue;
        let use = 0;
        let last = 0;
        for (let copies = 1; copies <= most; copies++) {
          const before = use;
          // A third tile is taken to be of as much use as the second.
          use = copies > 2 ? use + last : total === 0 ? 0 : 1 - uses.weights[2 * face + copies]! / total;
          last = use - before;
          weights[face * 4 + copies] = expOfMinus(Math.min(100, use / temperature));
        }
        const one = weights[face * 4 + 1]!;
        const two = most > 1 ? weights[face * 4 + 2]! : 0;
        const three = most > 2 ? weights[face * 4 + 3]! : 0;
        sums[3] = sums[3]! + one * sums[2]! + two * sums[1]! + three;
        sums[2] = sums[2]! + one * sums[1]! + two;
        sums[1] = sums[1]! + one;
        legal[3] = legal[3]! + legal[2]! + (most > 1 ? legal[1]! : 0) + (most > 2 ? 1 : 0);
        legal[2] = legal[2]! + legal[1]! + (most > 1 ? 1 : 0);
        legal[1] = legal[1]! + 1;
      }
    },
    probability(pass, at, size) {
      let weight = 1;
      for (let face = 0; face < FACE_COUNT; face++) {
        const copies = pass[at + face]!;
        if (copies === 0) continue;
        if (face === JOKER_INDEX || copies > held[face]! || copies > MOST) return 0;
        weight *= weights[face * 4 + copies]!;
      }
      return (BY_USE * weight) / sums[size]! + (1 - BY_USE) / legal[size]!;
    },
    draw(bound, size, pass, at, uniform) {
      // partial[f] holds the coefficients of the faces below f.
      partial.fill(0, 0, MOST + 1);
      partial[0] = 1;
      for (let face = 0; face < JOKER_INDEX; face++) {
        const from = face * (MOST + 1);
        const most = Math.min(MOST, held[face]! - bound[face]!);
        for (let k = 0; k <= MOST; k++) {
          let sum = partial[from + k]!;
          for (let copies = 1; copies <= Math.min(most, k); copies++) {
            sum += partial[from + k - copies]! * weights[face * 4 + copies]!;
          }
          partial[from + MOST + 1 + k] = sum;
        }
      }
      const all = partial[JOKER_INDEX * (MOST + 1) + size]!;
      let left = size;
      let weight = 1;
      pass.fill(0, at, at + FACE_COUNT);
      if (all === 0) return 1;
      for (let face = JOKER_INDEX - 1; face >= 0 && left > 0; face--) {
        const from = face * (MOST + 1);
        const most = Math.min(MOST, held[face]! - bound[face]!, left);
        if (most <= 0) continue;
        let rest = uniform() * partial[from + MOST + 1 + left]! - partial[from + left]!;
        let copies = 0;
        while (rest >= 0 && copies < most) {
          copies++;
          rest -= partial[from + left - copies]! * weights[face * 4 + copies]!;
        }
        if (copies === 0) continue;
        // Rounding may leave the last choice with nothing below it to fill the rest.
        if (partial[from + left - copies] === 0) copies = Math.min(most, left);
        pass[at + face] = copies;
        weight *= weights[face * 4 + copies]!;
        left -= copies;
      }
      return weight / all;
    },
  };
}
