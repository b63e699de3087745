// A batch of rollouts: sampled deals and actions in, win probabilities out.
import { type ExchangeTerms, FACE_COUNT, MOVES, neighbor, type Seat, STEPS } from '../../rules/index.ts';

/** Bytes of one sampled deal: four racks of 36 counts. */
export const DEAL_BYTES = 4 * FACE_COUNT;

/** Numbers of one result: the win probabilities of the four seats where the rollout ends. */
export const RESULT_WIDTH = 4;

/** Bytes of one action: three faces (−1 where none), then a number. */
export const ACTION_BYTES = 4;

/** Steps by their index in `STEPS`. */
export const VOTE = STEPS.indexOf('vote');
export const ASK = STEPS.indexOf('courtesy-ask');
/** How many seats to the right tiles go, by step; 0 where none move. */
export const TOWARD = STEPS.map((step) =>
  step in MOVES ? neighbor(0, MOVES[step as keyof typeof MOVES].toward) : 0,
);
/** Whether arriving tiles may be passed blind, by step, where the terms allow it at all. */
export const BLIND = STEPS.map((step) => step in MOVES && MOVES[step as keyof typeof MOVES].blind);

/** Where rollouts end: at the close, right after the choice's own step, or after the next pass. */
export const ROLLOUT_ENDS = ['close', 'step', 'next-pass'] as const;
export type RolloutEnd = (typeof ROLLOUT_ENDS)[number];

/**
 * How the other seats pass tiles. Alike: all four seats misjudge a little. Otherwise the others misjudge tiles as typical
 * or as casual players do, and the seat that chooses misjudges nothing: then what is expected before a step is what comes
 * of it on average.
 */
export const NEIGHBORS = ['alike', 'typical', 'casual'] as const;
export type Neighbors = (typeof NEIGHBORS)[number];

/** What all rollouts of a batch share. */
export interface RolloutSetting {
  readonly seed: number;
  /** Who chooses. */
  readonly seat: Seat;
  readonly dealer: Seat;
  readonly terms: ExchangeTerms;
  /** Index into `STEPS` of the step that the choice is made in. */
  readonly step: number;
  /** Tiles agreed on in a courtesy pass, by seat; 0 at every other step. */
  readonly agreed: readonly number[];
  readonly end: RolloutEnd;
  readonly neighbors: Neighbors;
}

/**
 * One choice in many sampled deals. In each deal, `alternatives` actions are played out one after another.
 *
 * The action of a pass is its own tiles and how many they are; on a blind step the rest of the three is passed blind.
 * The action of the vote has the number 1 to continue and 0 to stop; one of the courtesy ask the number asked for.
 */
export interface RolloutBatch extends RolloutSetting {
  readonly count: number;
  readonly alternatives: number;
  /** Keys of the noise, one a deal. */
  readonly keys: Uint32Array;
  /** `count` × `DEAL_BYTES`: racks by seat before the step. */
  readonly deals: Uint8Array;
  /** `count` × `alternatives` × `ACTION_BYTES`. */
  readonly actions: Int8Array;
}

/** Implementations may differ in speed, never in a bit of a result. */
export interface Rollouts {
  /** `count` × `alternatives` × `RESULT_WIDTH` chances in 100. */
  run(batch: RolloutBatch): Float64Array;
}

/** What racks are worth where a rollout ends: see `TableValue`. */
export interface Leaf {
  /** The weight of the rack at `racks[at..at + 36)`, so many seats to the right of the dealer. */
  weight(racks: ArrayLike<number>, at: number, place: number): number;
  /** The weight of a wall game. */
  readonly wall: number;
}
