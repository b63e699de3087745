// The state of one round: a union by phase; each member holds only what its phase needs.
import type { Deal } from '../deal/deal.ts';
import type { Bag } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { MoveStep, PassStep } from './schedule.ts';
import type { Terms } from './terms.ts';

/** Who chose: the player who holds the seat, the bot that holds it, or a stand-in for the player (rule K2). */
export const ACTORS = ['player', 'bot', 'stand-in'] as const;
export type Actor = (typeof ACTORS)[number];

/** What a seat has submitted for one pass; it stays face down until all seats have. */
export interface SubmittedPass {
  readonly tiles: readonly Face[];
  /** How many of the arriving tiles are passed on blind (rule B1). */
  readonly blind: number;
  readonly by: Actor;
}

/** The outcome of a pass: which tiles moved. */
export interface ResolvedMove {
  readonly kind: 'move';
  readonly step: MoveStep;
  /** From the giver's own rack, by giver. */
  readonly gave: Four<readonly Face[]>;
  /** Passed on blind, by the seat that passed them on. */
  readonly forwarded: Four<readonly Face[]>;
  /** Arrived and not passed on, by receiver. */
  readonly received: Four<readonly Face[]>;
  /** How many tiles each seat chose to pass on blind. */
  readonly blind: Four<number>;
  /** Slots of the ring that no tile could fill, the same number for every seat (rule B4). */
  readonly voided: number;
  /** Null for a seat that had nothing to give in a courtesy pass. */
  readonly by: Four<Actor | null>;
}

/** The outcome of a step with all hidden tiles; `view/` tells each seat its part of it. */
export type Resolved =
  | ResolvedMove
  | { readonly kind: 'vote'; readonly go: Four<boolean>; readonly by: Four<Actor> }
  | {
      readonly kind: 'ask';
      readonly asked: Four<number>;
      readonly agreed: Four<number>;
      readonly by: Four<Actor>;
    };

interface Common {
  readonly roundId: string;
  readonly deal: Deal;
  readonly terms: Terms;
  /** Null for a deal that a teacher prepared. */
  readonly commitment: string | null;
  /** Now held by each seat; submitted tiles are part of the rack until the step is resolved. */
  readonly racks: Four<Bag>;
  readonly resolved: readonly Resolved[];
  /**
   * In a guided deal: this table's own outcome of each step from which the class has advanced, null for a step that was
   * over before this table was dealt (rule L2). Missing in every other round.
   */
  readonly actualSteps?: readonly (Resolved | null)[];
}

/** A seat's answer to a vote or to the courtesy question. */
export interface Answer<T> {
  readonly value: T;
  readonly by: Actor;
}

export type Passing = Common & {
  readonly phase: 'passing';
  readonly step: PassStep;
  readonly submitted: Four<SubmittedPass | null>;
};
export type Voting = Common & { readonly phase: 'voting'; readonly votes: Four<Answer<boolean> | null> };
export type Asking = Common & { readonly phase: 'asking'; readonly asks: Four<Answer<number> | null> };
export type Giving = Common & {
  readonly phase: 'giving';
  /** Tiles each seat gives; 0 for a seat that has nothing to do. */
  readonly counts: Four<number>;
  readonly submitted: Four<SubmittedPass | null>;
};
export type Closed = Common & { readonly phase: 'closed' };

export type Round = Passing | Voting | Asking | Giving | Closed;
export type Phase = Round['phase'];
