// What bots are called at the table, and which style plays where nobody chose one.
import type { Seat, StyleName } from '../../shared-engine/index.ts';

/** First names of our own invention, five a seat, so that no bot has to share its name with a person. */
const NAMES: readonly (readonly [string, string, string, string, string])[] = [
  ['Ines', 'Alba', 'Jonte', 'Merle', 'Runa'],
  ['Tomas', 'Bela', 'Kaja', 'Nuno', 'Sixten'],
  ['Wilma', 'Cato', 'Linus', 'Orla', 'Tilda'],
  ['Odo', 'Dunja', 'Malte', 'Pia', 'Ulla'],
];

/** Plays on an empty seat and for a holder who does not choose in time. */
export const FILL_IN_STYLE: StyleName = 'typical';

/** The first of the seat's names that nobody at the table has; four people cannot use up five names. */
export function botName(seat: Seat, taken: readonly string[]): string {
  const names = NAMES[seat]!;
  return names.find((name) => !taken.includes(name)) ?? names[0];
}
