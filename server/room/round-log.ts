// The shortest log that leads to a round: what was withdrawn or answered in steps that are over is left out.
import {
  type MoveStep,
  type Resolved,
  type Round,
  type RoundEvent,
  SEATS,
  type Seat,
} from '../../shared-engine/index.ts';

/** The events behind the deal; `evolve` applied to each of them in turn gives the round again. */
export function shortLogOf(round: Round): RoundEvent[] {
  const { resolved, actualSteps = [] } = round;
  const advanced = actualSteps.flatMap((actual, n): RoundEvent[] => {
    const outcome: RoundEvent = { kind: 'advanced', outcome: resolved[n]! };
    return actual === null ? [outcome] : [resolvedTo(actual), outcome];
  });
  return [...advanced, ...resolved.slice(actualSteps.length).map(resolvedTo), ...openStepOf(round)];
}

function openStepOf(round: Round): RoundEvent[] {
  switch (round.phase) {
    case 'passing':
      return round.submitted.flatMap((pass, n) => submission(SEATS[n]!, round.step, pass));
    case 'giving':
      return round.submitted.flatMap((pass, n) => submission(SEATS[n]!, 'courtesy-pass', pass));
    case 'voting':
      return SEATS.flatMap((seat): RoundEvent[] => {
        const vote = round.votes[seat];
        return vote === null ? [] : [{ kind: 'voted', seat, go: vote.value, by: vote.by }];
      });
    case 'asking':
      return SEATS.flatMap((seat): RoundEvent[] => {
        const ask = round.asks[seat];
        return ask === null ? [] : [{ kind: 'asked', seat, count: ask.value, by: ask.by }];
      });
    case 'closed':
      return [{ kind: 'closed' }];
  }
}

type Pass = (RoundEvent & { kind: 'submitted' })['pass'];

function submission(seat: Seat, step: MoveStep, pass: Pass | null): RoundEvent[] {
  return pass === null ? [] : [{ kind: 'submitted', seat, step, pass }];
}

function resolvedTo(outcome: Resolved): RoundEvent {
  return { kind: 'resolved', outcome };
}
