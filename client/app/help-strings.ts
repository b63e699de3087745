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
  reviewWords: 'Words of the review and the coach',
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

interface Word {
  readonly word: string;
  readonly about: string;
}

/** Words of the table that a newcomer meets. */
export const WORDS: readonly Word[] = [
  {
    word: '7 away',
    about: 'Seven tiles are missing from that hand. Jokers count where they may stand. Smaller is closer.',
  },
  {
    word: 'Take it back',
    about:
      'Until the last of the four has passed, you can take your own pass back. Bots are often ready before you; then the tiles go at once.',
  },
  { word: 'East', about: 'The dealer. East gets 14 tiles, one more than the others, and discards first.' },
  {
    word: 'Section',
    about: 'A part of the card with hands of one kind. Each has a name, and you may aim for one or two.',
  },
  {
    word: 'Concealed',
    about: 'A concealed hand is built from your own tiles alone. Only its last tile may be a discard.',
  },
  {
    word: 'Pair, pung, kong, quint',
    about: 'Two, three, four and five tiles that are alike.',
  },
  {
    word: 'Like numbers',
    about: 'The same number in more than one suit, such as 3 bam and 3 dot.',
  },
  {
    word: 'Your name',
    about: 'Alone you need none. Where you leave it empty, others read “Guest”; your own page says “You”.',
  },
];

/** Words that the review and the coach use, and that are used nowhere else in quite that sense. */
export const REVIEW_WORDS: readonly Word[] = [
  {
    word: 'Wins in 100 games',
    about:
      'Your chance to be the first of four with a hand. An even share would be 25 at most, as some games end with nobody winning.',
  },
  {
    word: 'Closest hands',
    about: 'The hands on the card that miss the fewest tiles from your rack. There may be many of them.',
  },
  {
    word: 'Within reach',
    about:
      'Near enough to aim for. A section is within reach if one of its hands is at most one tile farther away than the closest.',
  },
  {
    word: 'Likeliest hands',
    about:
      'The hands that are reached most often when we play on from your rack many times. They are not always the closest ones.',
  },
  {
    word: 'Serves a hand',
    about:
      'A tile serves a hand that has a place for it. Tiles that serve few of your likeliest hands are the ones to pass.',
  },
  { word: 'Passers', about: 'Tiles that your closest hand does not need.' },
  {
    word: 'Risky to pass',
    about:
      'Tiles that may help the player who gets them, such as a pair. What they bring there can cost you the game.',
  },
  {
    word: 'Rule of thumb',
    about: 'What many players go by, such as never to pass a pair. It fits most racks, and not every one.',
  },
  {
    word: 'At first look',
    about:
      'Our first answer, and a rough one. It counts how close your tiles come to a hand; nothing is played on yet.',
  },
  {
    word: 'Played on',
    about:
      'We finish the round from your choice many times, each time with other racks that the others could have. Then we count the wins.',
  },
  { word: 'The close', about: 'The end of the exchange: all passes are over, and the game would begin.' },
  {
    word: 'Steady player',
    about: 'A simple bot that your round is compared with. It always passes by one rule.',
  },
  {
    word: 'Easy-going, club and strong players',
    about:
      'Three kinds of bots in the seats of the others. Easy-going ones pass by feel, club players as most do, strong ones keep the best they can.',
  },
  {
    word: 'Luck',
    about: 'What changed your chance without you: the tiles that came, and what the others chose.',
  },
  { word: 'Stand-in', about: 'A bot that chooses for you while you are away.' },
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
