// (round, event) → the next round; accepts every event of the log without checking it.
import { dealTiles } from '../deal/deal.ts';
import { forFour, type Seat, withSeat } from '../deal/seat.ts';
import { addTo, type Bag, exchanged } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { DealtEvent, RoundEvent } from './event.ts';
import type { Resolved, Round, SubmittedPass } from './round.ts';
import { stepAfter } from './step-after.ts';

const NONE: Four<null> = [null, null, null, null];
const NO_TILES: Four<number> = [0, 0, 0, 0];

/** The round at its first step. */
export function begin(event: DealtEvent): Round {
  return {
    phase: 'passing',
    step: 'first-right',
    submitted: NONE,
    roundId: event.roundId,
    deal: event.deal,
    terms: event.terms,
    commitment: event.commitment,
    racks: dealTiles(event.deal).racks,
    resolved: [],
  };
}

/** The round that a log describes, or null when the log does not begin with a deal (rule E2). */
export function replay(log: readonly RoundEvent[]): Round | null {
  const [first, ...rest] = log;
  if (first?.kind !== 'dealt') return null;
  return rest.reduce(evolve, begin(first));
}

/** Checks nothing: `decide` did so before the event was written. An answer that does not fit the phase changes nothing. */
export function evolve(round: Round, event: RoundEvent): Round {
  switch (event.kind) {
    case 'dealt':
      return round;
    case 'submitted':
      return withSubmission(round, event.seat, event.pass);
    case 'withdrawn':
      return withSubmission(round, event.seat, null);
    case 'voted':
      if (round.phase !== 'voting') return round;
      return { ...round, votes: withSeat(round.votes, event.seat, { value: event.go, by: event.by }) };
    case 'asked':
      if (round.phase !== 'asking') return round;
      return { ...round, asks: withSeat(round.asks, event.seat, { value: event.count, by: event.by }) };
    case 'resolved':
      return resolve(round, event.outcome);
    case 'advanced':
      return advance(round, event.outcome);
    case 'closed':
      return { phase: 'closed', ...common(round) };
  }
}

function withSubmission(round: Round, seat: Seat, pass: SubmittedPass | null): Round {
  if (round.phase !== 'passing' && round.phase !== 'giving') return round;
  return { ...round, submitted: withSeat(round.submitted, seat, pass) };
}

/** The round after the class's outcomes so far, with this one last; this table's own outcome is stored beside it. */
function advance(round: Round, outcome: Resolved): Round {
  const { roundId, deal, terms, commitment, resolved, actualSteps = [] } = round;
  const steps = [...resolved.slice(0, actualSteps.length), outcome];
  const dealt = begin({ kind: 'dealt', roundId, deal, terms, commitment });
  return {
    ...steps.reduce(resolve, dealt),
    actualSteps: [...actualSteps, resolved[actualSteps.length] ?? null],
  };
}

function resolve(round: Round, outcome: Resolved): Round {
  const racks =
    outcome.kind === 'move'
      ? forFour((seat) => moved(round.racks[seat], outcome.gave[seat], outcome.received[seat]))
      : round.racks;
  const base = { ...common(round), racks, resolved: [...round.resolved, outcome] };
  const next = stepAfter(outcome, round.terms);
  switch (next) {
    case 'vote':
      return { ...base, phase: 'voting', votes: NONE };
    case 'courtesy-ask':
      return { ...base, phase: 'asking', asks: NONE };
    case 'courtesy-pass':
      return { ...base, phase: 'giving', counts: agreedIn(outcome), submitted: NONE };
    case 'close':
      // The close is an event of its own; until then the round waits with nothing left to give.
      return { ...base, phase: 'giving', counts: NO_TILES, submitted: NONE };
    default:
      return { ...base, phase: 'passing', step: next, submitted: NONE };
  }
}

function agreedIn(outcome: Resolved): Four<number> {
  return outcome.kind === 'ask' ? outcome.agreed : NO_TILES;
}

function moved(rack: Bag, gone: readonly Face[], came: readonly Face[]): Bag {
  return exchanged(rack, gone, came) ?? addTo(rack, came);
}

function common(round: Round) {
  const { roundId, deal, terms, commitment, racks, resolved, actualSteps } = round;
  return { roundId, deal, terms, commitment, racks, resolved, ...(actualSteps && { actualSteps }) };
}
