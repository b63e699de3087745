// The phrases that every sentence of the review is made from.
import { type Actor, DIRECTIONS, type Direction, type Step } from '../../../rules/index.ts';
import { inTenths } from '../basis.ts';

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

/** "0.8 tiles closer on average". */
export function closerBy(loss: number): string {
  return `${inTenths(loss)} tiles closer on average`;
}

/** "2 of 5", "both", "all 5". */
export function shareOf(count: number, all: number): string {
  if (count < all) return `${count} of ${all}`;
  return count === 2 ? 'both' : `all ${count}`;
}

/** "about 7 more wins in 100 games"; below three in tenths, so that the words do not round a verdict away. */
export function moreWins(value: number): string {
  const shown = shownWins(value);
  return `about ${shown} more ${shown === '1' ? 'win' : 'wins'} in 100 games`;
}

/** "4 in 10", "hardly any", "nearly all". */
export function tenthsOf(share: number): string {
  if (tenths(share) === 0) return 'hardly any';
  return tenths(share) === 10 ? 'nearly all' : `${tenths(share)} in 10`;
}

export function tenths(share: number): number {
  return Math.round(10 * share);
}

/** "7 wins", "1.5 wins". */
export function winsOf(value: number): string {
  const shown = shownWins(value);
  return `${shown} ${shown === '1' ? 'win' : 'wins'}`;
}

/** "7", "1.5". */
export function shownWins(value: number): string {
  return value < 2.95 ? inTenths(value).replace('.0', '') : String(Math.round(value));
}

/** "4,096 times". */
export function times(count: number): string {
  return `${String(count).replace(/\B(?=(\d{3})+$)/g, ',')} times`;
}

export function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Who made a choice and whose rack it was: what somebody else chose is not called the player's. */
export interface Voice {
  readonly subject: string;
  readonly whose: string;
  /** The same where somebody else was spoken of in between. */
  readonly owner: string;
}

export const VOICES: Readonly<Record<Actor, Voice>> = {
  player: { subject: 'you', whose: 'your', owner: 'your' },
  'stand-in': { subject: 'your stand-in', whose: 'your', owner: 'your' },
  bot: { subject: 'the bot', whose: 'its', owner: 'the bot’s' },
};

const NEIGHBORS: Readonly<Record<Direction, string>> = {
  right: 'on the right',
  across: 'across',
  left: 'on the left',
};

/** "the player across": how every sentence speaks of a neighbor, so that one who is known can be named in its place. */
export function playerAt(toward: Direction): string {
  return `the player ${NEIGHBORS[toward]}`;
}

const ANY_PLAYER = new RegExp(DIRECTIONS.map(playerAt).join('|'), 'g');

/** The players around a seat by name, as far as they are known. */
export type NeighborNames = Readonly<Partial<Record<Direction, string>>>;

/** The sentence with the neighbors by name; one without a name stays "the player across". */
export function withNames(sentence: string, names: NeighborNames): string {
  return sentence.replace(ANY_PLAYER, (player) => {
    const toward = DIRECTIONS.find((direction) => playerAt(direction) === player);
    return (toward && names[toward]) ?? player;
  });
}

/** Each step as a sentence names it. */
export const STEP_PHRASES: Readonly<Record<Step, string>> = {
  'first-right': 'the first pass to the right',
  'first-across': 'the first pass across',
  'first-left': 'the first pass to the left',
  vote: 'the vote on a second Charleston',
  'second-left': 'the second pass to the left',
  'second-across': 'the second pass across',
  'second-right': 'the second pass to the right',
  'courtesy-ask': 'the number to ask for in the courtesy',
  'courtesy-pass': 'the courtesy pass',
};
