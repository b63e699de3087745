// Every request that a program may make, as the OpenAPI document describes it; a test compares it with the routes.
import { type RejectionCode, SOCKET_PATH, VERSION_PATH } from '../../shared-engine/index.ts';
import type { Body } from './bodies.ts';

/** Whose secret a request needs. */
export type Caller = 'anybody' | 'seat' | 'invitation' | 'player' | 'teacher';

export interface Operation {
  readonly method: 'get' | 'post' | 'delete';
  readonly path: string;
  readonly summary: string;
  readonly callers: readonly Caller[];
  readonly body?: Body;
  /** Status of the good answer, and what is in it; null for nothing. */
  readonly good: Readonly<Record<number, Body | null>>;
  /** Besides those that any request may get. */
  readonly rejections: readonly RejectionCode[];
  /** Whether it answers when there is something newer than `seen`. */
  readonly waits?: boolean;
}

const ROOM = '/api/rooms/{code}';
const CLASS = '/api/classes/{code}';

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

const lesson: readonly Operation[] = [
  {
    method: 'post',
    path: '/api/classes',
    summary: 'Opens a class that plays a drill; the sender is its teacher.',
    callers: ['anybody'],
    body: 'OpenClass',
    good: { 201: 'ClassOpened' },
    rejections: ['bad-card', 'bad-drill', 'busy', 'too-many-rooms'],
  },
  {
    method: 'post',
    path: '/api/same-deals',
    summary:
      'Opens one deal that friends play each for themselves, without a teacher; its code is joined like a class.',
    callers: ['anybody'],
    body: 'OpenSameDeal',
    good: { 201: 'ClassOpened' },
    rejections: ['bad-card', 'busy', 'too-many-rooms'],
  },
  {
    method: 'get',
    path: `${CLASS}/choices`,
    summary: 'What friends chose at the steps that the asker has come past; answers when it has changed.',
    callers: ['player'],
    good: { 200: 'FriendChoices' },
    rejections: ['no-such-class'],
    waits: true,
  },
  {
    method: 'get',
    path: CLASS,
    summary: 'What anybody with the code may know, and whether the asker is its teacher or a player.',
    callers: ['anybody', 'player', 'teacher'],
    good: { 200: 'ClassInfo' },
    rejections: ['no-such-class'],
  },
  {
    method: 'post',
    path: `${CLASS}/players`,
    summary: 'Joins; whoever has joined already is told the place again.',
    callers: ['anybody', 'player'],
    body: 'JoinClass',
    good: { 201: 'ClassJoined', 200: 'ClassJoined' },
    rejections: [
      'no-such-class',
      'bad-name',
      'removed',
      'joining-closed',
      'class-full',
      'class-over',
      'too-many-rooms',
      'too-many-empty-rooms',
      'used-up',
    ],
  },
  {
    method: 'post',
    path: `${CLASS}/aims`,
    summary: 'Names the sections that a player aims for at a step.',
    callers: ['player'],
    body: 'ClassAims',
    good: { 200: 'Ok' },
    rejections: ['no-such-class', 'class-over', 'no-round', 'too-often', 'used-up'],
  },
  {
    method: 'post',
    path: `${CLASS}/actions`,
    summary: 'What the teacher does with the class.',
    callers: ['teacher'],
    body: 'ClassAction',
    good: { 200: 'Ok' },
    rejections: [
      'no-such-class',
      'not-the-teacher',
      'class-over',
      'no-more-deals',
      'no-such-player',
      'not-guided',
      'deal-open',
      'already-advanced',
      'too-few-chosen',
      'not-all-chosen',
      'used-up',
      // Of the choice with which a guided deal goes on.
      'wrong-step',
      'wrong-count',
      'joker-in-pass',
      'tile-not-held',
      'blind-not-allowed',
      'nothing-to-give',
    ],
  },
  {
    method: 'get',
    path: `${CLASS}/dashboard`,
    summary: 'What the teacher sees of the players; answers when it has changed.',
    callers: ['teacher'],
    good: { 200: 'Dashboard' },
    rejections: ['no-such-class', 'not-the-teacher'],
    waits: true,
  },
  {
    method: 'get',
    path: `${CLASS}/big-screen`,
    summary: 'What the teacher shows to all; answers when it has changed.',
    callers: ['teacher'],
    good: { 200: 'BigScreen' },
    rejections: ['no-such-class', 'not-the-teacher'],
    waits: true,
  },
  {
    method: 'get',
    path: `${CLASS}/report`,
    summary: 'The report of all deals so far.',
    callers: ['teacher'],
    good: { 200: 'ClassReport' },
    rejections: ['no-such-class', 'not-the-teacher'],
  },
  {
    method: 'get',
    path: `${CLASS}/personal-data`,
    summary: 'What is stored about the asker.',
    callers: ['player', 'teacher'],
    good: { 200: 'PersonalData' },
    rejections: ['no-such-class', 'not-seated'],
  },
  {
    method: 'delete',
    path: `${CLASS}/personal-data`,
    summary: 'Deletes a player’s name and secrets; for its teacher the whole class.',
    callers: ['player', 'teacher'],
    good: { 204: null },
    rejections: ['no-such-class', 'not-seated'],
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

export const OPERATIONS: readonly Operation[] = [...room, ...lesson, ...server];

/** What any request may get, whatever it asks. */
const ALWAYS: readonly RejectionCode[] = ['bad-request', 'wrong-origin', 'too-fast', 'try-later'];

/** Every rejection that a request may get, its own ones first. */
export function rejectionsOf({ method, rejections }: Operation): RejectionCode[] {
  return [...rejections, ...(method === 'post' ? ['too-large' as const] : []), ...ALWAYS];
}
