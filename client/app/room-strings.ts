// What the page says around the screens of a room.

export const ROOM_SCREEN = {
  yourTurn: 'Your choice',
  othersTurn: 'Waiting',
  gone: 'No table here',
  goneAbout:
    'There is no table with this code. Check the eight letters and digits, or ask for the link again.',
  classWaiting: 'You are in. Your teacher deals soon.',
  classWaitingAbout: 'Stay on this page. The tiles come by themselves.',
} as const;

/** Why a round cannot go on without the server. */
export const PLAYING_ON = {
  noCard: 'This round cannot go on here: its card is not on this device. Your tiles are safe at the table.',
  noPart:
    'This round cannot go on here: a part of this page is not on this device. Your tiles are safe at the table.',
  noTiles:
    'This round cannot go on here: no tiles were found for the others that fit what you know. Your tiles are safe at the table.',
} as const;

/** A table in the page itself, and its bots by seat. */
export const PRACTICE = {
  title: 'Practice in this page',
  bots: ['Merle', 'Nuno', 'Orla', 'Dunja'],
  otherCard:
    'The card of this deal is not on this device, so the deal is played with the House card. Whoever sent it can share the card from My cards.',
} as const;
