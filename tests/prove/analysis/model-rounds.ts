// Rounds whose seats pass exactly as belief assumes: its probabilities must then be right, not only useful.
import type { Situation } from '../../../shared-engine/analysis/belief/situation.ts';
import { createRng, type Rng } from '../../../shared-engine/kernels/philox.ts';
import { createTileValues } from '../../../shared-engine/kernels/tile-value/simd.ts';
import { BY_VALUE, createChoiceModel } from '../../../shared-engine/policy/choice-model.ts';
import { legalPasses } from '../../../shared-engine/policy/pass-selection.ts';
import { STANDARD_TERMS } from '../../../shared-engine/rules/exchange/terms.ts';
import { FULL_SET, facesOf } from '../../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT, faceIndex } from '../../../shared-engine/rules/tiles/face.ts';
import { card, simd } from './choices.ts';

/** Seats to the right that tiles go: right, across, left, left, across, right. */
const TOWARD = [1, 2, 3, 3, 2, 1] as const;

const model = createChoiceModel(createTileValues(simd, card));
const NOTHING = new Uint8Array(FACE_COUNT);

export interface ModelRound {
  readonly situation: Situation;
  /** The true racks of the four seats, 36 counts each. */
  readonly truth: Uint8Array;
}

/** The view of seat 0 after so many moves, and the truth. */
export function modelRound(seed: number, n: number, moves: number): ModelRound {
  const rng = createRng(seed, n);
  const racks = dealt(rng);
  const start = [...racks.subarray(0, FACE_COUNT)];
  const past = TOWARD.slice(0, moves).map((toward) => {
    const passes = [0, 1, 2, 3].map((seat) => passFrom(racks, seat * FACE_COUNT, rng));
    for (const [seat, pass] of passes.entries()) {
      for (const face of pass) {
        racks[seat * FACE_COUNT + face]!--;
        racks[((seat + toward) % 4) * FACE_COUNT + face]!++;
      }
    }
    const received = passes[(4 - toward) % 4]!;
    return { toward, gave: passes[0]!, received, blind: [0, 0, 0, 0] as const, forwarded: 0 };
  });
  const rack = [...racks.subarray(0, FACE_COUNT)];
  return {
    situation: {
      seat: 0,
      dealer: 0,
      terms: STANDARD_TERMS.friends,
      step: 0,
      agreed: [0, 0, 0, 0],
      start,
      rack,
      past,
    },
    truth: racks,
  };
}

function dealt(rng: Rng): Uint8Array {
  const tiles = facesOf(FULL_SET).map(faceIndex);
  const racks = new Uint8Array(4 * FACE_COUNT);
  for (let n = 0; n < 53; n++) {
    const seat = n === 52 ? 0 : n % 4;
    racks[seat * FACE_COUNT + tiles.splice(rng.below(tiles.length), 1)[0]!]!++;
  }
  return racks;
}

function passFrom(racks: Uint8Array, at: number, rng: Rng): readonly number[] {
  if (rng.uniform() >= BY_VALUE) return anyPass(racks, at, rng);
  const pass = new Uint8Array(FACE_COUNT);
  model.read(racks, at);
  model.draw(NOTHING, 3, pass, rng.uniform);
  return [...pass].flatMap((count, face) => new Array<number>(count).fill(face));
}

/** Any legal pass as likely. */
function anyPass(racks: Uint8Array, at: number, rng: Rng): readonly number[] {
  const passes = legalPasses(racks.subarray(at, at + FACE_COUNT), 3);
  return passes[rng.below(passes.length)]!;
}
