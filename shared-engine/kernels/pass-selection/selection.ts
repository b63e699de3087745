// What a simulated seat goes by when it passes, and where the numbers come from.
import type { WeightSteps } from '../hand-weights/reference.ts';

/** What a seat goes by when it passes. */
export interface Selection {
  readonly steps: WeightSteps;
  /** A tile can be spared if less than this share of the hands' weight goes with it. */
  readonly spareShare: number;
}

/** Every number is written by the command it names. */
export interface FittedSelection extends Selection {
  readonly made: {
    readonly command: string;
    readonly seed: string;
    readonly date: string;
    /** Situations that were judged in each round of the fit, and such rounds. */
    readonly situations: number;
    readonly rounds: number;
  };
}
