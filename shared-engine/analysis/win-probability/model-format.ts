// The shape of a fitted win model.
import type { FeatureName } from './features.ts';
import type { ReachSteps } from './reach.ts';

/** Every number is written by the command it names. */
export interface WinModel {
  readonly made: {
    readonly command: string;
    readonly seed: string;
    readonly date: string;
    /** Simulated plays, and on how many cards. */
    readonly plays: number;
    readonly cards: number;
  };
  readonly steps: ReachSteps;
  /** What a unit of each feature adds to the score of a rack; a score is the logarithm of a weight. */
  readonly weights: Readonly<Record<FeatureName, number>>;
  /** Added by the number of seats to the right of the dealer. */
  readonly dealerOffsets: readonly [number, number, number, number];
  /** The score of the wall, by how far the better random racks of the card reach: start + center × center's weight. */
  readonly wall: { readonly start: number; readonly center: number };
}
