// What the screens of a room say in more than one place: opening it, taking a seat, inviting, waiting.
import type { Phrase } from '../../shared-engine/index.ts';

export const ROOM = {
  product: 'Quadrille',
  table: 'Table',
  opening: 'Opening the table…',
  bot: 'bot',
  botBy: (host: string) => `bot by ${host}`,
  ready: 'ready',
  choosing: 'choosing',
  away: 'away, seat kept',
  awayUntil: (time: string) => `away; a bot chooses from ${time}`,
  steps: 'Steps of the exchange',
  leave: 'Give up my seat',
  oldSecretShown:
    'Somebody tried to come back to your seat with an old copy of your sign-in, and was turned away.',
} as const;

export const SIX_WORDS = {
  title: 'This deal in six words',
  about:
    'All four racks and the wall are fixed from now on. Friends who read out the same six words have the same deal.',
  sure: 'How sure is that?',
  failed: 'The words cannot be fetched just now. Close this and open it again.',
} as const;

export const CLUB_LISTING = {
  title: 'Show on a club’s page',
  about:
    'Whoever has the link of that page can join this table while a seat is free. The page tells the name of the card, and of no player.',
  code: 'Code or link of the club’s page',
  mayShow: (name: string) =>
    `Whoever joins sees all of ${name}. If you typed it from a printed card, that card is somebody’s work: show it only if its owner lets you. A card of your own making is yours to show.`,
  may: 'I may show this card',
  sayMay: (name: string) => `Tick that you may show ${name}, or open a table with the house card.`,
  show: 'Show this table',
  shown: (club: string) => `You have put this table on the club’s page (${club}).`,
  takeOff: 'Take it off',
} as const;

export const LOBBY = {
  inviteTitle: 'Ask your friends in',
  inviteAbout: 'Send this link, or read the code out. Nobody needs an account.',
  copy: 'Copy the link',
  share: 'Share',
  shareText: 'Join me at the table.',
  copied: 'Copied. Send it to your friends.',
  copyByHand: 'Select the link and copy it.',
  seats: 'Who sits where',
  sit: 'Sit here',
  free: 'Free seat',
  freeAbout: 'a bot may take it',
  freeInvited: 'a link for a bot is out',
  swap: (name: string) => `Swap places with ${name}`,
  moveHere: 'Sit here instead',
  botStyle: (seat: string) => `Bot for ${seat}`,
  seatBot: 'Seat a bot',
  unseat: (name: string) => `Remove ${name}`,
  notReady: 'Wait, not yet',
  readyAbout: 'The tiles are dealt as soon as everybody who is here is ready.',
  waitingFor: (names: string) => `Waiting for ${names}.`,
  waitForYou: (names: string, count: number) =>
    `${names} ${count === 1 ? 'is' : 'are'} ready and ${count === 1 ? 'waits' : 'wait'} for you.`,
} as const;

export const TALK = {
  label: 'Say',
  phrases: {
    ready: 'Ready?',
    'well-passed': 'Well passed',
    'one-moment': 'One moment',
    'your-turn': 'Your turn',
  } satisfies Record<Phrase, string>,
  remind: (name: string) => `Remind ${name}`,
  you: 'You',
} as const;

export const WAYS = {
  title: 'How this table plays',
  usual: (card: string) => `This table plays as usual. Card: ${card}.`,
  unusual: (card: string) => `Card: ${card}. Not as usual at this table:`,
  change: 'Play another way',
  summary: (unusual: number) =>
    unusual === 0 ? 'as usual' : unusual === 1 ? 'one thing is different' : `${unusual} things are different`,
  asUsual: 'As usual again',
} as const;

export const OWN_BOT = {
  title: 'Invite a bot of your own',
  about: 'If you have written a bot, it can take a free seat here. Everybody sees that it is yours.',
  make: 'Make a link for it',
  label: 'Link for your bot',
  once: 'Give this link to your bot and to nobody else. It is shown only now and seats one bot.',
  noSeat: 'No seat is free.',
  revoke: 'Take the invitation back',
  copied: 'Copied. Give it to your bot.',
  here: 'connected',
  away: 'not connected, another bot stands in',
} as const;
