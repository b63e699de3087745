// The open step as one seat's view shows it: what it asks, what the seat has answered, and whether a choice is legal.
import type { Seat } from '../deal/seat.ts';
import type { AnswerChoice, Choice } from '../exchange/command.ts';
import { objection } from '../exchange/legality.ts';
import { asksSeat, decisionFor, type PendingDecision, stepOf } from '../exchange/pending-decision.ts';
import type { RoundRejection } from '../exchange/rejection.ts';
import { bagOf } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import type { SeatStep } from './record.ts';
import type { PublicStage, SeatView } from './view.ts';

type OpenStepOfSeat = Pick<SeatView, 'stage' | 'answer' | 'terms'> & {
  readonly record: { readonly seat: Seat };
};

/** What the open step still waits for from this seat; null where it waits for nothing. */
export function pendingDecision({ stage, answer, terms, record }: OpenStepOfSeat): PendingDecision | null {
  return answer === null ? decisionFor(stage, record.seat, terms) : null;
}

/** Whether the open step waits for an answer of this seat, whoever looks on. */
export function isWaitingFor(stage: PublicStage, seat: Seat): boolean {
  return stage.phase !== 'closed' && !stage.answered[seat] && asksSeat(stage, seat);
}

/** The answer this seat has given to the open step, as the choice that it was; null while it has given none. */
export function choiceIn({ stage, answer, terms, record }: OpenStepOfSeat): AnswerChoice | null {
  switch (answer?.kind) {
    case 'pass': {
      const decision = decisionFor(stage, record.seat, terms);
      if (decision?.kind !== 'pass') return null;
      return { kind: 'pass', step: decision.step, tiles: answer.tiles, blind: answer.blind };
    }
    case 'vote':
      return { kind: 'vote', step: 'vote', go: answer.go };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: answer.count };
    case undefined:
      return null;
  }
}

/** What the seat chose at a step that is over; null where it had nothing to choose. */
export function choiceAt(step: SeatStep, seat: Seat): AnswerChoice | null {
  switch (step.kind) {
    case 'move':
      return step.by[seat] && { kind: 'pass', step: step.step, tiles: step.gave, blind: step.blind[seat] };
    case 'vote':
      return { kind: 'vote', step: 'vote', go: step.go[seat] };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: step.asked[seat] };
  }
}

/** What is always allowed: the first tiles of the rack without the jokers, a vote to stop, no tile asked for. */
export function simplestAnswer(decision: PendingDecision, rack: readonly Face[]): AnswerChoice {
  switch (decision.kind) {
    case 'pass': {
      const tiles = rack.filter((face) => face !== 'joker').slice(0, decision.count);
      return { kind: 'pass', step: decision.step, tiles, blind: 0 };
    }
    case 'vote':
      return { kind: 'vote', step: decision.step, go: false };
    case 'ask':
      return { kind: 'ask', step: decision.step, count: 0 };
  }
}

/** Null when this choice of the seat is legal, otherwise the first reason against it. */
export function choiceObjection(view: SeatView, choice: Choice): RoundRejection | null {
  const { stage, answer, rack, terms, record } = view;
  const decision = decisionFor(stage, record.seat, terms);
  return objection({ step: stepOf(stage), decision, answered: answer !== null, rack: bagOf(rack) }, choice);
}
