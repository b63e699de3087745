// (round, command) → the events it causes, or one rejection; every choice in a round is decided here.
import { commitmentOf } from '../deal/commitment.ts';
import type { Deal } from '../deal/deal.ts';
import { forFour, neighbor, SEATS, type Seat, withSeat } from '../deal/seat.ts';
import type { Four } from '../tiles/face.ts';
import type { Choice, Command } from './command.ts';
import type { DealtEvent, RoundEvent } from './event.ts';
import { objection } from './legality.ts';
import { asksSeat, decisionFor, hasAnswered, stepOf } from './pending-decision.ts';
import { type RoundRejection, reject } from './rejection.ts';
import { blindDraws, resolveMove } from './resolve.ts';
import type { Answer, Asking, Giving, Passing, Resolved, Round, SubmittedPass, Voting } from './round.ts';
import { stepAfter } from './step-after.ts';
import { STANDARD_TERMS, type Terms } from './terms.ts';

export type DecideResult = { readonly ok: true; readonly events: readonly RoundEvent[] } | RoundRejection;

/**
 * The first event of a round. From here on the commitment, or that there is none, is public (rule D4). What `agreed`
 * does not name is as usual among friends; a round outside a room needs no id of its own.
 */
export function openRound(deal: Deal, agreed: Partial<Terms>, roundId = 'one round'): DealtEvent {
  const terms = { ...STANDARD_TERMS.friends, ...agreed };
  const commitment = commitmentOf(deal, { roundId, dealer: deal.dealer, terms });
  return { kind: 'dealt', roundId, deal, terms, commitment };
}

export function decide(round: Round, command: Command): DecideResult {
  const rejection = objectionTo(round, command.seat, command);
  if (rejection) return rejection;
  switch (round.phase) {
    case 'passing':
    case 'giving':
      return decideMove(round, command);
    case 'voting':
      return decideVote(round, command);
    case 'asking':
      return decideAsk(round, command);
    case 'closed':
      return reject('round-closed');
  }
}

/** Null when this choice of the seat is legal, otherwise the first reason against it. */
export function objectionTo(round: Round, seat: Seat, choice: Choice): RoundRejection | null {
  const decision = decisionFor(round, seat, round.terms);
  const answered = hasAnswered(round, seat);
  return objection({ step: stepOf(round), decision, answered, rack: round.racks[seat] }, choice);
}

function decideMove(round: Passing | Giving, command: Command): DecideResult {
  const step = round.phase === 'passing' ? round.step : 'courtesy-pass';
  if (command.kind === 'withdraw') {
    return events({ kind: 'withdrawn', seat: command.seat, step });
  }
  if (command.kind !== 'pass') return reject('wrong-step');
  const pass: SubmittedPass = { tiles: command.tiles, blind: command.blind, by: command.by };
  const submission: RoundEvent = { kind: 'submitted', seat: command.seat, step, pass };
  const submitted = withSeat(round.submitted, command.seat, pass);
  const waiting = SEATS.some((seat) => submitted[seat] === null && asksSeat(round, seat));
  if (waiting) return events(submission);
  const outcome = resolveMove(step, submitted, round.deal.dealer, blindDraws(round.deal, step));
  return events(submission, { kind: 'resolved', outcome }, ...closing(round, outcome));
}

function decideVote(round: Voting, command: Command): DecideResult {
  if (command.kind !== 'vote') return reject('wrong-step');
  const { seat, go, by } = command;
  const votes = complete(withSeat(round.votes, seat, { value: go, by }));
  const voted: RoundEvent = { kind: 'voted', seat, go, by };
  if (votes === null) return events(voted);
  const outcome: Resolved = {
    kind: 'vote',
    go: forFour((s) => votes[s].value),
    by: forFour((s) => votes[s].by),
  };
  return events(voted, { kind: 'resolved', outcome }, ...closing(round, outcome));
}

function decideAsk(round: Asking, command: Command): DecideResult {
  if (command.kind !== 'ask') return reject('wrong-step');
  const { seat, count, by } = command;
  const asks = complete(withSeat(round.asks, seat, { value: count, by }));
  const asked: RoundEvent = { kind: 'asked', seat, count, by };
  if (asks === null) return events(asked);
  const outcome: Resolved = {
    kind: 'ask',
    asked: forFour((s) => asks[s].value),
    agreed: forFour((s) => Math.min(asks[s].value, asks[neighbor(s, 'across')].value)),
    by: forFour((s) => asks[s].by),
  };
  return events(asked, { kind: 'resolved', outcome }, ...closing(round, outcome));
}

function closing({ terms }: Round, outcome: Resolved): RoundEvent[] {
  return stepAfter(outcome, terms) === 'close' ? [{ kind: 'closed' }] : [];
}

function complete<T>(answers: Four<Answer<T> | null>): Four<Answer<T>> | null {
  const [a, b, c, d] = answers;
  return a && b && c && d ? [a, b, c, d] : null;
}

function events(...list: RoundEvent[]): DecideResult {
  return { ok: true, events: list };
}
