// What the open step asks of each seat: for a round, and for the public stage of a round alike.
import type { Seat } from '../deal/seat.ts';
import type { Four } from '../tiles/face.ts';
import type { Round } from './round.ts';
import { type MoveStep, mayPassBlind, PASS_SIZE, type PassStep, type Step } from './schedule.ts';
import type { ExchangeTerms } from './terms.ts';

/** What a step asks of one seat. */
export type PendingDecision =
  | {
      readonly kind: 'pass';
      readonly step: MoveStep;
      /** Tiles to pass, those passed blind among them. */
      readonly count: number;
      readonly blindAllowed: boolean;
    }
  | { readonly kind: 'vote'; readonly step: 'vote' }
  | { readonly kind: 'ask'; readonly step: 'courtesy-ask' };

/** The phase of a round, with what decides the open step; a `Round` and a `PublicStage` both fit. */
export type Stage =
  | { readonly phase: 'passing'; readonly step: PassStep }
  | { readonly phase: 'voting' }
  | { readonly phase: 'asking' }
  | { readonly phase: 'giving'; readonly counts: Four<number> }
  | { readonly phase: 'closed' };

/** The open step; null once the round is closed. */
export function stepOf(stage: Stage): Step | null {
  switch (stage.phase) {
    case 'passing':
      return stage.step;
    case 'voting':
      return 'vote';
    case 'asking':
      return 'courtesy-ask';
    case 'giving':
      return 'courtesy-pass';
    case 'closed':
      return null;
  }
}

/** The step that had this outcome. */
export function stepOfOutcome(
  outcome: { readonly kind: 'move'; readonly step: MoveStep } | { readonly kind: 'vote' | 'ask' },
): Step {
  switch (outcome.kind) {
    case 'move':
      return outcome.step;
    case 'vote':
      return 'vote';
    case 'ask':
      return 'courtesy-ask';
  }
}

/** Whether the open step asks anything of the seat, whether it has answered or not. */
export function asksSeat(stage: Stage, seat: Seat): boolean {
  return stage.phase === 'giving' ? stage.counts[seat] > 0 : stage.phase !== 'closed';
}

/** What the open step asks of the seat, whether it has answered or not; null where it asks nothing of it. */
export function decisionFor(stage: Stage, seat: Seat, terms: ExchangeTerms): PendingDecision | null {
  switch (stage.phase) {
    case 'passing':
      return passOf(stage.step, PASS_SIZE, mayPassBlind(stage.step, terms));
    case 'voting':
      return { kind: 'vote', step: 'vote' };
    case 'asking':
      return { kind: 'ask', step: 'courtesy-ask' };
    case 'giving':
      return stage.counts[seat] === 0 ? null : passOf('courtesy-pass', stage.counts[seat], false);
    case 'closed':
      return null;
  }
}

function passOf(step: MoveStep, count: number, blindAllowed: boolean): PendingDecision {
  return { kind: 'pass', step, count, blindAllowed };
}

/** Whether the seat has answered the open step. */
export function hasAnswered(round: Round, seat: Seat): boolean {
  switch (round.phase) {
    case 'passing':
    case 'giving':
      return round.submitted[seat] !== null;
    case 'voting':
      return round.votes[seat] !== null;
    case 'asking':
      return round.asks[seat] !== null;
    case 'closed':
      return false;
  }
}

/** What the open step still waits for from the seat; null where it waits for nothing. */
export function pendingDecisionOf(round: Round, seat: Seat): PendingDecision | null {
  return hasAnswered(round, seat) ? null : decisionFor(round, seat, round.terms);
}
