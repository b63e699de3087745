// Which tiles a simulated seat passes: those that add least to the weight of its hands, as it misjudges them.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT, JOKER_INDEX, PASS_SIZE } from '../../rules/index.ts';
import { createHandWeights, type HandWeights } from '../hand-weights/reference.ts';
import { FITTED_SELECTION } from './fitted.ts';
import type { Selection } from './selection.ts';

/** The share of the hands' weight that one unit of Gumbel noise is mistaken for. */
export const NOISE_SCALE = 0.02;

/** For racks of 36 counts one after another. */
export interface SelectedPasses {
  /** Three faces a rack, least useful first, −1 where nothing but jokers is left. */
  readonly tiles: Int8Array;
  /** How many of them, one after another, can be spared. */
  readonly spare: Uint8Array;
}

/** The hands of a card as a seat weighs them when it chooses what to pass. */
export interface PassChooser {
  readonly hands: HandWeights;
  readonly spareShare: number;
}

export function createPassChooser(card: CompiledCard, selection: Selection = FITTED_SELECTION): PassChooser {
  return { hands: createHandWeights(card, selection.steps), spareShare: selection.spareShare };
}

/** Selects the passes of many racks, without noise. */
export type PassSelector = (racks: Uint8Array) => SelectedPasses;

/**
 * Takes three tiles out of a rack that `hands` has read, writes them to `tiles[at..]`, and says how many of them, one
 * after another, can be spared. `noise` holds one value a face.
 */
export function selectPass(
  { hands, spareShare }: PassChooser,
  tiles: Int8Array,
  at: number,
  noise: Float64Array,
): number {
  let spare = 0;
  for (let taken = 0; taken < PASS_SIZE; taken++) {
    const total = hands.total();
    let least = -1;
    let lowest = Number.POSITIVE_INFINITY;
    let share = 0;
    for (let face = 0; face < JOKER_INDEX; face++) {
      if (hands.held[face] === 0) continue;
      const value = total === 0 ? 0 : hands.loss(face) / total;
      const perceived = value - NOISE_SCALE * noise[face]!;
      if (perceived < lowest) {
        lowest = perceived;
        least = face;
        share = value;
      }
    }
    tiles[at + taken] = least;
    if (least === -1) continue;
    if (spare === taken && share < spareShare) spare++;
    hands.take(least);
  }
  return spare;
}

export function roomForPasses(racks: Uint8Array): SelectedPasses & { readonly count: number } {
  const count = Math.floor(racks.length / FACE_COUNT);
  return { count, tiles: new Int8Array(count * PASS_SIZE), spare: new Uint8Array(count) };
}

export function createReferencePassSelector(card: CompiledCard): PassSelector {
  const chooser = createPassChooser(card);
  const noise = new Float64Array(FACE_COUNT);
  return (racks) => {
    const { count, tiles, spare } = roomForPasses(racks);
    for (let nth = 0; nth < count; nth++) {
      chooser.hands.read(racks, nth * FACE_COUNT);
      spare[nth] = selectPass(chooser, tiles, nth * PASS_SIZE, noise);
    }
    return { tiles, spare };
  };
}
