// What My cards says.

export const MY_CARDS = {
  title: 'My cards',
  about:
    'The cards you play with. They stay on this device; nobody else sees one unless you share it or play with it.',
  house: 'House card',
  houseAbout: 'Comes with Quadrille. Copy it to change it.',
  empty: 'No card of your own yet. Begin one: it plays as soon as one hand is in.',
  new: 'New card',
  newName: 'My card',
  firstSection: 'First section',
  untitled: 'Card without a name',
  sectionName: (nth: number) => `Section ${nth}`,
  fromFile: 'Get a card from a file',
  open: 'Open',
  openHouse: 'Look at it',
  copy: 'Copy',
  share: 'Share',
  file: 'Save as file',
  remove: 'Delete',
  nextYear: 'Next year’s card',
  archive: 'Put away',
  unarchive: 'Take out again',
  archived: 'Put away',
  more: 'More',
  play: 'Play with it',
  playing: 'Your new tables play with this card.',
  counts: (patterns: number, sections: number) =>
    `${patterns === 1 ? '1 hand' : `${patterns} hands`} in ${sections === 1 ? '1 section' : `${sections} sections`}`,
  used: (day: string) => `last played ${day}`,
  neverUsed: 'not played yet',
  removed: (name: string) => `${name} is deleted.`,
  undo: 'Undo',
  refused:
    'This browser does not store anything more, or nothing at all. Save the card as a file, so that it is not lost.',
  broken: 'This card cannot be opened on this device. It may come from a newer Quadrille.',
  back: 'All my cards',
} as const;

export const SHARE = {
  title: (name: string) => `Share ${name}`,
  link: 'The card as a link',
  about: 'The whole card is in the link, behind the #: no server sees it. Whoever opens it gets a copy.',
  copied: 'The link is copied.',
  scan: 'Scan to get the card',
  scanAbout: 'The card as a square code for a camera',
  tooLarge: 'Too much for a square code; send the link or the file.',
} as const;

export const FROM_LINK = {
  title: 'Somebody sends you a card',
  reading: 'Unpacking the card…',
  caution: 'If it was typed from a printed card, keep it only if you own that card too.',
  add: 'Keep it in My cards',
  leave: 'No, thanks',
  merge: 'Add its hands to a card of mine',
  mergeInto: 'Which card?',
  mergeAbout: 'Sections of one name are joined, and hands that are there already stay once.',
  mergeButton: 'Add its hands',
  problems: 'This card cannot be read:',
  own: 'You have the same card already: ',
} as const;

/** Of a card that comes as a link or a file. */
export const CARD_LINK = {
  torn: 'Part of this card link is missing. Copy it again from where it came, from its first letter to its last.',
  foreign: 'This is no card link of Quadrille. Ask for the link again, or for the card as a file.',
  later: 'This card link was made by a newer Quadrille. Reload this page to get it, and open the link again.',
  noCard: (where: string) =>
    `This file is no card: it cannot be read as JSON. ${where} Choose a file that was saved from My cards.`,
} as const;
