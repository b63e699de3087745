// What the steady player passes: the tiles that its hands need least, weighed as the rollouts weigh them, nothing misjudged.
import type { CompiledCard } from '../card/index.ts';
import { createPassChooser, selectPass } from '../kernels/index.ts';
import { type Bag, FACE_COUNT, PASS_SIZE } from '../rules/index.ts';

export interface SteadyPass {
  /** By face index, least needed first; fewer than three where the rack holds little but jokers. */
  readonly tiles: readonly number[];
  /** How many of them, one after another, can be spared: so many it gives where it may pass blind, and asks for. */
  readonly spare: number;
}

/** Prepares a card once. */
export function createSteadySelection(card: CompiledCard): (rack: Bag) => SteadyPass {
  const chooser = createPassChooser(card);
  const noNoise = new Float64Array(FACE_COUNT);
  const selected = new Int8Array(PASS_SIZE);
  return (rack) => {
    chooser.hands.read(Uint8Array.from(rack), 0);
    const spare = selectPass(chooser, selected, 0, noNoise);
    return { tiles: [...selected].filter((face) => face >= 0), spare };
  };
}
