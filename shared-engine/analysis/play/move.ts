// What may happen in the play, and the table afterwards; whether it is legal is checked elsewhere.
import { type Bag, JOKER_INDEX, neighbor, type Seat, withSeat } from '../../rules/index.ts';
import type { ExposedGroup, Holding, Offer, PlayOver, SimulatedPlay, Turn } from './play.ts';

export type TurnMove =
  /** A natural tile of `face` for the joker in the group of that face that `owner` exposed. */
  | { readonly kind: 'exchange-joker'; readonly owner: Seat; readonly face: number }
  | { readonly kind: 'finish'; readonly pattern: number }
  | { readonly kind: 'discard'; readonly face: number };

export type OfferMove =
  | { readonly kind: 'expose'; readonly seat: Seat; readonly size: number }
  | { readonly kind: 'finish'; readonly seat: Seat; readonly pattern: number }
  /** Nobody calls: the next seat draws, or the wall is empty. */
  | { readonly kind: 'no-call' };

export function bagWith(bag: Bag, face: number, count: number): Bag {
  const counts = bag.slice();
  counts[face]! += count;
  return counts;
}

/** With a group of `size` exposed around a called tile: own natural tiles first, then jokers. */
export function withGroupExposed(holding: Holding, face: number, size: number): Holding {
  const natural = Math.min(holding.concealed[face]!, size - 1);
  const jokers = size - 1 - natural;
  const concealed = holding.concealed.slice();
  concealed[face]! -= natural;
  concealed[JOKER_INDEX]! -= jokers;
  return { concealed, exposed: [...holding.exposed, { face, size, jokers }] };
}

/** With a natural tile of `face` given for a joker. */
export function withJokerReceived(holding: Holding, face: number): Holding {
  const concealed = holding.concealed.slice();
  concealed[face]!--;
  concealed[JOKER_INDEX]!++;
  return { concealed, exposed: holding.exposed };
}

/** Whether this group holds a joker that a tile of `face` could replace. */
export function hasJokerFor(group: ExposedGroup, face: number): boolean {
  return group.face === face && group.jokers > 0;
}

function withJokerReplaced(holding: Holding, face: number): Holding {
  const place = holding.exposed.findIndex((group) => hasJokerFor(group, face));
  const exposed = holding.exposed.map((group, index) =>
    index === place ? { ...group, jokers: group.jokers - 1 } : group,
  );
  return { concealed: holding.concealed, exposed };
}

function over(play: SimulatedPlay, winner: Seat | null, pattern: number | null): PlayOver {
  const { holdings, wall, drawn, discards, turns } = play;
  return { phase: 'over', winner, pattern, holdings, wall, drawn, discards, turns };
}

/** The table after a move on a seat's own turn. */
export function afterTurn(play: Turn, move: TurnMove): SimulatedPlay {
  const { seat, holdings, wall, drawn, discards, turns } = play;
  switch (move.kind) {
    case 'exchange-joker': {
      const given = withSeat(holdings, move.owner, withJokerReplaced(holdings[move.owner], move.face));
      return { ...play, holdings: withSeat(given, seat, withJokerReceived(given[seat], move.face)) };
    }
    case 'finish':
      return over(play, seat, move.pattern);
    case 'discard': {
      const { concealed, exposed } = holdings[seat];
      return {
        phase: 'offer',
        from: seat,
        face: move.face,
        holdings: withSeat(holdings, seat, { concealed: bagWith(concealed, move.face, -1), exposed }),
        wall,
        drawn,
        discards,
        turns: turns + 1,
      };
    }
  }
}

/** The table after a discard was called, or not. */
export function afterOffer(play: Offer, move: OfferMove): SimulatedPlay {
  const { from, face, holdings, wall, drawn, discards, turns } = play;
  switch (move.kind) {
    case 'expose': {
      const next = withSeat(holdings, move.seat, withGroupExposed(holdings[move.seat], face, move.size));
      return { phase: 'turn', seat: move.seat, holdings: next, wall, drawn, discards, turns };
    }
    case 'finish': {
      const { concealed, exposed } = holdings[move.seat];
      const complete = { concealed: bagWith(concealed, face, 1), exposed };
      return over({ ...play, holdings: withSeat(holdings, move.seat, complete) }, move.seat, move.pattern);
    }
    case 'no-call': {
      const dead = { ...play, discards: bagWith(discards, face, 1) };
      const tile = wall[drawn];
      if (tile === undefined) return over(dead, null, null);
      const seat = neighbor(from, 'right');
      const holding = { ...holdings[seat], concealed: bagWith(holdings[seat].concealed, tile, 1) };
      return {
        phase: 'turn',
        seat,
        holdings: withSeat(holdings, seat, holding),
        wall,
        drawn: drawn + 1,
        discards: dead.discards,
        turns,
      };
    }
  }
}
