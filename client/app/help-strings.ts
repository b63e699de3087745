// What the help says: the Charleston in brief, the tiles, the keys.
import type { Face, Step } from '../../shared-engine/index.ts';

export const HELP = {
  title: 'How to play',
  about:
    'Before anybody discards, the four players pass tiles they do not want. That is the Charleston, and you practice it here.',
  example: 'Try an example: two minutes',
  exampleBeside: 'Try an example in a new tab',
  exchange: 'The Charleston',
  words: 'What the words mean',
  class: 'With a teacher',
  tiles: 'The tiles',
  keys: 'With a keyboard',
} as const;

interface Part {
  readonly steps: readonly Step[];
  readonly title: string;
  readonly words: string;
}

export const EXCHANGE: readonly Part[] = [
  {
    steps: ['first-right', 'first-across', 'first-left'],
    title: 'Three passes for everybody',
    words:
      'Three tiles to the right, three across, three to the left. All four pass at once. You see what comes after your own three are gone. A joker is never passed.',
  },
  {
    steps: ['first-left', 'second-right'],
    title: 'The blind pass',
    words:
      'On the last pass of each Charleston you may pass blind. You send on one, two or three arriving tiles without looking, and keep as many of your own.',
  },
  {
    steps: ['vote'],
    title: 'Second Charleston?',
    words:
      'Each player answers in secret. If all four continue, there are three more passes. If one player stops, there are none.',
  },
  {
    steps: ['second-left', 'second-across', 'second-right'],
    title: 'Three more passes',
    words: 'The same in the other direction: left, across, right.',
  },
  {
    steps: ['courtesy-ask'],
    title: 'The courtesy',
    words: 'You and the player across from you each name a number, up to three. You swap the smaller number.',
  },
];

/** Words of the table and of the review that a newcomer meets. */
export const WORDS: readonly { readonly word: string; readonly about: string }[] = [
  {
    word: '7 away',
    about: 'Seven tiles are missing from that hand. Jokers count where they may stand. Smaller is closer.',
  },
  {
    word: 'Wins in 100 games',
    about:
      'Your chance to be the first of four with a hand. An even share would be 25 at most, as some games end with nobody winning.',
  },
  {
    word: 'Take it back',
    about:
      'Until the last of the four has passed, you can take your own pass back. Bots are often ready before you; then the tiles go at once.',
  },
  { word: 'Passers', about: 'Tiles that your closest hand does not need.' },
  {
    word: 'Steady player',
    about: 'A simple bot that your round is compared with. It always passes by one rule.',
  },
  {
    word: 'Your name',
    about: 'Alone you need none. Where you leave it empty, others read “Guest”; your own page says “You”.',
  },
];

/** The three forms of a class. */
export const CLASS_FORMS: readonly { readonly title: string; readonly words: string }[] = [
  {
    title: 'Each player alone',
    words:
      'Each player has a table of their own, with the same three bots and the same tiles. The same choices bring the same tiles.',
  },
  { title: 'Four at a table', words: 'Every table gets the same deal. Bots take the empty seats.' },
  {
    title: 'Step by step together',
    words:
      'After each step the teacher picks one choice. Everybody continues from it with the same tiles. Your own choice is kept for your review.',
  },
];

export const TILE_LEGEND: readonly { readonly faces: readonly Face[]; readonly words: string }[] = [
  { faces: ['bam-1', 'bam-5', 'bam-9'], words: 'Bams: stalks, 1 to 9' },
  { faces: ['crak-1', 'crak-5', 'crak-9'], words: 'Craks: a number over a crack, 1 to 9' },
  { faces: ['dot-1', 'dot-5', 'dot-9'], words: 'Dots: rings, 1 to 9' },
  { faces: ['east', 'south', 'west', 'north'], words: 'Winds' },
  {
    faces: ['green', 'red', 'white'],
    words: 'Dragons: green, red and white. The white one is also called soap and counts as zero.',
  },
  { faces: ['flower'], words: 'Flowers: all eight are alike' },
  { faces: ['joker'], words: 'Joker: stands in for any tile in a group of three or more' },
];

export const KEYS: readonly { readonly keys: string; readonly words: string }[] = [
  { keys: '← →', words: 'move along the rack' },
  { keys: 'Enter', words: 'puts a tile into the tray, or takes it out' },
  { keys: '1 2 3', words: 'take a tile back from the tray' },
  { keys: 'Shift and ← →', words: 'move the tile itself' },
];
