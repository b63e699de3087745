// The requests of a club's page.
import type { Operation } from './operation.ts';

const CLUB = '/api/clubs/{code}';

export const CLUB_OPERATIONS: readonly Operation[] = [
  {
    method: 'post',
    path: '/api/clubs',
    summary: 'Makes the page of a club; the sender is its teacher.',
    callers: ['anybody'],
    body: 'MakeClub',
    good: { 201: 'ClubMade' },
    rejections: ['bad-club-name', 'too-many-rooms'],
  },
  {
    method: 'get',
    path: CLUB,
    summary: 'The drill that a club shows, and the tables with free seats; no name of a player.',
    callers: ['anybody', 'teacher'],
    good: { 200: 'ClubPage' },
    rejections: ['no-such-club'],
  },
  {
    method: 'delete',
    path: CLUB,
    summary: 'Deletes the page; its tables and its drill stay as they are.',
    callers: ['teacher'],
    good: { 204: null },
    rejections: ['no-such-club', 'not-the-teacher'],
  },
  {
    method: 'post',
    path: `${CLUB}/actions`,
    summary: 'What the teacher changes: the name, the drill, the tables, the keys.',
    callers: ['teacher'],
    body: 'ClubAction',
    good: { 200: 'Ok' },
    rejections: [
      'no-such-club',
      'not-the-teacher',
      'bad-club-name',
      'no-such-drill',
      'wrong-key',
      'too-often',
    ],
  },
  {
    method: 'post',
    path: `${CLUB}/keys`,
    summary: 'Makes a key that opens the page as its teacher at another computer; it is told once.',
    callers: ['teacher'],
    good: { 201: 'TeacherKey' },
    rejections: ['no-such-club', 'not-the-teacher', 'too-many-keys'],
  },
  {
    method: 'post',
    path: `${CLUB}/teacher`,
    summary: 'Brings a teacher’s key; the sender is a teacher of the page until the key is taken back.',
    callers: ['anybody'],
    body: 'BringKey',
    good: { 200: 'Ok' },
    rejections: ['no-such-club', 'wrong-key'],
  },
  {
    method: 'post',
    path: '/api/rooms/{code}/club',
    summary: 'Puts a table of friends on a club’s page, or takes it off.',
    callers: ['seat'],
    body: 'ListTable',
    good: { 200: 'Ok' },
    rejections: [
      'no-such-room',
      'not-seated',
      'not-the-host',
      'not-for-clubs',
      'no-such-club',
      'kept-off',
      'club-full',
      'listed-often',
    ],
  },
];
