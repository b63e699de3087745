// What the lobby, the table and the spectator's screen say besides steps and announcements.

export const LOBBY_SCREEN = {
  title: 'Your table',
  titleGuest: 'Take a seat',
  ready: 'I am ready',
} as const;

export const TABLE = {
  opponents: 'The others',
  east: 'East',
  youAreEast: 'You are East',
  rack: 'Your rack',
  rackAbout: 'Arrow keys move along the rack. Enter puts a tile into the tray. Keys 1 to 3 take one back.',
  tray: 'Tray',
  slotEmpty: 'empty place',
  slotBlind: 'one arriving tile, passed blind',
  takeBackSlot: (tile: string, slot: number) => `Take ${tile} back from place ${slot}`,
  submitted: 'Nobody else sees your pass yet.',
  withdraw: 'Take it back',
  held: 'The tables have stopped',
  heldAbout: 'Your teacher says when play continues.',
  passing: 'Passing…',
  continue: 'Continue',
  stop: 'I’d stop',
  /** On the card that a seat turns over when all have answered: a vote, or a number in the courtesy. */
  voted: (go: boolean) => (go ? 'voted to continue' : 'voted to stop'),
  asked: (count: number) => `asked for ${count}`,
  tilesOnRack: (count: number) => `${count} tiles on the rack`,
  tilesOut: (count: number) => `${count} face down in front`,
  youSaidContinue: 'You said continue.',
  youSaidStop: 'You said stop.',
  youAsked: (count: number) => `You asked for ${count}.`,
  waitingFor: (names: string) => `Waiting for ${names}.`,
  othersPass: 'Nothing across for you this time. The others are passing.',
  getsYours: 'gets yours',
  givesYou: 'gives you',
  getsAndGives: 'swaps with you',
  card: 'Card',
  cardClosed: 'This table plays without the card.',
  sort: 'Order of the rack',
  sorts: { suit: 'By suit', number: 'By number', custom: 'My own' },
  arrived: 'just arrived',
  inTray: 'in the tray',
  history: 'What has been passed so far',
  gave: 'To',
  got: 'From',
  nothingYet: 'Nothing yet.',
  /** Arriving tiles that were passed on without being looked at. */
  blindOn: (count: string, own: number) => `${own > 0 ? 'and ' : ''}${count} blind`,
  wentOn: (count: string, stayed: number) => `${stayed > 0 ? 'and ' : ''}${count} that went on blind`,
  chosenInstead: 'You had chosen',
  timeLeft: (text: string) => `${text} left`,
  soon: 'Ten seconds left.',
  yourChoice: 'It is your choice.',
  reminded: (name: string) => `${name} reminds you: it is your choice.`,
} as const;

export const AIM = {
  question: 'What are you aiming for?',
  aimed: (sections: readonly string[]) => `You are aiming for: ${sections.join(', ')}`,
  enough: 'Two are enough. Take one back before you choose another.',
  about:
    'Which sections of the card do your tiles point to? Choose up to two. Your review will come back to them.',
} as const;

export const SPECTATOR = {
  title: 'You are watching',
  about: 'You see what everybody may see, and nobody’s tiles.',
  closed: 'This deal is over. You can take a free seat before the next one.',
  gives: (name: string) => `passes to ${name}`,
  step: (name: string) => `Now: ${name}`,
} as const;

/** `1:05`, or `0:09` below ten seconds. */
export function clockText(ms: number): string {
  const seconds = Math.max(0, Math.ceil(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
