// The requests of a published drill.
import type { Operation } from './operation.ts';

const DRILL = '/api/drills/{code}';

export const PUBLISHED_OPERATIONS: readonly Operation[] = [
  {
    method: 'post',
    path: '/api/drills',
    summary:
      'Publishes a drill that everybody with its link plays alone until a day; the sender is its teacher.',
    callers: ['anybody'],
    body: 'PublishDrill',
    good: { 201: 'DrillPublished' },
    rejections: ['bad-last-day', 'bad-card', 'bad-drill', 'bots-too-slow', 'busy', 'too-many-rooms'],
  },
  {
    method: 'get',
    path: DRILL,
    summary: 'All that a device needs to play the drill without a network, hidden tiles among it.',
    callers: ['anybody', 'player'],
    good: { 200: 'PublishedDrill' },
    rejections: ['no-such-drill'],
  },
  {
    method: 'post',
    path: `${DRILL}/rounds`,
    summary:
      'Sends a round that was played; it is played out again, and counted where it is the first of its device. A program brings any secret of its own as its bearer.',
    callers: ['player'],
    body: 'SendRound',
    good: { 200: 'RoundSent' },
    rejections: [
      'no-such-drill',
      'drill-over',
      'drill-withdrawn',
      'drill-full',
      'round-not-played',
      'bad-question',
      'bad-name',
      'busy',
    ],
  },
  {
    method: 'get',
    path: `${DRILL}/released`,
    summary:
      'What others chose, as it was released last; where players compare at the end, of deals that the sender has played.',
    callers: ['anybody', 'player'],
    good: { 200: 'Released' },
    rejections: ['no-such-drill'],
  },
  {
    method: 'get',
    path: `${DRILL}/dashboard`,
    summary: 'How far the drill has come, questions that were left, and the drill itself.',
    callers: ['teacher'],
    good: { 200: 'PublishedDashboard' },
    rejections: ['no-such-drill', 'not-the-teacher'],
  },
  {
    method: 'get',
    path: `${DRILL}/report`,
    summary: 'The report of all deals, as it grows.',
    callers: ['teacher'],
    good: { 200: 'ClassReport' },
    rejections: ['no-such-drill', 'not-the-teacher'],
  },
  {
    method: 'post',
    path: `${DRILL}/actions`,
    summary: 'Sets another last day, takes the drill back, or takes a key back.',
    callers: ['teacher'],
    body: 'PublishedAction',
    good: { 200: 'Ok' },
    rejections: ['no-such-drill', 'not-the-teacher', 'bad-last-day', 'drill-withdrawn', 'wrong-key'],
  },
  {
    method: 'post',
    path: `${DRILL}/keys`,
    summary: 'Makes a key that opens the teacher’s page at another computer; it is told once.',
    callers: ['teacher'],
    good: { 201: 'TeacherKey' },
    rejections: ['no-such-drill', 'not-the-teacher', 'too-many-keys'],
  },
  {
    method: 'post',
    path: `${DRILL}/teacher`,
    summary: 'Brings a teacher’s key; the sender is a teacher of the drill until the key is taken back.',
    callers: ['anybody'],
    body: 'BringKey',
    good: { 200: 'Ok' },
    rejections: ['no-such-drill', 'wrong-key'],
  },
  {
    method: 'get',
    path: `${DRILL}/personal-data`,
    summary: 'What is stored about the asker’s device; for a teacher the drill too.',
    callers: ['player', 'teacher'],
    good: { 200: 'PersonalData' },
    rejections: ['no-such-drill'],
  },
  {
    method: 'delete',
    path: `${DRILL}/personal-data`,
    summary:
      'Deletes the device and its name, while its choices stay counted; for the teacher the whole drill.',
    callers: ['player', 'teacher'],
    good: { 204: null },
    rejections: ['no-such-drill'],
  },
  {
    method: 'delete',
    path: `${DRILL}/personal-data/device`,
    summary: 'Deletes the device and its name alone, for a teacher who has played the drill too.',
    callers: ['player'],
    good: { 204: null },
    rejections: ['no-such-drill'],
  },
];
