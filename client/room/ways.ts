// The ways to play as a player reads them: what can be chosen for each (rules W1–W6, Z2), and the line that tells the table.
import { type Mode, STANDARD_TERMS, type Terms } from '../../shared-engine/index.ts';
import { DEADLINES } from '../storage/ways.ts';

export interface WayOption {
  readonly part: Partial<Terms>;
  /** In the form. */
  readonly label: string;
  /** One line for everybody at the table. */
  readonly says: string;
}

export interface Way {
  readonly name: keyof Terms;
  readonly title: string;
  readonly options: readonly WayOption[];
}

/** `30 seconds`, `2 minutes`. */
export function duration(seconds: number): string {
  return seconds < 120 ? `${seconds} seconds` : `${seconds / 60} minutes`;
}

const EAST: Way = {
  name: 'whoIsEast',
  title: 'East',
  options: [
    { part: { whoIsEast: 'in-turn' }, label: 'in turn', says: 'East goes in turn.' },
    { part: { whoIsEast: 'always' }, label: 'always you', says: 'You are always East.' },
    { part: { whoIsEast: 'never' }, label: 'never you', says: 'You are never East.' },
  ],
};

const SECOND_CHARLESTON: Way = {
  name: 'secondCharleston',
  title: 'Second Charleston',
  options: [
    {
      part: { secondCharleston: 'by-vote' },
      label: 'if all agree',
      says: 'The second Charleston takes place if all four agree.',
    },
    {
      part: { secondCharleston: 'always' },
      label: 'always',
      says: 'The second Charleston always takes place.',
    },
    { part: { secondCharleston: 'none' }, label: 'never', says: 'There is no second Charleston.' },
  ],
};

const BLIND: Way = {
  name: 'blindPasses',
  title: 'Blind passes',
  options: [
    { part: { blindPasses: true }, label: 'allowed', says: 'Arriving tiles may be passed on blind.' },
    { part: { blindPasses: false }, label: 'not allowed', says: 'Nobody passes blind.' },
  ],
};

const COURTESY: Way = {
  name: 'courtesy',
  title: 'Courtesy pass',
  options: [
    { part: { courtesy: 'by-asking' }, label: 'by asking', says: 'A courtesy pass, by asking, comes last.' },
    { part: { courtesy: 'none' }, label: 'none', says: 'There is no courtesy pass.' },
  ],
};

const DEADLINE: Way = {
  name: 'deadline',
  title: 'Time for each step',
  options: DEADLINES.map((deadline) =>
    deadline === null
      ? { part: { deadline }, label: 'no limit', says: 'Each step takes as long as you like.' }
      : {
          part: { deadline },
          label: duration(deadline),
          says: `Each step takes at most ${duration(deadline)}.`,
        },
  ),
};

const BOT_PACE: Way = {
  name: 'botPace',
  title: 'Bots',
  options: [
    { part: { botPace: 'slow' }, label: 'take their time', says: 'The bots take their time.' },
    { part: { botPace: 'usual' }, label: 'usual pace', says: 'The bots play at the usual pace.' },
    { part: { botPace: 'quick' }, label: 'quick', says: 'The bots are quick.' },
  ],
};

const CARD_HELP: Way = {
  name: 'cardHelp',
  title: 'Card on the table',
  options: [
    {
      part: { cardHelp: 'nearest' },
      label: 'closest hands first',
      says: 'The card shows your closest hands first.',
    },
    {
      part: { cardHelp: 'printed' },
      label: 'in its own order',
      says: 'The card lies there in its own order.',
    },
    { part: { cardHelp: 'none' }, label: 'no card', says: 'There is no card on the table.' },
  ],
};

const PASS_LOG: Way = {
  name: 'passLog',
  title: 'What has passed',
  options: [
    { part: { passLog: true }, label: 'can be looked up', says: 'You can look up what has passed.' },
    { part: { passLog: false }, label: 'is not listed', says: 'What has passed is not listed.' },
  ],
};

const REVEAL_RACKS: Way = {
  name: 'revealRacks',
  title: 'Racks at the end',
  options: [
    { part: { revealRacks: false }, label: 'stay private', says: 'Racks stay private at the end.' },
    { part: { revealRacks: true }, label: 'are shown', says: 'All four racks are shown at the end.' },
  ],
};

const EXCHANGE = [SECOND_CHARLESTON, BLIND, COURTESY] as const;
const HELP = [CARD_HELP, PASS_LOG] as const;

/** What may be chosen, by who plays; the racks of a table alone are always shown, and a class has a clock of its own. */
export const WAYS_OF: Readonly<Record<Mode, readonly Way[]>> = {
  alone: [EAST, ...EXCHANGE, DEADLINE, BOT_PACE, ...HELP],
  friends: [...EXCHANGE, DEADLINE, BOT_PACE, ...HELP, REVEAL_RACKS],
  class: [...EXCHANGE, ...HELP],
};

const ALL: readonly Way[] = [EAST, ...EXCHANGE, DEADLINE, BOT_PACE, ...HELP, REVEAL_RACKS];

export function optionOf({ name, options }: Way, terms: Terms): WayOption | undefined {
  return options.find(({ part }) => part[name] === terms[name]);
}

export interface WayLine {
  readonly says: string;
  /** Whether this is the way that such a table usually plays. */
  readonly usual: boolean;
}

/** How a table plays, one line a way; first what is not usual. */
export function waysInWords(terms: Terms, mode: Mode): readonly WayLine[] {
  const lines = ALL.flatMap((way) => {
    const says = optionOf(way, terms)?.says;
    return says === undefined ? [] : [{ says, usual: isUsual(way, terms, mode) }];
  });
  return [...lines.filter(({ usual }) => !usual), ...lines.filter(({ usual }) => usual)];
}

/** How many ways differ from those that such a table usually plays by. */
export function unusualCount(terms: Terms, mode: Mode): number {
  return WAYS_OF[mode].filter((way) => !isUsual(way, terms, mode)).length;
}

function isUsual({ name }: Way, terms: Terms, mode: Mode): boolean {
  return terms[name] === STANDARD_TERMS[mode][name];
}

/** The part of a table's terms that a drill fixes. */
export function drillWaysOf({ secondCharleston, blindPasses, courtesy, cardHelp, passLog }: Terms) {
  return { secondCharleston, blindPasses, courtesy, cardHelp, passLog };
}
