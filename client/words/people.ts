// How the page names the four seats, always from the place of the one who reads.
import {
  type Direction,
  neighbour,
  type Seat,
  type SeatInfo,
  type StyleName,
  type Table,
} from '../../shared-engine/index.ts';

export function nameOf(table: Pick<Table, 'seats'>, seat: Seat): string {
  const info = table.seats[seat];
  return info.kind === 'empty' ? `seat ${seat + 1}` : info.name;
}

/** The name, or `you`. */
export function nameOrYou(table: Pick<Table, 'seats' | 'you'>, seat: Seat): string {
  return seat === table.you ? 'you' : nameOf(table, seat);
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const PLACES: Readonly<Record<Direction, string>> = {
  right: 'on your right',
  across: 'across from you',
  left: 'on your left',
};

/** `on your left`; null for one's own seat. */
export function placeOf(you: Seat, seat: Seat): string | null {
  for (const direction of ['right', 'across', 'left'] as const) {
    if (neighbour(you, direction) === seat) return PLACES[direction];
  }
  return null;
}

export const STYLE_WORDS: Readonly<Record<StyleName, { readonly name: string; readonly about: string }>> = {
  casual: { name: 'Easy-going', about: 'plays by feel and changes its mind' },
  typical: { name: 'Club evening', about: 'passes what most players pass' },
  strong: { name: 'Keen', about: 'keeps the best it can for itself' },
  guarded: { name: 'Careful', about: 'hands you as little as it can' },
  random: { name: 'Blindfold', about: 'passes without looking' },
};

export function seatState(info: SeatInfo): string {
  switch (info.kind) {
    case 'empty':
      return 'free';
    case 'bot':
      return `bot, ${STYLE_WORDS[info.style].name.toLowerCase()}`;
    case 'person':
      return info.present ? 'here' : 'away, the seat is kept';
  }
}
