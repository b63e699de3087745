// What may happen in the play, and what the table looks like afterwards; legality is judged before.
import { neighbour, type Seat, withSeat } from '../../rules/deal/seat.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import { JOKER_INDEX } from '../../rules/tiles/face.ts';
import type { ExposedGroup, Hand, Offer, Play, PlayOver, Turn } from './play.ts';

export type TurnMove =
  /** A natural tile of `face` for the joker in the group of that face that `owner` laid open. */
  | { readonly kind: 'exchange'; readonly owner: Seat; readonly face: number }
  | { readonly kind: 'finish'; readonly line: number }
  | { readonly kind: 'discard'; readonly face: number };

export type OfferMove =
  | { readonly kind: 'expose'; readonly seat: Seat; readonly size: number }
  | { readonly kind: 'finish'; readonly seat: Seat; readonly line: number }
  /** Nobody calls: the next seat draws, or the wall is empty. */
  | { readonly kind: 'pass' };

export function bagWith(bag: Bag, face: number, count: number): Bag {
  const counts = bag.slice();
  counts[face]! += count;
  return counts;
}

/** The hand with a group of `size` laid open around a called tile: own natural tiles first, then jokers. */
export function handExposing(hand: Hand, face: number, size: number): Hand {
  const natural = Math.min(hand.concealed[face]!, size - 1);
  const jokers = size - 1 - natural;
  const concealed = hand.concealed.slice();
  concealed[face]! -= natural;
  concealed[JOKER_INDEX]! -= jokers;
  return { concealed, exposed: [...hand.exposed, { face, size, jokers }] };
}

/** The hand with a natural tile of `face` handed over for a joker. */
export function handExchanging(hand: Hand, face: number): Hand {
  const concealed = hand.concealed.slice();
  concealed[face]!--;
  concealed[JOKER_INDEX]!++;
  return { concealed, exposed: hand.exposed };
}

/** Whether this group holds a joker that a tile of `face` could replace. */
export function lendsJoker(group: ExposedGroup, face: number): boolean {
  return group.face === face && group.jokers > 0;
}

function withoutJoker(hand: Hand, face: number): Hand {
  const place = hand.exposed.findIndex((group) => lendsJoker(group, face));
  const exposed = hand.exposed.map((group, index) =>
    index === place ? { ...group, jokers: group.jokers - 1 } : group,
  );
  return { concealed: hand.concealed, exposed };
}

function over(play: Play, winner: Seat | null, line: number | null): PlayOver {
  const { hands, wall, drawn, discards, turns } = play;
  return { phase: 'over', winner, line, hands, wall, drawn, discards, turns };
}

/** The table after a move on a seat's own turn. */
export function afterTurn(play: Turn, move: TurnMove): Play {
  const { seat, hands, wall, drawn, discards, turns } = play;
  switch (move.kind) {
    case 'exchange': {
      const given = withSeat(hands, move.owner, withoutJoker(hands[move.owner], move.face));
      return { ...play, hands: withSeat(given, seat, handExchanging(given[seat], move.face)) };
    }
    case 'finish':
      return over(play, seat, move.line);
    case 'discard': {
      const { concealed, exposed } = hands[seat];
      return {
        phase: 'offer',
        from: seat,
        face: move.face,
        hands: withSeat(hands, seat, { concealed: bagWith(concealed, move.face, -1), exposed }),
        wall,
        drawn,
        discards,
        turns: turns + 1,
      };
    }
  }
}

/** The table after the answer to a discard. */
export function afterOffer(play: Offer, move: OfferMove): Play {
  const { from, face, hands, wall, drawn, discards, turns } = play;
  switch (move.kind) {
    case 'expose': {
      const hand = handExposing(hands[move.seat], face, move.size);
      const next = withSeat(hands, move.seat, hand);
      return { phase: 'turn', seat: move.seat, hands: next, wall, drawn, discards, turns };
    }
    case 'finish': {
      const { concealed, exposed } = hands[move.seat];
      const hand = { concealed: bagWith(concealed, face, 1), exposed };
      return over({ ...play, hands: withSeat(hands, move.seat, hand) }, move.seat, move.line);
    }
    case 'pass': {
      const dead = { ...play, discards: bagWith(discards, face, 1) };
      const tile = wall[drawn];
      if (tile === undefined) return over(dead, null, null);
      const seat = neighbour(from, 'right');
      const hand = { ...hands[seat], concealed: bagWith(hands[seat].concealed, tile, 1) };
      return {
        phase: 'turn',
        seat,
        hands: withSeat(hands, seat, hand),
        wall,
        drawn: drawn + 1,
        discards: dead.discards,
        turns,
      };
    }
  }
}
