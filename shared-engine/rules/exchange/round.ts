// The state of one round: a union by phase, each member holding only what that phase needs.
import type { Deal } from '../deal/deal.ts';
import type { Bag } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { MoveStep, PassStep } from './schedule.ts';

/** Who chose: the seat's owner, the bot that holds the seat, or the stand-in at a deadline (rule K2). */
export const ACTORS = ['player', 'bot', 'stand-in'] as const;
export type Actor = (typeof ACTORS)[number];

/** Fixed before the deal and shown to all. */
export interface Terms {
  /** Whether racks are laid open after the close (rule Z2). */
  readonly revealRacks: boolean;
}

/** What a seat has put face down for one pass. */
export interface SubmittedPass {
  readonly tiles: readonly Face[];
  /** How many of the arriving tiles go on unseen (rule B1). */
  readonly blind: number;
  readonly by: Actor;
}

/** Tiles that have moved. */
export interface ResolvedMove {
  readonly kind: 'move';
  readonly step: MoveStep;
  /** From the giver's own rack, by giver. */
  readonly gave: Four<readonly Face[]>;
  /** Passed on unseen, by the seat that passed them on. */
  readonly forwarded: Four<readonly Face[]>;
  /** Arrived and stayed, by receiver. */
  readonly received: Four<readonly Face[]>;
  /** Tiles each seat asked to pass on unseen. */
  readonly blind: Four<number>;
  /** Slots that no real tile could fill, the same for every seat (rule B4). */
  readonly voided: number;
  /** Null for a seat that had nothing to give in a courtesy pass. */
  readonly by: Four<Actor | null>;
}

/** A step that is over, as the server knows it; `view/` tells each seat its part. */
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
  readonly deal: Deal;
  readonly terms: Terms;
  /** Null for a deal that a teacher prepared. */
  readonly commitment: string | null;
  /** Now held by each seat; sealed tiles are still in the rack until the step is settled. */
  readonly racks: Four<Bag>;
  readonly resolved: readonly Resolved[];
  /**
   * In a class that plays one line: what came out here at each step that the class has gone on from, null for a step
   * that was over before this table was dealt (rule L2). Missing everywhere else.
   */
  readonly actualSteps?: readonly (Resolved | null)[];
}

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
