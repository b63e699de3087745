// What the page says where a teacher prepares a class.
import { DRILL_LIMITS, type Drill, type DrillDeal } from '../../../shared-engine/index.ts';
import type { SaveState } from './autosave.ts';

export const PREPARE = {
  title: 'Prepare a class',
  about:
    'Everybody in the class is dealt the same tiles. You can stop all tables, show what was chosen, and discuss it.',
  opening: 'Opening the drill…',
  gone: 'This drill is not on this device. Open My classes and drills, or use a drill file.',
  drill: 'The drill',
  drillTitle: 'What is this drill called?',
  group: 'Which group is it for? (for your own lists, on this device only)',
  untitled: 'Drill',
  open: 'Open the class',
  save: 'Save the drill as a file',
  load: 'Use a drill file',
  saveWithCard: 'I may pass it on: save with the card',
  saveWithout: 'Save without the card',
  cardCarried: (name: string) => `${name} came with the drill and will be used for this class.`,
  problems: 'Please correct this first:',
  otherCard: 'This card cannot be used; the house card is used instead.',
  otherFile: 'This file cannot be used as it is. Nothing was changed.',
  cardChosen: (name: string) => `${name} will be used for this class.`,
} as const;

const SAVE_WORDS: Readonly<Record<SaveState, string>> = {
  'not-stored': 'What you change is kept on this device as you go.',
  storing: 'Keeping it on this device…',
  stored: 'Kept on this device.',
  refused: 'This browser does not let the page keep drills. Save the drill as a file before you leave.',
  'other-tab': 'Another tab has an older version of this page open. Close it, or save the drill as a file.',
  newer: 'A newer version of this page has been here. Save the drill as a file, then reload this page.',
  full: 'This browser has no room left. Save the drill as a file before you leave.',
};

export function savedWords(state: SaveState): string {
  return SAVE_WORDS[state];
}

export const DEALS = {
  title: (count: number) => `Deals (${count})`,
  add: {
    random: 'Add a random deal',
    manual: 'Add a deal with tiles you pick',
    sampled: 'Add a deal that fits a description',
  },
  kinds: { random: 'random', manual: 'tiles you pick', sampled: 'fits a description' },
  up: (number: number) => `Move deal ${number} up`,
  down: (number: number) => `Move deal ${number} down`,
  copy: 'Copy this deal',
  remove: 'Remove deal',
  removed: (number: number) => `Deal ${number} is removed.`,
  undo: 'Undo',
  dealTitle: 'Title of the deal, shown to everybody',
  texts: 'Texts for this deal',
  task: 'For the players, shown above their tiles',
  note: 'For yourself, shown only on your dashboard',
  dealer: 'The players are East and start with 14 tiles',
  scripted: 'What comes to the players in this deal is set, as you set it or as it came at a real table.',
  unscripted: 'Let the bots choose',
} as const;

export const LESSON_FORM = {
  title: 'Or share it as a lesson',
  about:
    'Write what you would choose, and why, step by step in each deal above. Your players choose first at each step, then they see your choice, your words and the judge’s numbers. The whole lesson is in its link or file: no server stores it, it works without a connection and never ends.',
  make: 'Make the lesson',
  link: 'Link to the lesson',
  copied: 'Copied. Whoever has the link has the whole lesson, hidden tiles too.',
  file: 'Save the lesson as a file',
  look: 'Play it along, or print it',
  scan: 'Scan to open the lesson',
  scanAbout: 'The link to the lesson as a square code for a camera',
  tooLarge: 'The link is too long for a square code. Send it, or the file.',
} as const;

export const COMMENTS = {
  title: 'What you would choose, and why',
  about:
    'For a drill that you publish, or a lesson: players read it when they have chosen there themselves. Say what stands out, what you keep, what you pass and why, and what would change your mind. Tiles that you name, such as 2 bam, soap or red dragon, are drawn. For a lesson, begin at the first step and go on from step to step as far as you like.',
  step: 'Step',
  has: '(written)',
  tiles: 'The tiles you would pass',
  came: 'What came',
  blind: (count: number) =>
    count === 1 ? 'You pass one more tile blind.' : `You pass ${count} more tiles blind.`,
  next: (step: string) => `Next step: ${step}`,
  choice: 'Your choice',
  none: 'Say nothing',
  words: 'Your words',
  fits: (letters: number) => `${letters} of ${DRILL_LIMITS.note} letters`,
  arrival: 'What comes back with this pass',
  arrivalAbout:
    'Whatever is passed, these tiles come. Players see that you set them. Left empty, the bots choose.',
} as const;

/** `Deal 2: Two pairs`; without a title, how it was made. */
export function dealName(number: number, { title, tiles }: Pick<DrillDeal, 'title' | 'tiles'>): string {
  return `Deal ${number}: ${title ?? DEALS.kinds[tiles.kind]}`;
}

export const CLASS_FORM = {
  form: 'How the class plays',
  forms: {
    alone: {
      name: 'Everybody alone, with the same three bots.',
      about: 'The same choices bring everybody the same tiles.',
    },
    tables: {
      name: 'Four players at each table.',
      about: 'Every table gets the same deal; bots fill the empty seats.',
    },
    guided: {
      name: 'Everybody alone, in guided deals.',
      about:
        'After each step you pick one choice, and everybody continues from it with the same tiles. Each player’s own choices are kept for the review.',
    },
  },
  bots: 'Bots',
  ways: 'How the tables play',
  deadline: 'Time for each step',
  noDeadline: 'No limit',
  racks: 'You see the players’ racks while they choose, and every choice in the report',
  names: 'Your report names each player, and shows a choice even if only one player made it',
  cardClosed: 'Players choose without seeing the card',
  coach: 'Players may ask the coach before they choose',
  takeHome: 'Players may play the deals again at home, when everybody has finished them',
  anonymous: {
    about:
      'You will not find out who chose what. You get the numbers of a step once, when everybody has chosen or when you reveal it; each number counts three or more players.',
    few: 'With fewer than six players there will be no numbers.',
    fewAtTables:
      'Each seat is counted by itself: with fewer than 24 players, six a seat, there will be no numbers.',
    instead: 'To see everything in a small class, let the report name players, or look at the racks.',
  },
  told: 'Every player is told all of this before the first deal.',
} as const;

/** What a teacher reads who leaves both names and racks closed. */
export function anonymitySentences(form: Drill['form']): readonly string[] {
  const { about, few, fewAtTables, instead } = CLASS_FORM.anonymous;
  return [about, form === 'tables' ? fewAtTables : few, instead];
}

export const PICKER = {
  pick: 'Whatever you do not pick is dealt at random.',
  rack: 'The players’ rack',
} as const;

export const CONSTRAINT = {
  title: 'What should the rack hold?',
  about: 'Leave a row on “any” where it does not matter.',
  amounts: {
    jokers: 'Jokers',
    flowers: 'Flowers',
    pairs: 'Pairs, pungs and kongs',
    inARow: 'Numbers in a row in one suit',
    likeNumbers: 'Like numbers in two or three suits',
    toGo: 'Tiles to go to the closest hand',
  },
  section: 'Closest section of the card',
  anything: 'Any rack; say below what it should hold.',
  any: 'any',
  atLeast: 'at least',
  exactly: 'exactly',
  atMost: 'at most',
} as const;

export const DEAL_PREVIEW = {
  working: 'Working it out…',
  dealt: 'The players will hold:',
  another: 'Deal other tiles',
  judge: 'Judge this rack',
  judging: 'Playing the first pass on many times…',
  nothing: 'There is no tile to pass in this rack.',
  betterPass: 'Better:',
  search: 'Find a deal with a lesson',
  searched: (tried: number, of: number) => `Checked ${tried} of at most ${of} deals.`,
  cancel: 'Stop searching',
  none: (tried: number) =>
    `In ${tried} deals no first pass was clearly better than the typical one. Search again, or change the deal.`,
  typical: 'Most would pass',
  better: 'Clearly better:',
  difference: (value: string, low: string, high: string) =>
    `${value} more wins in 100 games (${low} to ${high}).`,
  failed: 'This browser could not work it out. You can open the class all the same.',
} as const;
