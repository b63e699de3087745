// Rounds whose seats pass exactly as the belief supposes: what it says must then be right, not only useful.
import {
  createChoiceModel,
  createDraws,
  createUses,
  type Draws,
  FACE_COUNT,
  FULL_SET,
  faceIndex,
  facesOf,
  JOKER_INDEX,
  type Situation,
} from '../../../shared-engine/index.ts';
import { card, vectors } from './choices.ts';

/** Seats to the right that tiles go: right, across, left, left, across, right. */
const TOWARD = [1, 2, 3, 3, 2, 1] as const;
const BY_USE = 0.95;

const model = createChoiceModel(createUses(vectors, card));
const NOTHING = new Uint8Array(FACE_COUNT);

export interface ModelRound {
  readonly situation: Situation;
  /** The true racks of the four seats, 36 counts each. */
  readonly truth: Uint8Array;
}

/** The view of seat 0 after so many moves, and the truth. */
export function modelRound(seed: number, n: number, moves: number): ModelRound {
  const draws = createDraws(seed, n);
  const racks = dealt(draws);
  const start = [...racks.subarray(0, FACE_COUNT)];
  const past = TOWARD.slice(0, moves).map((toward) => {
    const passes = [0, 1, 2, 3].map((seat) => passFrom(racks, seat * FACE_COUNT, draws));
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
    situation: { seat: 0, dealer: 0, step: 0, agreed: [0, 0, 0, 0], start, rack, past },
    truth: racks,
  };
}

function dealt(draws: Draws): Uint8Array {
  const tiles = facesOf(FULL_SET).map(faceIndex);
  const racks = new Uint8Array(4 * FACE_COUNT);
  for (let n = 0; n < 53; n++) {
    const seat = n === 52 ? 0 : n % 4;
    racks[seat * FACE_COUNT + tiles.splice(draws.below(tiles.length), 1)[0]!]!++;
  }
  return racks;
}

function passFrom(racks: Uint8Array, at: number, draws: Draws): number[] {
  if (draws.uniform() >= BY_USE) return anyPass(racks, at, draws);
  const pass = new Uint8Array(FACE_COUNT);
  model.read(racks, at);
  model.draw(NOTHING, 3, pass, 0, draws.uniform);
  return [...pass].flatMap((count, face) => new Array<number>(count).fill(face));
}

/** Any legal pass as likely, merged by face. */
function anyPass(racks: Uint8Array, at: number, draws: Draws): number[] {
  const passes: number[][] = [];
  const extend = (pass: number[], from: number): void => {
    if (pass.length === 3) {
      passes.push(pass);
      return;
    }
    for (let face = from; face < JOKER_INDEX; face++) {
      if (pass.filter((other) => other === face).length < racks[at + face]!) extend([...pass, face], face);
    }
  };
  extend([], 0);
  return passes[draws.below(passes.length)]!;
}
