// Every request that a program may make, as the OpenAPI document describes it; a test compares it with the routes.
import { type RejectionCode, SOCKET_PATH, VERSION_PATH } from '../../shared-engine/index.ts';
import { CLASS_OPERATIONS } from './class-operations.ts';
import { CLUB_OPERATIONS } from './club-operations.ts';
import type { Operation } from './operation.ts';
import { PUBLISHED_OPERATIONS } from './published-operations.ts';

const ROOM = '/api/rooms/{code}';

const room: readonly Operation[] = [
  {
    method: 'post',
    path: '/api/rooms',
    summary: 'Opens a room; the sender sits on seat 0 and is its host.',
    callers: ['anybody'],
    body: 'OpenRoom',
    good: { 201: 'RoomOpened' },
    rejections: [
      'bad-name',
      'bad-card',
      'cookie-only',
      'busy',
      'too-many-rooms',
      'too-many-empty-rooms',
      'not-four-players',
      'blank-tiles',
      'pot-for-courtesy',
      'east-not-in-turn',
    ],
  },
  {
    method: 'get',
    path: ROOM,
    summary: 'What anybody with the code may know before sitting down.',
    callers: ['anybody', 'seat'],
    good: { 200: 'Lobby' },
    rejections: ['no-such-room'],
  },
  {
    method: 'post',
    path: `${ROOM}/seats`,
    summary: 'Takes a seat; whoever brings the secret of a seat is told that seat.',
    callers: ['anybody', 'seat'],
    body: 'ClaimSeat',
    good: { 200: 'SeatClaimed' },
    rejections: [
      'no-such-room',
      'bad-name',
      'cookie-only',
      'seat-taken',
      'round-running',
      'too-often',
      'used-up',
    ],
  },
  {
    method: 'post',
    path: `${ROOM}/ticket`,
    summary: 'A ticket for the socket, good once and for 30 seconds; without a secret it is a spectator’s.',
    callers: ['anybody', 'seat'],
    good: { 200: 'Ticket' },
    rejections: ['no-such-room', 'ask-again', 'old-secret', 'table-full', 'too-often'],
  },
  {
    method: 'get',
    path: `${ROOM}/card`,
    summary: 'The card file that this room plays with.',
    callers: ['anybody', 'seat'],
    good: { 200: 'CardFile' },
    rejections: ['no-such-room'],
  },
  {
    method: 'post',
    path: `${ROOM}/invitations`,
    summary: 'The host invites a bot to a seat that nobody holds; the secret is told once.',
    callers: ['seat'],
    body: 'InviteBot',
    good: { 201: 'BotInvited' },
    rejections: ['no-such-room', 'not-seated', 'not-the-host', 'seat-taken', 'too-often', 'used-up'],
  },
  {
    method: 'post',
    path: `${ROOM}/bots`,
    summary: 'A bot takes the seat that it was invited to, with the secret of the invitation as its bearer.',
    callers: ['invitation'],
    body: 'SeatBot',
    good: { 201: 'SeatClaimed' },
    rejections: [
      'no-such-room',
      'bad-name',
      'cookie-only',
      'invitation-over',
      'round-running',
      'too-often',
      'used-up',
    ],
  },
  {
    method: 'get',
    path: `${ROOM}/personal-data`,
    summary: 'What is stored about the holder of the seat.',
    callers: ['seat'],
    good: { 200: 'PersonalData' },
    rejections: ['no-such-room', 'not-seated'],
  },
  {
    method: 'delete',
    path: `${ROOM}/personal-data`,
    summary: 'Gives the seat up and deletes name and secrets of its holder.',
    callers: ['seat'],
    good: { 204: null },
    rejections: ['no-such-room', 'not-seated'],
  },
];

const server: readonly Operation[] = [
  {
    method: 'get',
    path: SOCKET_PATH,
    summary: 'Becomes a WebSocket; the AsyncAPI document describes what is said there.',
    callers: ['anybody'],
    good: { 101: null },
    rejections: ['bad-request'],
  },
  {
    method: 'get',
    path: '/api/cards/house',
    summary: 'The house card, as a card file.',
    callers: ['anybody'],
    good: { 200: 'CardFile' },
    rejections: [],
  },
  {
    method: 'get',
    path: '/api/openapi.json',
    summary: 'This document.',
    callers: ['anybody'],
    good: { 200: 'Document' },
    rejections: [],
  },
  {
    method: 'get',
    path: '/api/asyncapi.json',
    summary: 'The document of the socket, in AsyncAPI 3.',
    callers: ['anybody'],
    good: { 200: 'Document' },
    rejections: [],
  },
  {
    method: 'get',
    path: VERSION_PATH,
    summary: 'Which version runs, and which versions of the protocol it speaks.',
    callers: ['anybody'],
    good: { 200: 'Version' },
    rejections: [],
  },
  {
    method: 'get',
    path: '/healthz',
    summary: 'Whether the server runs.',
    callers: ['anybody'],
    good: { 200: 'Ok' },
    rejections: [],
  },
  {
    method: 'get',
    path: '/readyz',
    summary: 'Whether the server can take more people; what is wrong otherwise.',
    callers: ['anybody'],
    good: { 200: 'Ok' },
    rejections: ['not-ready'],
  },
];

export const OPERATIONS: readonly Operation[] = [
  ...room,
  ...CLASS_OPERATIONS,
  ...PUBLISHED_OPERATIONS,
  ...CLUB_OPERATIONS,
  ...server,
];

/** What any request may get, whatever it asks. */
const ALWAYS: readonly RejectionCode[] = ['bad-request', 'wrong-origin', 'too-fast', 'try-later'];

/** Every rejection that a request may get, its own ones first. */
export function rejectionsOf({ method, rejections }: Operation): RejectionCode[] {
  return [...rejections, ...(method === 'post' ? ['too-large' as const] : []), ...ALWAYS];
}
