// What the page says about the rounds that this browser stores.
import type { HistoryFileProblem, RoundSummary } from '../../../shared-engine/index.ts';
import type { StorageProblem } from '../../storage/history/database.ts';
import { noonOf } from '../dates.ts';

export const ROUNDS = {
  title: 'My rounds',
  about: 'Every round you play here is stored in this browser. Nobody else sees it.',
  habits: 'What keeps costing me',
  none: 'No finished rounds yet. Play one to its end, and it will be here.',
  opening: 'Looking for your rounds…',
  sort: 'Show them by',
  sorts: { day: 'day', table: 'table', card: 'card' },
  unfinished: 'Unfinished',
  goOn: 'Go on with this round',
  takeOff: 'Remove',
  open: 'Review',
  remove: 'Delete',
  removed: (count: number) => `${capital(roundCount(count))} deleted.`,
  undo: 'Put back',
  understood: 'I have read this',
  more: 'Show more',
  keep: 'Save them',
  keepAbout:
    'A browser can lose what it stores. Save your rounds as a file now and then, or take them to another device.',
  save: 'Save all as a file',
  add: 'Add rounds from a file',
  adding: 'Reading the file…',
  removeAll: 'Delete all rounds',
  removeAllYes: 'Yes, delete all of them',
  removeAllNo: 'No, keep them',
  mayVanish: 'This browser may delete them when it runs short of room. Save them as a file.',
  looking: (left: number) =>
    left === 1 ? 'Still looking at one round…' : `Still looking at ${left} rounds…`,
  again: 'Play this deal again',
  past: (when: string) => `A round of ${when}`,
  back: 'Back to my rounds',
  notHere: 'This round is not stored in this browser.',
  noCard: 'The card of this round is not stored here, so its review cannot be made again.',
} as const;

export const STORAGE_PROBLEMS: Readonly<Record<StorageProblem, string>> = {
  refused: 'This browser does not let the page store rounds. A private window often does not.',
  'other-tab': 'Another tab has an older version of this page open. Close it, then open this page again.',
  newer: 'A newer version of this page has stored rounds here. Reload this page to get it.',
  full: 'This browser has no room left, so your last round is not stored. Save your rounds as a file and delete some.',
};

export function forgotten(count: number): string {
  return `This browser has lost ${roundCount(count)}. If you saved a file, add it below.`;
}

export function fileProblem(problem: HistoryFileProblem): string {
  switch (problem.code) {
    case 'foreign':
      return 'This file holds no rounds of Quadrille. Choose the file that you saved on this page.';
    case 'later':
      return 'This file comes from a newer version of the page. Reload this page, then try again.';
    case 'torn':
      return 'The end of this file is missing. Save it again on the other device, or copy it again.';
    case 'too-large':
      return 'This file is too large to be a history: ten thousand rounds take less than 100 MB.';
    case 'damaged':
      return `This file has been changed or damaged, in line ${problem.line}. Nothing of it was added.`;
  }
}

export function merged(added: number, known: number): string {
  const here =
    known === 0 ? '' : ` ${capital(roundCount(known))} ${known === 1 ? 'was' : 'were'} here already.`;
  return `${capital(roundCount(added))} added.${here}`;
}

function roundCount(count: number): string {
  return count === 1 ? 'one round' : count === 0 ? 'no round' : `${count} rounds`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export function placeName({
  place,
  table,
  number,
}: Pick<RoundSummary, 'place' | 'table' | 'number'>): string {
  switch (place) {
    case 'alone':
      return `Alone at table ${table}, deal ${number}`;
    case 'friends':
      return `Table ${table}, deal ${number}`;
    case 'class':
      return `In a class, deal ${number}`;
    case 'page':
      return 'Alone, without the server';
    case 'day':
      return `Deal of the day, ${dayName(noonOf(table))}`;
    case 'tiles':
      return 'With real tiles';
  }
}

/** What the review found, in a few words: as many costly choices as the review itself shows, and how many had the coach. */
export function findings({ choices, helped = [] }: Pick<RoundSummary, 'choices' | 'helped'>): string {
  const costly = choices.filter(({ by, verdict }) => verdict === 'costly' && by === 'player');
  const aided = costly.filter(({ step }) => helped.includes(step)).length;
  const whole = choices.length > 0 && choices.every(({ verdict }) => verdict !== null);
  const none = whole ? 'No costly choice' : 'Review not finished';
  const many = costly.length === 1 ? 'One costly choice' : `${costly.length} costly choices`;
  const found = costly.length === 0 ? none : many;
  if (aided > 0)
    return `${found}, ${costly.length === 1 ? 'with the coach’s help' : `${aided} of them with the coach’s help`}`;
  if (helped.length === 0) return found;
  return `${found}, coach asked ${helped.length === 1 ? 'once' : `${helped.length} times`}`;
}

/** Made once: making one takes longer than thousands of days. */
const DAY_FORMAT = new Intl.DateTimeFormat('en-US', {
  weekday: 'long',
  month: 'long',
  day: 'numeric',
  year: 'numeric',
});
const TIME_FORMAT = new Intl.DateTimeFormat('en-US', { hour: 'numeric', minute: '2-digit' });

/** `Thursday, November 26, 2026`. */
export function dayName(time: Date): string {
  return DAY_FORMAT.format(time);
}

/** `7:05 PM`. */
export function clockTime(time: number): string {
  return TIME_FORMAT.format(time);
}
