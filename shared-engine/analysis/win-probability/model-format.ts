// The shape of a fitted outlook model.
import type { MeasureName } from './features.ts';
import type { ReachSteps } from './reach.ts';

/** A fitted model; every number of it is written by the command it names. */
export interface OutlookModel {
  readonly made: {
    readonly command: string;
    readonly seed: string;
    readonly date: string;
    /** Simulated plays, and on how many cards. */
    readonly games: number;
    readonly cards: number;
  };
  readonly steps: ReachSteps;
  readonly start: number;
  readonly weights: Readonly<Record<MeasureName, number>>;
  /** Added by place in the order of turns: the dealer, then to the right. */
  readonly places: readonly [number, number, number, number];
  /** Chance in 100 at each score, linear between and constant beyond; both rising. */
  readonly scores: readonly number[];
  readonly chances: readonly number[];
}
