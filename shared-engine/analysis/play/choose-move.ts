// How a simulated seat plays: every choice from its own view alone.
import { FACE_COUNT, JOKER_INDEX, SEATS, type Seat } from '../../rules/index.ts';
import type { Danger } from './danger.ts';
import type { Evaluator } from './evaluator.ts';
import { bagWith, hasJokerFor, withGroupExposed, withJokerReceived } from './move.ts';
import type { PlayCard } from './play-card.ts';
import type { PlayerView } from './player-view.ts';

/**
 * A group is exposed when that multiplies the potential by at least this much. Of 0.9, 1.1, 1.5, 2 and 3, seats
 * that use 1.5 won most at the same tables.
 */
const WORTH_EXPOSING = 1.5;

/**
 * What the share of possible hands that want a discard costs, in shares of the seat's own potential, where another
 * seat is close. Seats that use 0.1, 0.3 or 0.8 win as often at the same tables as seats that do not look, within 3 in
 * 100 of 1,500 plays: people look, so the simulated seats do.
 */
const CAUTION = 0.3;

/**
 * The tile that takes least of the potential with it, and where another seat is close is least likely to be the one
 * that it waits for; among equals the one that comes first in `order` (face indexes), so that each seat discards
 * tiles without use in an order of its own.
 */
export function chooseDiscard(
  evaluator: Evaluator,
  danger: Danger,
  view: PlayerView,
  order: readonly number[],
): number {
  const { concealed } = view.holding;
  const wanted = danger.of(view);
  const potential = wanted === null ? 1 : Math.max(evaluator.potential(view), Number.MIN_VALUE);
  const shares = evaluator.shares(view);
  let chosen = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < FACE_COUNT; i++) {
    const face = order[i]!;
    if (concealed[face] === 0) continue;
    const cost = wanted === null ? shares[face]! : shares[face]! / potential + CAUTION * wanted[face]!;
    // Among tiles without use a joker goes last: it may yet fit another hand.
    if (cost < least || (cost === least && chosen === JOKER_INDEX)) {
      chosen = face;
      least = cost;
    }
  }
  return chosen;
}

/** The joker worth taking from an exposed group for a natural tile of one's own, or null. */
export function chooseJokerExchange(
  evaluator: Evaluator,
  view: PlayerView,
): { owner: Seat; face: number } | null {
  let best: { owner: Seat; face: number } | null = null;
  let most = -1;
  for (const owner of SEATS) {
    for (const group of view.exposed[owner]) {
      const { face } = group;
      if (!hasJokerFor(group, face) || view.holding.concealed[face] === 0) continue;
      if (most < 0) most = evaluator.potential(view);
      const potential = evaluator.potential({ ...view, holding: withJokerReceived(view.holding, face) });
      if (potential <= most) continue;
      most = potential;
      best = { owner, face };
    }
  }
  return best;
}

/** How a seat calls a discard: it completes a hand, exposes a group of a size, or does not call. */
export type Call = 'completes' | number | null;

export function chooseCall(play: PlayCard, evaluator: Evaluator, view: PlayerView, face: number): Call {
  if (face === JOKER_INDEX) return null;
  const { holding } = view;
  if (evaluator.toGo(holding) <= 1) {
    const whole = { concealed: bagWith(holding.concealed, face, 1), exposed: holding.exposed };
    if (evaluator.toGo(whole) === 0) return 'completes';
  }
  const own = holding.concealed[face]! + holding.concealed[JOKER_INDEX]!;
  if (own < 2 || holding.exposed.some((group) => group.face === face)) return null;
  let best: number | null = null;
  let most = -1;
  for (const size of play.groupSizes[face]!) {
    if (size > own + 1) break;
    if (most < 0) most = evaluator.potential(view) * WORTH_EXPOSING;
    const potential = evaluator.potential({ ...view, holding: withGroupExposed(holding, face, size) });
    if (potential <= most) continue;
    most = potential;
    best = size;
  }
  return best;
}
