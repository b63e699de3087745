// What a program does about each rejection and each end of a socket; the protocol's documents are made of these tables.
import { ROUND_REJECTIONS } from '../rules/index.ts';
import { type RejectionCode, ROOM_REJECTIONS } from './rejections.ts';
import { CLOSE } from './version.ts';

/** What to do, by its name in the catalogue of rejections. */
export const ADVICE = {
  repair:
    'The request itself is wrong. Change it and send it with a new id: the same again gets the same answer.',
  'catch-up':
    'The table has moved on since the choice was made. Apply the frames that came, then choose again, with a new id.',
  'when-possible':
    'Not at this moment. Wait until the table says that it is possible, or a minute; then send it with a new id.',
  later:
    'Nothing was changed. Send the same again, with the same id, after 1, 2, 4 … at most 30 seconds; after `ask-again` with the newest secret that you have, for no old one gets good again.',
  'not-yours': 'Nobody in this place may do that. Do not send it again.',
  over: 'What this is about is over. Give up, or begin with a new room, link or code.',
} as const;
export type Advice = keyof typeof ADVICE;

const ADVICE_FOR: Readonly<Record<RejectionCode, Advice>> = {
  'bad-frame': 'repair',
  'bad-request': 'repair',
  'not-found': 'repair',
  'too-large': 'repair',
  'bad-name': 'repair',
  'bad-card': 'repair',
  'bad-drill': 'repair',
  'bad-question': 'repair',
  'bad-last-day': 'repair',
  'bots-too-slow': 'repair',
  'round-not-played': 'repair',
  'no-such-drill': 'over',
  'no-such-club': 'over',
  'club-full': 'when-possible',
  'kept-off': 'not-yours',
  'listed-often': 'when-possible',
  'bad-club-name': 'repair',
  'not-for-clubs': 'not-yours',
  'drill-over': 'over',
  'drill-withdrawn': 'over',
  'drill-full': 'over',
  'cookie-only': 'repair',
  'no-such-player': 'repair',
  'wrong-key': 'repair',
  'wrong-screen-code': 'repair',
  'wrong-count': 'repair',
  'joker-in-pass': 'repair',
  'tile-not-held': 'repair',
  'blind-not-allowed': 'repair',
  'bad-number': 'repair',
  'not-four-players': 'repair',
  'blank-tiles': 'repair',
  'pot-for-courtesy': 'repair',
  'east-not-in-turn': 'repair',
  'seat-taken': 'repair',
  'wrong-step': 'catch-up',
  'round-closed': 'catch-up',
  'already-answered': 'catch-up',
  'nothing-to-withdraw': 'catch-up',
  'nothing-to-give': 'catch-up',
  'wrong-round': 'catch-up',
  'no-round': 'catch-up',
  'already-advanced': 'catch-up',
  'class-moved-on': 'catch-up',
  held: 'when-possible',
  'round-running': 'when-possible',
  'joining-closed': 'when-possible',
  'too-often': 'when-possible',
  'deal-open': 'when-possible',
  'too-few-chosen': 'when-possible',
  'not-all-chosen': 'when-possible',
  'ask-again': 'later',
  'newer-connection': 'later',
  'too-fast': 'later',
  busy: 'later',
  'not-ready': 'later',
  'too-many-empty-rooms': 'later',
  'table-full': 'later',
  'too-many-rooms': 'later',
  'try-later': 'later',
  'not-seated': 'not-yours',
  'not-your-seat': 'not-yours',
  'not-the-host': 'not-yours',
  'not-the-teacher': 'not-yours',
  'teacher-controlled': 'not-yours',
  'deals-not-given': 'not-yours',
  'tables-of-four': 'repair',
  'not-guided': 'not-yours',
  'too-many-keys': 'not-yours',
  'too-many-withdrawals': 'not-yours',
  'stays-ready': 'not-yours',
  'places-fixed': 'not-yours',
  'seats-fixed': 'not-yours',
  'wrong-origin': 'not-yours',
  'no-such-room': 'over',
  'no-such-class': 'over',
  'old-secret': 'over',
  'invitation-over': 'over',
  'class-over': 'over',
  'class-full': 'over',
  removed: 'over',
  'no-more-deals': 'over',
  'used-up': 'over',
};

export interface CataloguedRejection {
  readonly code: RejectionCode;
  /** As it is sent; where a pass has a wrong number of tiles the message says how many. */
  readonly message: string;
  readonly advice: Advice;
}

/** Every rejection that there is, those of the round behind those of the room. */
export function rejectionCatalogue(): readonly CataloguedRejection[] {
  const messages: Readonly<Record<RejectionCode, string>> = { ...ROOM_REJECTIONS, ...ROUND_REJECTIONS };
  return Object.keys(messages)
    .filter(isCode)
    .map((code) => ({ code, message: messages[code], advice: ADVICE_FOR[code] }));
}

function isCode(name: string): name is RejectionCode {
  return name in ADVICE_FOR;
}

export interface CataloguedClose {
  readonly code: number;
  readonly meaning: string;
  readonly advice: string;
}

const CLOSES: Readonly<Record<keyof typeof CLOSE, CataloguedClose>> = {
  goingAway: {
    code: CLOSE.goingAway,
    meaning: 'The room is closed.',
    advice: 'Do not come back.',
  },
  tooBig: {
    code: CLOSE.tooBig,
    meaning: 'A frame had more than 4,096 bytes.',
    advice: 'Mend the program, then come back.',
  },
  restarting: {
    code: CLOSE.restarting,
    meaning: 'The server restarts.',
    advice: 'The reason is a number of milliseconds: wait that long, then get a ticket and resume.',
  },
  helloExpected: {
    code: CLOSE.helloExpected,
    meaning: 'The first frame that could be read was no `hello`, or no `hello` came within 10 seconds.',
    advice: 'Mend the program, then come back.',
  },
  ticketRejected: {
    code: CLOSE.ticketRejected,
    meaning:
      'The ticket is unknown, used, older than 30 seconds or of a seat that is somebody else’s by now.',
    advice: 'Get another ticket; its `seat` tells whether the seat is still yours. Twice in a row: give up.',
  },
  versionUnknown: {
    code: CLOSE.versionUnknown,
    meaning: 'The server speaks no version that the `hello` offered.',
    advice: 'Give up until the program is renewed.',
  },
  replaced: {
    code: CLOSE.replaced,
    meaning: 'A newer connection of the same seat has taken the place of this one.',
    advice: 'Do not come back by yourself: two programs would push each other out for ever.',
  },
  tooManyFrames: {
    code: CLOSE.tooManyFrames,
    meaning: 'More than 100 frames came above the limit.',
    advice: 'Send less, then come back after a pause.',
  },
  tooSlow: {
    code: CLOSE.tooSlow,
    meaning: 'More than 64 KiB waited to be read.',
    advice: 'Read all the time, then get a ticket and resume.',
  },
};

/** Every code with which the server ends a socket. */
export function closeCatalogue(): readonly CataloguedClose[] {
  return Object.values(CLOSES);
}
