// Why the server rejects a request before the round decides about it: one code and one message each (rule E1).
import { z } from 'zod';
import { ROUND_REJECTION_CODES } from '../rules/index.ts';

export const ROOM_REJECTIONS = {
  'bad-frame': 'That message could not be read; reload the page and try again.',
  'bad-request': 'That request could not be read; reload the page and try again.',
  'not-found': 'There is nothing at that address; check the link.',
  'too-large': 'That is too large to send; choose a smaller file.',
  'bad-name': 'Choose a name of 1 to 24 characters.',
  'bad-card': 'That card file cannot be used.',
  'no-such-room':
    'There is no open table with that code. Check the eight letters and digits, or ask for the link again.',
  'seat-taken': 'Somebody sits there already; choose another seat.',
  'ask-again': 'Another page of yours has just come back to this table; wait a moment and try again.',
  'old-secret':
    'Somebody has come back to this seat since. If that was not you, tell the host, who can free the seat for you.',
  'not-seated': 'You are watching; take a seat first.',
  'not-your-seat': 'That seat belongs to somebody else; you can only choose for your own.',
  'not-the-host': 'Only the person who opened the table can do that.',
  'invitation-over': 'This invitation has been used or taken back; ask the host of the table for a new link.',
  'cookie-only':
    'A page keeps its seat in a cookie; only a program that is no page may have the secret itself.',
  held: 'Your teacher has stopped the tables here; wait until they continue.',
  'teacher-controlled': 'Your teacher leads this table; only your teacher can do that here.',
  'no-such-class': 'There is no class with that code; check the eight letters and digits with your teacher.',
  'not-the-teacher':
    'Only a teacher of this class, drill or page can do that. A key that was taken back opens it no more.',
  'wrong-key':
    'This key does not open this. Ask for a new one where the class was opened or the drill published, and use the newest link or file.',
  'wrong-screen-code':
    'This code opens no big screen here. Type the newest one from the dashboard of this class.',
  'too-many-keys': 'There are as many keys as there can be; take one back first.',
  'class-moved-on':
    'The class has gone on since, perhaps from another dashboard. Look at it again, then choose.',
  'class-over': 'This class has ended.',
  'class-full': 'This class is full; ask the teacher for another code.',
  'deals-not-given': 'Your teacher keeps the deals of this class; ask your teacher.',
  'tables-of-four':
    'At tables of four nothing is taken home, because the tiles dealt to the others are theirs. Choose another way to play, or leave it off.',
  'joining-closed': 'Your teacher lets nobody new into this class just now; ask your teacher.',
  removed: 'Your teacher has taken you out of this class; ask your teacher.',
  'no-more-deals': 'That was the last deal of the drill.',
  'not-guided': 'This class does not play guided deals; every table continues by itself.',
  'deal-open': 'This deal is not finished; first choose how the class continues.',
  'already-advanced': 'The class has already continued from that step; look at the dashboard.',
  'too-few-chosen':
    'Choices can be revealed when six players have chosen; after the vote, when everybody has finished the deal.',
  'not-all-chosen': 'Not everybody has chosen yet; wait, or let a bot play for whoever is away.',
  'no-such-player': 'There is no such player in this class.',
  'bad-drill': 'That drill cannot be used.',
  'no-such-drill': 'There is no drill with that code; check the link with your teacher.',
  'no-such-club': 'There is no club’s page with that code; check the link with your club.',
  'club-full': 'As many tables stand on that page as can; join one of them, or try again later.',
  'kept-off': 'A teacher of that club has taken this table off its page; ask them to let it back.',
  'listed-often':
    'Tables have been put on clubs’ pages very often, on this page or from your network; try again later.',
  'bad-club-name': 'Choose a name of 1 to 60 characters that can all be seen.',
  'not-for-clubs': 'Only a table of friends can stand on a club’s page; open one with friends.',
  'drill-over':
    'The last day of this drill is over; your teacher can open it again. What you chose stays on this device.',
  'drill-withdrawn': 'Your teacher has taken this drill back; ask your teacher.',
  'drill-full': 'This drill has as many rounds as it can count; play it for practice.',
  'round-not-played':
    'That round could not have been played so at this deal, and is not counted; play the deal again from its link.',
  'bad-question': 'Write a question of 1 to 280 characters that can all be seen.',
  'bad-last-day':
    'Choose a last day that is still to come, within 400 days and for as long as this server stores a drill.',
  'bots-too-slow':
    'A drill that is published has bots that choose at once; choose other bots than thoughtful ones.',
  'too-many-withdrawals': 'You have taken this pass back as often as you can; it stays now.',
  'stays-ready': 'You have taken that back as often as you can; you stay ready now.',
  'too-often': 'That was done very often just now; wait a minute or two and try again.',
  'used-up':
    'This table or class has been used as long as one can be. Open a new one; a deal in play can be finished.',
  'no-round': 'No round is being played; wait for the deal.',
  'wrong-round': 'That round is over; look at the table and choose again.',
  'places-fixed': 'Players change tables before the first deal only, and only where they share tables.',
  'seats-fixed': 'Seats can be swapped before the first deal only; open a new table to sit otherwise.',
  'round-running': 'A round is being played; do that after it closes.',
  'newer-connection': 'You have connected again since; what you did here goes on there.',
  'too-fast': 'Too many messages at once; wait a moment and try again.',
  'wrong-origin': 'This page comes from another address than the table; open the table by its own link.',
  'table-full': 'As many people as can are watching that table; try again later.',
  'too-many-rooms': 'The server holds as many tables as it can; try again later.',
  'too-many-empty-rooms':
    'Nobody sits at many of the tables that were opened from your network; use one of those, or wait a few minutes.',
  busy: 'The server has more to prepare than it can just now. Nothing was changed; try again in a minute.',
  'not-ready': 'This server can take nobody new just now; ask another one, or ask again in a moment.',
  'try-later': 'The server could not store that just now. Nothing was changed; try again.',
} as const;

export type RoomRejectionCode = keyof typeof ROOM_REJECTIONS;
const ROOM_REJECTION_CODES = Object.keys(ROOM_REJECTIONS) as readonly RoomRejectionCode[];

/** The codes of the round and of the room together. */
export const rejectionCodeSchema = z.enum([...ROUND_REJECTION_CODES, ...ROOM_REJECTION_CODES]);
export type RejectionCode = z.infer<typeof rejectionCodeSchema>;
