// What the editor of cards says.
import { CARD_LIMITS, type CardProblem } from '../../../shared-engine/index.ts';
import type { Answers } from './meaning.ts';

export const EDITOR = {
  name: 'Name of the card',
  noName: 'A card needs a name. Until it has one it is called as before.',
  taken:
    'Another card is called so, and at a table nobody could tell the two apart. Give this one another name.',
  year: 'Year of the card, if a hand uses its digits',
  undo: 'Undo',
  redo: 'Redo',
  print: 'Print',
  help: 'How hands are typed',
  caution:
    'A printed card is somebody’s work. Type one only for your own use and only if you own it. What you type stays on this device unless you share it or play with it.',
  cautionRead: 'I understand',
  storing: {
    stored: 'Kept on this device.',
    changed: 'Keeping…',
    'changed-elsewhere':
      'This card has been changed in another tab. Nothing you do here is kept until you choose.',
    'removed-elsewhere':
      'This card has been deleted in another tab. What you see here is the last copy: keep it, or leave this page.',
    refused:
      'This browser does not store anything more, or nothing at all. Save the card as a file, so that it is not lost.',
  },
  takeOther: 'Go on with the other version',
  keepMine: 'Keep mine as a second card',
  keepAgain: 'Keep this card',
  totals: (ready: number, all: number, ways: number) =>
    all === 0
      ? 'No hand yet.'
      : `${ready === all ? `${all}` : `${ready} of ${all}`} ${all === 1 ? 'hand' : 'hands'} in, with ${ways.toLocaleString('en-US')} ways to make ${all === 1 ? 'it' : 'them'}.`,
  tooMany: (widest: readonly { readonly name: string; readonly ways: number }[]) =>
    `A card has at most ${CARD_LIMITS.hands.toLocaleString('en-US')} ways to make its hands, and these are more: tables cannot play with it, nor can it be checked. Leave less open where it is most: ${widest
      .map(({ name, ways }) => `${name} (${ways.toLocaleString('en-US')} ways)`)
      .join(', ')}.`,
  counting: 'Counting the ways to make the hands…',
  partial: 'Tables play with the hands that are ready; the review cannot see the rest.',
  missing: 'This card is not on this device.',
} as const;

export const SECTION = {
  name: (nth: number) => `Name of section ${nth}`,
  add: 'Add a section',
  newName: 'New section',
  up: 'Section up',
  down: 'Section down',
  remove: 'Delete the section',
  removeYes: 'Delete it with its hands',
  removeNo: 'Keep the section',
  addHand: 'Add a hand',
  full: `A card has at most ${CARD_LIMITS.patterns} hands in ${CARD_LIMITS.sections} sections.`,
} as const;

export const HAND = {
  of: (nth: number, section: string) => `Hand ${nth} of ${section}`,
  typed: 'The hand in one line',
  typedAbout: 'Enter goes on to the next hand.',
  example: 'An example',
  roll: 'Another example',
  empty: 'Lay the hand as it stands on your card: how many, then which tile.',
  tiles: (count: number) => `${count} of 14 tiles`,
  ways: (count: number) =>
    count === 1 ? '1 way to make it' : `${count.toLocaleString('en-US')} ways to make it`,
  counting: 'counting the ways…',
  points: 'Points',
  concealed: 'Concealed',
  duplicate: 'Duplicate',
  up: 'Hand up',
  down: 'Hand down',
  remove: 'Delete the hand',
  next: 'Next hand',
  close: 'Close',
  group: (nth: number, size: number, tile: string, meaning: string) =>
    `Group ${nth}: ${size} × ${tile}${meaning === '' ? '' : `, ${meaning}`}`,
  inGroup: (nth: number, message: string) => `Group ${nth}: ${message}`,
} as const;

export const PAD = {
  size: 'How many',
  suit: 'Suit',
  numbers: 'Number',
  honors: 'Wind, dragon, flower',
  zero: 'soap as a zero',
  zeroShort: 'as 0',
  year: (nth: number) => `digit ${nth} of the year`,
} as const;

export const GROUP = {
  title: (nth: number) => `Group ${nth}`,
  fewer: 'One tile fewer',
  more: 'One tile more',
  left: 'Move to the left',
  right: 'Move to the right',
  remove: 'Take the group out',
  done: 'Done',
  meant: 'What this group means',
} as const;

/** The questions in plain words, and their answers. */
export const ASK: {
  readonly [K in keyof Answers]: {
    readonly title: string;
    readonly answers: Readonly<Record<Answers[K], string>>;
  };
} = {
  numbers: {
    title: 'The numbers',
    answers: { row: 'any such row', exact: 'exactly these', own: 'any number of its own' },
  },
  suits: {
    title: 'The suits',
    answers: { any: 'any, alike where they are alike here', exact: 'exactly these' },
  },
  winds: { title: 'The winds', answers: { any: 'any', exact: 'exactly these' } },
  dragons: {
    title: 'The dragons',
    answers: { suit: 'each its suit’s own', any: 'any', exact: 'exactly these' },
  },
};

/** The same for one group. */
export const ASK_ONE: typeof ASK = {
  numbers: {
    title: 'The number',
    answers: { row: 'keeps its distance in the row', exact: 'exactly this', own: 'any number of its own' },
  },
  suits: { title: 'The suit', answers: { any: 'any', exact: 'exactly this' } },
  winds: { title: 'The wind', answers: { any: 'any', exact: 'exactly this' } },
  dragons: { title: 'The dragon', answers: { suit: 'its suit’s own', any: 'any', exact: 'exactly this' } },
};

export const LIMITS = {
  title: 'Only some of them?',
  about: 'Take away what may not be.',
  number: (name: string) => `${name} may be`,
  nth: (kind: 'suit' | 'wind' | 'dragon', nth: number) =>
    `${['First', 'Second', 'Third', 'Fourth'][nth - 1] ?? ''} ${kind} left open may be`,
} as const;

/** A problem of a hand in the words of the screen; the place is shown beside it. */
export function problemText({ code }: CardProblem, tiles: number): string {
  switch (code) {
    case 'not-14-tiles':
      return tiles < 14
        ? `Add ${14 - tiles === 1 ? '1 tile' : `${14 - tiles} tiles`}.`
        : `Take ${tiles - 14 === 1 ? '1 tile' : `${tiles - 14} tiles`} away.`;
    case 'number-out-of-range':
      return 'This number would leave 1 to 9. Change its step, or what the row may begin with.';
    case 'no-year':
      return 'It uses a digit of the year: give the card its year, above.';
    case 'no-choice':
      return 'No numbers, suits, winds or dragons fit all of it. Allow more of them.';
    case 'too-few-copies':
      return 'Singles and pairs want more of this tile than there are, and no joker may stand there. Want fewer, or rule that tile out.';
    case 'too-many-jokers':
      return 'It needs more than the eight jokers. Spread its tiles over more groups.';
    case 'too-many-hands':
      return 'There are too many ways to make it. Leave fewer things open.';
    default:
      return 'It leaves too much open. Leave fewer things open.';
  }
}
