// Rounds for tests: begun from a short seed name and driven by choosers that are not the product's own bots.
import {
  begin,
  type Choice,
  type Command,
  decide,
  evolve,
  facesOf,
  openRound,
  type Random,
  type Round,
  type RoundEvent,
  type RoundRejection,
  SEATS,
  type Seat,
  stream,
} from '../../shared-engine/index.ts';
import { seedFrom } from '../../shared-engine/rules/deal/random.ts';

/** A 64-digit seed made from a short name, so that a failing test can be named and found again. */
export function seedNamed(name: string): string {
  return seedFrom(stream(name, 'test seed'));
}

export interface Played {
  readonly round: Round;
  readonly log: readonly RoundEvent[];
}

export function opened(name: string, dealer: Seat = 0, revealRacks = false): Played {
  const event = openRound({ seed: seedNamed(name), dealer }, { revealRacks });
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

/** The refusal of a command that must be illegal. */
export function rejectionOf(round: Round, command: Command): RoundRejection {
  const decision = decide(round, command);
  if (decision.ok) throw new Error(`not refused: ${JSON.stringify(command)}`);
  return decision;
}

/** A step's answer drawn evenly: any legal tiles, any blind number, any vote, any number asked. */
export function anyChoice(round: Round, seat: Seat, random: Random): Choice {
  switch (round.phase) {
    case 'passing': {
      const blindAllowed = round.step === 'first-left' || round.step === 'second-right';
      const blind = blindAllowed ? random.below(4) : 0;
      return { kind: 'pass', step: round.step, tiles: anyTiles(round, seat, 3 - blind, random), blind };
    }
    case 'giving':
      return {
        kind: 'pass',
        step: 'courtesy-pass',
        tiles: anyTiles(round, seat, round.counts[seat], random),
        blind: 0,
      };
    case 'voting':
      return { kind: 'vote', step: 'vote', go: random.below(8) > 0 };
    case 'asking':
      return { kind: 'ask', step: 'courtesy-ask', count: random.below(4) };
    case 'closed':
      throw new Error('the round is closed');
  }
}

function anyTiles(round: Round, seat: Seat, count: number, random: Random) {
  const tiles = facesOf(round.racks[seat]).filter((face) => face !== 'joker');
  return Array.from({ length: count }, () => tiles.splice(random.below(tiles.length), 1)[0]!);
}

/** Seats that still owe an answer. */
export function seatsToAct(round: Round): Seat[] {
  switch (round.phase) {
    case 'passing':
      return SEATS.filter((seat) => round.submitted[seat] === null);
    case 'giving':
      return SEATS.filter((seat) => round.submitted[seat] === null && round.counts[seat] > 0);
    case 'voting':
      return SEATS.filter((seat) => round.votes[seat] === null);
    case 'asking':
      return SEATS.filter((seat) => round.asks[seat] === null);
    case 'closed':
      return [];
  }
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
