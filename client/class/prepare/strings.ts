// What the page says where a teacher prepares a class.
import type { Drill } from '../../../shared-engine/index.ts';

export const PREPARE = {
  title: 'Prepare a class',
  about:
    'Everybody in the class is dealt the same tiles. You can stop all tables, show what was chosen, and discuss it.',
  drillTitle: 'What is this drill called?',
  untitled: 'Drill',
  deals: 'Deals',
  deal: (number: number, kind: string) => `Deal ${number}: ${kind}`,
  kinds: { random: 'random', manual: 'tiles you pick', sampled: 'fits a description' },
  addDeal: {
    random: 'Add a random deal',
    manual: 'Add a deal with tiles you pick',
    sampled: 'Add a deal that fits a description',
  },
  remove: 'Remove deal',
  dealTitle: 'Title of the deal, shown to everybody',
  texts: 'Texts for this deal',
  task: 'For the players, shown above their tiles',
  note: 'For yourself, shown only on your dashboard',
  dealer: 'The players are East and start with 14 tiles',
  scripted: 'What comes to the players in this deal is set: it came that way at a real table.',
  unscripted: 'Let the bots choose',
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
  pick: 'Tap tiles to put them on the rack. The rest of the rack is dealt at random.',
  rack: (count: number) => `Picked (${count})`,
  nothing: 'No tile is picked yet.',
  remove: (tile: string) => `Remove ${tile}`,
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
  any: 'any',
  atLeast: 'at least',
  exactly: 'exactly',
  atMost: 'at most',
} as const;

export const DEAL_PREVIEW = {
  working: 'Working it out…',
  show: 'Show the tiles',
  dealt: 'The players will hold:',
  another: 'Deal other tiles',
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
