// What the help says: the exchange in brief, the tiles, the keys.
import type { Face, Step } from '../../shared-engine/index.ts';

export const HELP = {
  title: 'How it goes',
  about:
    'Before anybody discards, the four players trade tiles they do not want. That trade is the Charleston, and it is what you practise here.',
  example: 'Try it on an example, two minutes',
  exampleBeside: 'Try it on an example, in a page beside this one',
  exchange: 'The exchange',
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
    title: 'Three passes that everybody makes',
    words:
      'Three tiles to the right, three across, three to the left. All four pass at once, and you see what comes only after your own three are gone. A joker is never passed.',
  },
  {
    steps: ['first-left', 'second-right'],
    title: 'Passing on unseen',
    words:
      'On the last pass of each Charleston you may send on one, two or three of the tiles that are coming, without a look, and keep as many of your own.',
  },
  {
    steps: ['vote'],
    title: 'Go on, or stop?',
    words: 'Each player says it in secret. Three more passes are made if all four go on; one stop ends it.',
  },
  {
    steps: ['second-left', 'second-across', 'second-right'],
    title: 'Three passes more',
    words: 'The same the other way round: left, across, right.',
  },
  {
    steps: ['courtesy-ask'],
    title: 'A last trade across',
    words: 'You and the player opposite each name a number up to three; the smaller number is traded.',
  },
];

/** The three ways in which a class sits. */
export const CLASS_FORMS: readonly { readonly title: string; readonly words: string }[] = [
  {
    title: 'Everybody alone',
    words:
      'Each player has a table with the same three bots and the same tiles; whoever chooses alike gets alike.',
  },
  { title: 'Four at a table', words: 'The same deal lies at every table; bots take the places nobody has.' },
  {
    title: 'One line of play',
    words:
      'After each step the teacher picks the choice all go on from, with the same tiles again. Your own choice is kept, and your review judges it.',
  },
];

export const TILE_LEGEND: readonly { readonly faces: readonly Face[]; readonly words: string }[] = [
  { faces: ['bam-1', 'bam-5', 'bam-9'], words: 'Bams: stalks, 1 to 9' },
  { faces: ['crak-1', 'crak-5', 'crak-9'], words: 'Craks: a numeral over a crack, 1 to 9' },
  { faces: ['dot-1', 'dot-5', 'dot-9'], words: 'Dots: rings, 1 to 9' },
  { faces: ['east', 'south', 'west', 'north'], words: 'Winds' },
  {
    faces: ['green', 'red', 'white'],
    words: 'Dragons: green, red, and white, which is also soap and counts as zero',
  },
  { faces: ['flower'], words: 'Flower: all eight are alike' },
  { faces: ['joker'], words: 'Joker: stands in for any tile of a group of three or more' },
];

export const KEYS: readonly { readonly keys: string; readonly words: string }[] = [
  { keys: '← →', words: 'move along the rack' },
  { keys: 'Enter', words: 'puts a tile into the tray, or takes it out' },
  { keys: '1 2 3', words: 'take a tile back from the tray' },
  { keys: 'Shift and ← →', words: 'move the tile itself' },
];
