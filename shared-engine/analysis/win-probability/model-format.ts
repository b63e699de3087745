// The shape of a fitted win-probability model.
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
  readonly start: number;
  readonly weights: Readonly<Record<FeatureName, number>>;
  /** Added by the number of seats to the right of the dealer. */
  readonly dealerOffsets: readonly [number, number, number, number];
  /** Chance in 100 to win at each score, linear between and constant beyond; both rising. */
  readonly scores: readonly number[];
  readonly winProbabilities: readonly number[];
}
