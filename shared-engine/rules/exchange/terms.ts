// The ways to play that a table fixes before the deal (rules W1–W6, Z2), and what cannot be played here.
import type { Seat } from '../deal/seat.ts';
import { type RoundRejection, reject } from './rejection.ts';

/** How a table came about: by one person for bots, by one for friends, or as a table of a class. */
export const MODES = ['alone', 'friends', 'class'] as const;
export type Mode = (typeof MODES)[number];

/** Who is East: the deal rotates, or it is always or never the seat of whoever plays alone (rule W1). */
export const EAST_WAYS = ['in-turn', 'always', 'never'] as const;
/** Whether the second Charleston takes place (rule W2). */
export const SECOND_CHARLESTON_WAYS = ['by-vote', 'always', 'none'] as const;
/** Whether opposite seats ask for a courtesy pass (rule W4). */
export const COURTESY_WAYS = ['by-asking', 'none'] as const;
/** How long bots pause before they choose (rule W5). */
export const BOT_PACES = ['slow', 'usual', 'quick'] as const;
/** In which order the card lies on the table: as printed, the nearest hands first, or not at all (rule W6). */
export const CARD_HELP_WAYS = ['printed', 'nearest', 'none'] as const;

/** Fixed before the deal, shown to all, and part of what is committed to (rule D4). */
export interface Terms {
  readonly whoIsEast: (typeof EAST_WAYS)[number];
  readonly secondCharleston: (typeof SECOND_CHARLESTON_WAYS)[number];
  /** Whether arriving tiles may be passed on blind (rule W3). */
  readonly blindPasses: boolean;
  readonly courtesy: (typeof COURTESY_WAYS)[number];
  /** Seconds for each step, or null for no deadline (rules K1, W5). */
  readonly deadline: number | null;
  readonly botPace: (typeof BOT_PACES)[number];
  readonly cardHelp: (typeof CARD_HELP_WAYS)[number];
  /** Whether the table shows what has passed so far (rule W6). */
  readonly passLog: boolean;
  /** Whether all racks are revealed after the close (rule Z2). */
  readonly revealRacks: boolean;
}

const PACES: Readonly<Record<Terms['botPace'], number>> = { slow: 2.5, usual: 1, quick: 0.4 };

/** Milliseconds for which the bot at this seat pauses before it chooses: one after the other, as people would (rule W5). */
export function botPause({ botPace }: Pick<Terms, 'botPace'>, seat: Seat, usual: number): number {
  return Math.round(usual * PACES[botPace] * (1 + seat / 4));
}

/** The part of the terms that decides which steps there are and what may be chosen in them. */
export type ExchangeTerms = Pick<Terms, 'secondCharleston' | 'blindPasses' | 'courtesy'>;

const USUAL = {
  whoIsEast: 'in-turn',
  secondCharleston: 'by-vote',
  blindPasses: true,
  courtesy: 'by-asking',
  deadline: null,
  botPace: 'usual',
} as const;

/** How a table plays that agrees on nothing else, by who sits at it (rules W1–W6, Z2). */
export const STANDARD_TERMS = {
  friends: { ...USUAL, cardHelp: 'printed', passLog: false, revealRacks: false },
  alone: { ...USUAL, cardHelp: 'nearest', passLog: true, revealRacks: true },
  class: { ...USUAL, cardHelp: 'nearest', passLog: true, revealRacks: false },
} as const satisfies Readonly<Record<Mode, Terms>>;

/** Terms as they are asked for: what is not named is as usual. The last three are known so that they can be refused. */
export type AskedTerms = Partial<Omit<Terms, 'courtesy'>> & {
  readonly courtesy?: Terms['courtesy'] | 'pot';
  readonly players?: number;
  readonly blankTiles?: number;
};

/** The terms of a table; a rejection where it could not play by them. */
export function termsFrom(
  asked: AskedTerms,
  mode: Mode,
): { readonly ok: true; readonly terms: Terms } | RoundRejection {
  const { courtesy, players = 4, blankTiles = 0, ...ways } = asked;
  if (players !== 4) return reject('not-four-players');
  if (blankTiles !== 0) return reject('blank-tiles');
  if (courtesy === 'pot') return reject('pot-for-courtesy');
  const terms: Terms = { ...STANDARD_TERMS[mode], ...ways, ...(courtesy && { courtesy }) };
  if (terms.whoIsEast !== 'in-turn' && mode !== 'alone') return reject('east-not-in-turn');
  return { ok: true, terms };
}
