// Small turns of phrase that every sentence of the review is made from.
import type { Actor } from '../../../rules/exchange/round.ts';
import type { Step } from '../../../rules/exchange/schedule.ts';

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

/** "1 tile", "2 tiles", "0.8 tiles". */
export function tilesOf(count: string | number): string {
  return `${count} ${String(count) === '1' ? 'tile' : 'tiles'}`;
}

/** "2 of 5", "both", "all 5". */
export function shareOf(count: number, all: number): string {
  if (count < all) return `${count} of ${all}`;
  return count === 2 ? 'both' : `all ${count}`;
}

/** How many of the families near before a pass are still near after it. */
export function familiesLeft(kept: number, all: number): string {
  if (all === 1) return kept === 1 ? 'left the one family near within reach' : 'let the one family near go';
  return kept === 0
    ? `left none of the ${all} families within reach`
    : `left ${shareOf(kept, all)} families within reach`;
}

export function startingBig(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Who made a choice and whose rack it was: what somebody else chose is not laid at the owner's door. */
export interface Voice {
  readonly subject: string;
  readonly whose: string;
}

export const VOICES: Readonly<Record<Actor, Voice>> = {
  owner: { subject: 'you', whose: 'your' },
  'stand-in': { subject: 'your stand-in', whose: 'your' },
  bot: { subject: 'the bot', whose: 'its' },
};

/** Each step as a sentence names it. */
export const STEP_NAMES: Readonly<Record<Step, string>> = {
  'first-right': 'the first pass to the right',
  'first-across': 'the first pass across',
  'first-left': 'the first pass to the left',
  vote: 'the vote',
  'second-left': 'the second pass to the left',
  'second-across': 'the second pass across',
  'second-right': 'the second pass to the right',
  'courtesy-ask': 'the question how many to ask for across',
  'courtesy-pass': 'the courtesy pass',
};
