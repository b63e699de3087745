// The events of a round; replaying its log of events gives the round (rule E2).
import type { Deal } from '../deal/deal.ts';
import type { Seat } from '../deal/seat.ts';
import type { AnswerChoice } from './command.ts';
import type { Actor, Resolved, SubmittedPass } from './round.ts';
import type { MoveStep } from './schedule.ts';
import type { Terms } from './terms.ts';

/** What a seat with a bot answers at one step of a scripted deal, as far as it can (rule R6). */
export interface ScriptedAnswer {
  readonly seat: Seat;
  readonly choice: AnswerChoice;
}
export type DealScript = readonly ScriptedAnswer[];

export type DealtEvent = {
  readonly kind: 'dealt';
  /** Stands in the commitment, so that it counts for this round alone. */
  readonly roundId: string;
  readonly deal: Deal;
  readonly terms: Terms;
  /** Null for a deal that a teacher prepared. */
  readonly commitment: string | null;
  /** Missing where the bots choose by themselves. */
  readonly script?: DealScript;
};

export type RoundEvent =
  | DealtEvent
  | { readonly kind: 'submitted'; readonly seat: Seat; readonly step: MoveStep; readonly pass: SubmittedPass }
  | { readonly kind: 'withdrawn'; readonly seat: Seat; readonly step: MoveStep }
  | { readonly kind: 'voted'; readonly seat: Seat; readonly go: boolean; readonly by: Actor }
  | { readonly kind: 'asked'; readonly seat: Seat; readonly count: number; readonly by: Actor }
  /** All seats have answered the step, and this came of it; the draws of blind passes are part of it (rule B2). */
  | { readonly kind: 'resolved'; readonly outcome: Resolved }
  /** In a guided deal all tables continue from this outcome, whatever this table's own was (rule L1). */
  | { readonly kind: 'advanced'; readonly outcome: Resolved }
  | { readonly kind: 'closed' };
