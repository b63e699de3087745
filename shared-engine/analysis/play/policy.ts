// How a simulated seat plays: every choice from its own sight alone.
import { SEATS, type Seat } from '../../rules/deal/seat.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import type { Judge } from './judge.ts';
import { bagWith, handExchanging, handExposing, lendsJoker } from './move.ts';
import type { PlayCard } from './play-card.ts';
import type { Sight } from './player-view.ts';

/**
 * A group is laid open when that makes the hand this many times as promising. Of 0.9, 1.1, 1.5, 2 and 3, seats
 * that use 1.5 won most at the same tables.
 */
const WORTH_OPENING = 1.5;

/**
 * The tile that takes least of the hand's promise with it; among equals the one that comes first in `order`
 * (face indexes), so that idle tiles go in an order of the seat's own.
 */
export function chooseDiscard(judge: Judge, sight: Sight, order: readonly number[]): number {
  const { concealed } = sight.hand;
  const shares = judge.shares(sight);
  let chosen = -1;
  for (let i = 0; i < FACE_COUNT; i++) {
    const face = order[i]!;
    if (concealed[face] === 0) continue;
    if (chosen < 0 || less(face, chosen)) chosen = face;
  }
  return chosen;

  // Among idle tiles a joker goes last: it may yet fit another line.
  function less(face: number, than: number): boolean {
    if (shares[face] !== shares[than]) return shares[face]! < shares[than]!;
    return than === JOKER_INDEX;
  }
}

/** The joker worth taking from an open group for a natural tile of one's own, or null. */
export function chooseExchange(judge: Judge, sight: Sight): { owner: Seat; face: number } | null {
  let best: { owner: Seat; face: number } | null = null;
  let most = -1;
  for (const owner of SEATS) {
    for (const group of sight.exposed[owner]) {
      const { face } = group;
      if (!lendsJoker(group, face) || sight.hand.concealed[face] === 0) continue;
      if (most < 0) most = judge.promise(sight);
      const promise = judge.promise({ ...sight, hand: handExchanging(sight.hand, face) });
      if (promise <= most) continue;
      most = promise;
      best = { owner, face };
    }
  }
  return best;
}

/** What a seat says to a discard: that it completes a line, the size of the group it would lay open, or nothing. */
export type Answer = 'completes' | number | null;

export function chooseAnswer(play: PlayCard, judge: Judge, sight: Sight, face: number): Answer {
  if (face === JOKER_INDEX) return null;
  const { hand } = sight;
  if (judge.toGo(hand) <= 1) {
    const whole = { concealed: bagWith(hand.concealed, face, 1), exposed: hand.exposed };
    if (judge.toGo(whole) === 0) return 'completes';
  }
  const own = hand.concealed[face]! + hand.concealed[JOKER_INDEX]!;
  if (own < 2 || hand.exposed.some((group) => group.face === face)) return null;
  let best: number | null = null;
  let most = -1;
  for (const size of play.groupSizes[face]!) {
    if (size > own + 1) break;
    if (most < 0) most = judge.promise(sight) * WORTH_OPENING;
    const promise = judge.promise({ ...sight, hand: handExposing(hand, face, size) });
    if (promise <= most) continue;
    most = promise;
    best = size;
  }
  return best;
}
