// How the page names the four seats, always from the place of the one who reads.
import {
  DIRECTIONS,
  type Direction,
  type NeighborNames,
  neighbor,
  type Seat,
  type SeatInfo,
  type Table,
} from '../../shared-engine/index.ts';
import { OWN_BOT, ROOM } from './strings.ts';
import { STYLE_NAMES } from './term-names.ts';

export function nameOf(table: Pick<Table, 'seats'>, seat: Seat): string {
  const info = table.seats[seat];
  return info.kind === 'empty' ? `seat ${seat + 1}` : info.name;
}

/** The name, or `you`. */
export function nameOrYou(table: Pick<Table, 'seats' | 'you'>, seat: Seat): string {
  return seat === table.you ? 'you' : nameOf(table, seat);
}

/** The players around a seat, where somebody sits there. */
export function neighborNames({ seats }: Pick<Table, 'seats'>, you: Seat): NeighborNames {
  const known = DIRECTIONS.flatMap((toward) => {
    const info = seats[neighbor(you, toward)];
    return info.kind === 'empty' ? [] : [[toward, info.name] as const];
  });
  return Object.fromEntries(known);
}

const PLACES: Readonly<Record<Direction, string>> = {
  right: 'on your right',
  across: 'across from you',
  left: 'on your left',
};

/** `on your left`; null for one's own seat. */
export function positionOf(you: Seat, seat: Seat): string | null {
  for (const direction of DIRECTIONS) {
    if (neighbor(you, direction) === seat) return PLACES[direction];
  }
  return null;
}

export function seatStatus(info: SeatInfo): string {
  switch (info.kind) {
    case 'empty':
      return 'free';
    case 'bot':
      if (info.external) return info.external.present ? OWN_BOT.here : OWN_BOT.away;
      return STYLE_NAMES[info.style].name.toLowerCase();
    case 'person':
      return awayWords(info) ?? 'here';
  }
}

/** Where seats are drawn: the one at the bottom, and on from there to the right. */
const DRAWN_AT = ['below', 'right', 'above', 'left'] as const;
export type Place = (typeof DRAWN_AT)[number];

/** The place of `seat` where `bottom` is drawn at the bottom. */
export function placeOf(seat: Seat, bottom: Seat): Place {
  return DRAWN_AT[(seat - bottom + 4) % 4] ?? 'below';
}

/** Null for whoever is there; otherwise until when the table waits, as far as it does. */
export function awayWords(info: SeatInfo): string | null {
  if (info.kind !== 'person' || info.present) return null;
  if (info.botFrom === undefined) return ROOM.away;
  return ROOM.awayUntil(new Date(info.botFrom).toLocaleTimeString('en-US', { timeStyle: 'short' }));
}
