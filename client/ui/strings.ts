// What the parts that every screen shares say.

export const BAR = {
  home: 'Quadrille, front page',
  tools: 'Help and settings',
  help: 'Help',
  settings: 'Settings',
} as const;

export const SHEET = { close: 'Close' } as const;

export const FIELD = {
  full: (most: number) =>
    `That is ${most} characters; no more fits. Check that nothing is missing at the end.`,
} as const;

export const NAME_FIELD = {
  label: 'Your name at the table',
  missing: 'Type your name first, with at most 24 letters.',
  notVisible: 'Something in this name cannot be seen. Type it anew.',
} as const;

export const CODE_FIELD = {
  label: 'Did somebody give you a code?',
  button: 'Go to that table',
  missing: 'Type the code first: eight letters and digits.',
} as const;

export const CARD_FIELD = {
  label: 'A card file of your own',
  house: 'The house card is used.',
  own: 'The card chosen above is used.',
  unreadable: (where: string) => `That file is not a card: it cannot be read as JSON. ${where}`,
} as const;

export const CARD_SELECT = {
  label: 'The card',
  house: 'House card',
  unplayable: (name: string) =>
    name === ''
      ? 'The card that you chose is not on this device any more. Choose another one.'
      : `${name} cannot be played with yet. Open it in My cards to see what it lacks, or choose another card.`,
  brought: (name: string) => `${name} (from a file)`,
  own: (name: string, hands: number) => `${name} (${hands === 1 ? '1 hand' : `${hands} hands`})`,
} as const;

/** Asked once for each card, where one that may be copied from print is about to leave the device. */
export const MAY_SHARE = {
  question: (name: string) =>
    `Did you type ${name} from a printed card? That card is somebody’s work: ask its publisher before you pass it on to anybody who does not own it too. A card of your own making is yours to give.`,
  yes: 'I may pass it on',
} as const;

export const QR = {
  caption: 'Scan to join',
  about: 'The link to this table as a square code for a camera',
} as const;
