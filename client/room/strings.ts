// What the lobby, the table and the watcher's screen say besides steps and news.

export const ROOM = {
  ledWaiting: 'You are in. Your teacher deals soon.',
  ledAbout: 'Stay on this page; the tiles come by themselves.',
  product: 'Quadrille',
  yourTurn: 'Your choice',
  othersTurn: 'Waiting',
  table: 'Table',
  opening: 'Opening the table…',
  gone: 'No table here',
  goneAbout: 'There is no open table with this code. Check the eight letters, or ask for the link once more.',
} as const;

export const LOBBY = {
  title: 'Your table',
  titleGuest: 'Take a seat',
  inviteTitle: 'Ask your friends in',
  inviteAbout: 'Send this link, or read the code out. Nobody needs an account.',
  copy: 'Copy the link',
  copied: 'Copied. Send it to your friends.',
  copyByHand: 'Select the link and copy it.',
  scan: 'Or let a camera read this.',
  scanAbout: 'The link to this table as a square code for a camera',
  seats: 'Who sits where',
  sit: 'Sit here',
  free: 'Free seat',
  freeAbout: 'a bot may take it',
  botStyle: (seat: string) => `Bot for ${seat}`,
  seatBot: 'Seat a bot',
  unseat: (name: string) => `Free ${name}’s seat`,
  ready: 'I am ready',
  notReady: 'Wait, not yet',
  readyAbout: 'The tiles are dealt as soon as everybody who is here is ready.',
  waitingFor: (names: string) => `Waiting for ${names}.`,
  terms: 'At this table',
  deadline: (seconds: number | null) =>
    seconds === null ? 'Each step takes as long as you like.' : `Each step takes at most ${seconds} seconds.`,
  layOpen: (open: boolean) =>
    open ? 'All racks are laid open after the close.' : 'Racks stay private after the close.',
  card: (name: string) => `Card: ${name}.`,
} as const;

export const TABLE = {
  steps: 'Steps of the exchange',
  others: 'The others',
  east: 'East',
  bot: 'bot',
  youAreEast: 'You are East',
  yours: 'Your rack',
  yoursAbout: 'Arrow keys move along the rack, Enter puts a tile into the tray, keys 1 to 3 take one back.',
  tray: 'Tray',
  slotEmpty: 'empty place',
  slotUnseen: 'one arriving tile, unseen',
  takeBackSlot: (tile: string, slot: number) => `Take ${tile} back from place ${slot}`,
  sealed: 'Your pass lies face down.',
  takeBack: 'Take it back',
  held: 'The tables wait',
  heldAbout: 'Your teacher says when it goes on.',
  passing: 'Passing…',
  goOn: 'Go on',
  stop: 'Stop here',
  youSaidGoOn: 'You said go on.',
  youSaidStop: 'You said stop.',
  youAsked: (count: number) => `You asked for ${count}.`,
  waitingFor: (names: string) => `Waiting for ${names}.`,
  othersPass: 'Nothing across for you this time. The others are passing.',
  ready: 'ready',
  choosing: 'choosing',
  away: 'away, seat kept',
  noPart: 'no part in this',
  getsYours: 'gets yours',
  givesYou: 'gives you',
  getsAndGives: 'swaps with you',
  sort: 'Order of the rack',
  sorts: { suit: 'By suit', number: 'By number', own: 'My own' },
  fresh: 'just arrived',
  inTray: 'in the tray',
  soFar: 'What has passed so far',
  gave: 'To',
  got: 'From',
  nothingYet: 'Nothing yet.',
  chosenInstead: 'You had chosen',
  timeLeft: (text: string) => `${text} left`,
  soon: 'Ten seconds left.',
  leave: 'Give up my seat',
} as const;

export const WATCH = {
  title: 'You are watching',
  about: 'A watcher sees what everybody may see, and no tiles.',
  closed: 'The round is closed. A free seat can be taken before the next deal.',
  gives: (name: string) => `gives to ${name}`,
  step: (name: string) => `Open now: ${name}`,
} as const;

/** `1:05`, or `9` below ten seconds. */
export function clockText(ms: number): string {
  const seconds = Math.max(0, Math.ceil(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
