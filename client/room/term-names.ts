// What the terms of a table are called: the styles of the bots, the time for a step, and ways to play that are not usual.
import { STANDARD_TERMS, type StyleName, type Terms } from '../../shared-engine/index.ts';

export const STYLE_NAMES: Readonly<Record<StyleName, { readonly name: string; readonly about: string }>> = {
  casual: { name: 'Easy-going', about: 'passes by feel and changes its mind' },
  typical: { name: 'Club player', about: 'passes what most players pass' },
  strong: { name: 'Strong', about: 'keeps the best it can for itself' },
  guarded: { name: 'Careful', about: 'gives you as little as it can' },
  thoughtful: { name: 'Thoughtful', about: 'tries out each pass before it chooses' },
  random: { name: 'Random', about: 'passes without looking' },
};

/** `30 seconds`, `2 minutes`. */
export function duration(seconds: number): string {
  return seconds < 120 ? `${seconds} seconds` : `${seconds / 60} minutes`;
}

const NOT_USUAL = {
  whoIsEast: { always: 'you are always East', never: 'you are never East' },
  secondCharleston: {
    always: 'the second Charleston always takes place, without a vote',
    none: 'no second Charleston',
  },
  courtesy: { none: 'no courtesy pass' },
  botPace: { slow: 'the bots take their time', quick: 'the bots are quick' },
  cardHelp: {
    nearest: 'the card shows your closest hands first',
    printed: 'the card is in its own order',
    none: 'no card on the table',
  },
} as const;

/** How this table plays where friends usually play otherwise, as one sentence; nothing where it plays as usual. */
export function unusualWays(terms: Terms): string {
  const usual = STANDARD_TERMS.friends;
  const ways = [
    terms.whoIsEast !== 'in-turn' && NOT_USUAL.whoIsEast[terms.whoIsEast],
    terms.secondCharleston !== 'by-vote' && NOT_USUAL.secondCharleston[terms.secondCharleston],
    !terms.blindPasses && 'no blind passes',
    terms.courtesy !== 'by-asking' && NOT_USUAL.courtesy[terms.courtesy],
    terms.botPace !== 'usual' && NOT_USUAL.botPace[terms.botPace],
    terms.cardHelp !== usual.cardHelp && NOT_USUAL.cardHelp[terms.cardHelp],
    terms.passLog !== usual.passLog && 'you can look up what has passed',
  ].filter((way) => way !== false);
  return ways.length === 0 ? '' : `How this table plays: ${ways.join('; ')}.`;
}
