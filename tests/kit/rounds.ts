// Rounds for tests: begun from a short seed name and driven by choosers that are not the product's own bots.
import { type Random, seedFrom, stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice, Choice, Command } from '../../shared-engine/rules/exchange/command.ts';
import { decide, openRound } from '../../shared-engine/rules/exchange/decide.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { begin, evolve } from '../../shared-engine/rules/exchange/evolve.ts';
import { decisionFor, pendingDecisionOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import type { RoundRejection } from '../../shared-engine/rules/exchange/rejection.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import type { Terms } from '../../shared-engine/rules/exchange/terms.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';

/** A 64-digit seed made from a short name, so that a failing test can be named and found again. */
export function seedNamed(name: string): string {
  return seedFrom(stream(name, 'test seed'));
}

export interface Played {
  readonly round: Round;
  readonly log: readonly RoundEvent[];
}

export function opened(name: string, dealer: Seat = 0, revealRacks = false): Played {
  return openedBy({ revealRacks }, name, dealer);
}

/** By these ways to play; what they do not name is as usual. */
export function openedBy(terms: Partial<Terms>, name: string, dealer: Seat = 0): Played {
  const event = openRound({ seed: seedNamed(name), dealer }, terms);
  return { round: begin(event), log: [event] };
}

/** The round after a command that must be legal. */
export function apply(played: Played, command: Command): Played {
  const decision = decide(played.round, command);
  if (!decision.ok) throw new Error(`${decision.code} for ${JSON.stringify(command)}`);
  return {
    round: decision.events.reduce(evolve, played.round),
    log: [...played.log, ...decision.events],
  };
}

/** The rejection of a command that must be illegal. */
export function rejectionOf(round: Round, command: Command): RoundRejection {
  const decision = decide(round, command);
  if (decision.ok) throw new Error(`not rejected: ${JSON.stringify(command)}`);
  return decision;
}

/** An answer drawn evenly for a seat of which the open step asks one: any tiles, blind number, vote or number asked. */
export function anyChoice(round: Round, seat: Seat, random: Random): AnswerChoice {
  const decision = decisionFor(round, seat, round.terms);
  switch (decision?.kind) {
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const blind = blindAllowed ? random.below(count + 1) : 0;
      return { kind: 'pass', step, tiles: anyTiles(round, seat, count - blind, random), blind };
    }
    case 'vote':
      return { kind: 'vote', step: 'vote', go: random.below(8) > 0 };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: random.below(4) };
    case undefined:
      throw new Error(`nothing is asked of seat ${seat} in phase ${round.phase}`);
  }
}

function anyTiles(round: Round, seat: Seat, count: number, random: Random) {
  const tiles = facesOf(round.racks[seat]).filter((face) => face !== 'joker');
  return Array.from({ length: count }, () => tiles.splice(random.below(tiles.length), 1)[0]!);
}

/** Seats that still owe an answer. */
export function seatsToAct(round: Round): Seat[] {
  return SEATS.filter((seat) => pendingDecisionOf(round, seat) !== null);
}

/** Plays on by `choose` until `until` holds or the round is closed; seats answer in a random order. */
export function playOn(
  played: Played,
  random: Random,
  until: (round: Round) => boolean = () => false,
  choose: (round: Round, seat: Seat, random: Random) => Choice = anyChoice,
): Played {
  let now = played;
  while (now.round.phase !== 'closed' && !until(now.round)) {
    const waiting = seatsToAct(now.round);
    const seat = waiting[random.below(waiting.length)]!;
    now = apply(now, { ...choose(now.round, seat, random), seat, by: 'player' });
  }
  return now;
}
