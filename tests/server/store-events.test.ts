// What is stored of rooms and classes: every kind of event goes through JSON and back, and nothing else comes in.
import { describe, expect, onTestFinished, test } from 'vitest';
import { record } from '../../server/aggregate/recorded.ts';
import { CLASS } from '../../server/class/class.ts';
import type { ClassEvent } from '../../server/class/event.ts';
import { classEvents, classSnapshotFrom } from '../../server/class/stored-event.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { replayRoom } from '../../server/room/room.ts';
import { roomEvents, roomSnapshotFrom } from '../../server/room/stored-event.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { openSqlite } from '../../server/store/sqlite.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour } from '../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { LOG_START, storeOf } from '../kit/logs.ts';
import { eventsOf, logOf } from '../kit/room-logs.ts';
import { opened, playOn } from '../kit/rounds.ts';
import { temporaryFolder } from '../kit/temporary.ts';

const TERMS = { ...STANDARD_TERMS.friends, deadline: 30, revealRacks: true };
type OneOfEach<Event extends { readonly kind: string }> = {
  readonly [K in Event['kind']]: Extract<Event, { readonly kind: K }>;
};

/** One event of each kind; the compiler holds that none is left out. */
const ROOM_EVENTS: OneOfEach<RoomEvent> = {
  opened: {
    kind: 'opened',
    mode: 'alone',
    terms: TERMS,
    card: { kind: 'file', file: HOUSE_CARD },
    classCode: null,
  },
  'seat-taken': { kind: 'seat-taken', seat: 0, name: 'Ines 🀄', secretHash: 'a'.repeat(64) },
  'seat-vacated': { kind: 'seat-vacated', seat: 3 },
  'seat-renamed': { kind: 'seat-renamed', seat: 0, name: 'Ines B.' },
  'bot-invited': { kind: 'bot-invited', seat: 2, secretHash: 'd'.repeat(64) },
  'invitation-revoked': { kind: 'invitation-revoked', seat: 2 },
  'external-bot-seated': {
    kind: 'external-bot-seated',
    seat: 2,
    name: 'Rote 7',
    secretHash: 'd'.repeat(64),
  },
  'bot-seated': { kind: 'bot-seated', seat: 1, name: 'Odo', style: 'guarded' },
  connected: {
    kind: 'connected',
    seat: 0,
    node: 'node',
    connection: 'node.1',
    from: { page: 'page', nth: 1 },
  },
  disconnected: { kind: 'disconnected', seat: 0, connection: 'node.1' },
  'secret-issued': { kind: 'secret-issued', seat: 0, secretHash: 'b'.repeat(64), shown: 'a'.repeat(64) },
  'secret-confirmed': { kind: 'secret-confirmed', seat: 0, secretHash: 'b'.repeat(64) },
  'old-secret-shown': { kind: 'old-secret-shown', seat: 0, secretHash: 'a'.repeat(64) },
  'timer-claimed': { kind: 'timer-claimed', node: 'node', others: ['other'] },
  'seats-swapped': { kind: 'seats-swapped', seat: 0, other: 3 },
  said: { kind: 'said', seat: 1, phrase: 'your-turn', to: 0 },
  'terms-changed': { kind: 'terms-changed', terms: TERMS },
  ready: { kind: 'ready', seat: 0, ready: true },
  'controls-changed': { kind: 'controls-changed', controls: { holdBefore: 'vote', standIn: [0] } },
  'more-time': { kind: 'more-time', seconds: 30 },
  round: { kind: 'round', event: { kind: 'voted', seat: 2, go: false, by: 'stand-in' } },
  closed: { kind: 'closed' },
};

const PREPARED = forFour((seat) => facesOf(opened('prepared').round.racks[seat]));
const PREPARED_DEAL = { seed: 'a'.repeat(64), dealer: 0, prepared: PREPARED } as const;
const OUTCOME = {
  kind: 'vote',
  go: [true, true, false, true],
  by: ['player', 'bot', 'bot', 'bot'],
} as const;

const CLASS_EVENTS: OneOfEach<Exclude<ClassEvent, { kind: 'opened' }>> = {
  removed: { kind: 'removed', player: 1 },
  joining: { kind: 'joining', open: false },
  'take-home': { kind: 'take-home', on: true },
  joined: { kind: 'joined', name: 'Tomas', secretHash: 'c'.repeat(64), room: 'ABCDEFGH', seat: 0 },
  dealt: { kind: 'dealt' },
  hold: { kind: 'hold', before: 'vote' },
  renamed: { kind: 'renamed', player: 0, name: 'Tomas B.' },
  seated: { kind: 'seated', player: 0, room: 'BCDEFGHJ', seat: 2 },
  'stand-in': { kind: 'stand-in', player: 0, on: true },
  shown: { kind: 'shown', shown: { seat: 0, step: 'first-right', kind: 'pass', revealed: false } },
  advanced: { kind: 'advanced', outcome: OUTCOME, closed: false },
  aimed: { kind: 'aimed', player: 0, deal: 0, step: 'first-right', sections: ['garden'] },
  frozen: {
    kind: 'frozen',
    deal: 0,
    seat: 0,
    step: 'first-right',
    spreads: [
      {
        seat: 0,
        kind: 'pass',
        step: 'first-right',
        stoodIn: 1,
        rack: PREPARED[0],
        cells: [
          { chosen: ['bam-1'], count: 3, decisionId: 'd'.repeat(64) },
          { chosen: [], count: 3, decisionId: null },
        ],
        other: 4,
        aims: [{ section: 'stairs', count: 3, share: 1 }],
      },
    ],
  },
  analyzed: {
    kind: 'analyzed',
    choices: {
      ['d'.repeat(64)]: {
        kind: 'pass',
        step: 'first-right',
        verdict: 'costly',
        loss: { value: 2, halfWidth: 0.5 },
        best: { chosen: ['bam-1'], wins: 25, why: 'It keeps your pair.' },
        mistakes: ['pair-given'],
        sectionsLeft: ['stairs'],
      },
    },
    rounds: [{ player: 0, deal: 0, toGo: { start: 7, end: 4 } }],
  },
  'key-made': { kind: 'key-made', secretHash: 'e'.repeat(64) },
  'key-revoked': { kind: 'key-revoked', key: 0 },
  'screen-code': { kind: 'screen-code', codeHash: 'f'.repeat(64) },
  'screen-opened': { kind: 'screen-opened', secretHash: 'a'.repeat(64) },
  left: { kind: 'left', player: 0 },
  ended: { kind: 'ended' },
};

function roundNamed(name: string): readonly RoundEvent[] {
  return playOn(opened(name), stream(name, 'answers')).log;
}

test.each(Object.values(ROOM_EVENTS).map((event) => [event.kind, event] as const))(
  'an event of a room of kind %s comes back from its JSON as it was',
  (_, event) => {
    expect(roomEvents.eventsFrom(JSON.stringify([event]))).toEqual([event]);
  },
);

test.each(Object.values(CLASS_EVENTS).map((event) => [event.kind, event] as const))(
  'an event of a class of kind %s comes back from its JSON as it was',
  (_, event) => {
    expect(classEvents.eventsFrom(JSON.stringify([event]))).toEqual([event]);
  },
);

test('E2 whole rounds come back from their JSON event by event, every kind of event among them', () => {
  const rare: RoundEvent[] = [
    { kind: 'withdrawn', seat: 1, step: 'first-left' },
    openRound(PREPARED_DEAL, { revealRacks: true }),
    { kind: 'advanced', outcome: OUTCOME },
  ];
  const events = [...rare, ...Array.from({ length: 60 }, (_, at) => roundNamed(`stored ${at}`)).flat()];
  const stored = events.map((event): RoomEvent => ({ kind: 'round', event }));
  expect(roomEvents.eventsFrom(roomEvents.textOf(stored))).toEqual(stored);
  const kinds = ['advanced', 'asked', 'closed', 'dealt', 'resolved', 'submitted', 'voted', 'withdrawn'];
  expect([...new Set(events.map(({ kind }) => kind))].sort()).toEqual(kinds);
});

test('E2 ST4 a room played through replays to the same state from the file and from memory', async () => {
  const { folder, discard } = await temporaryFolder();
  onTestFinished(discard);
  const rounds = ['first', 'second'].flatMap((name) => roundNamed(`replayed ${name}`));
  const events: RoomEvent[] = [
    ROOM_EVENTS.opened,
    ROOM_EVENTS['seat-taken'],
    ROOM_EVENTS['bot-seated'],
    ...rounds.map((event): RoomEvent => ({ kind: 'round', event })),
  ];
  const recorded = record(events, { after: 0, at: LOG_START });
  for (const store of [memoryStore(), storeOf(openSqlite(`${folder}/quadrille.db`))]) {
    await store.create('ABCDEFGH', logOf(recorded));
    expect(replayRoom((await eventsOf(store, 'ABCDEFGH'))!)).toEqual(replayRoom(recorded));
    await store.close();
  }
});

test('ST4 a class goes on from a snapshot as it does from its first event', () => {
  const seed = 'd'.repeat(64);
  const start: ClassEvent = {
    kind: 'opened',
    drill: {
      format: 'quadrille-drill/1',
      title: 'One deal twice',
      form: 'alone',
      bots: { styles: ['casual', 'casual', 'casual'], seed },
      deals: [],
    },
    deals: [PREPARED_DEAL],
    terms: { deadline: null, racks: false, names: true, cardClosed: false },
    card: { kind: 'house' },
    secretHash: 'e'.repeat(64),
  };
  const [first, ...rest] = record([start, ...Object.values(CLASS_EVENTS)], { after: 0, at: LOG_START });
  const begun = CLASS.begin(first!)!;
  let state = begun;
  for (const one of rest) {
    state = CLASS.evolve(state, one);
    expect(CLASS.startsAnew(one.event)).toBe(one.event.kind === 'dealt');
    expect(CLASS.restore(begun, CLASS.snapshotOf(state)!)).toEqual(state);
  }
});

const seatTaken = ROOM_EVENTS['seat-taken'];
describe('what is no event', () => {
  const MESSAGE = /^What is stored cannot be read; was it written by another version\?$/;

  test.each([
    ['no JSON', '[{"kind":'],
    ['null', '[null]'],
    ['no list', '{}'],
    ['an unknown kind', '[{"kind":"tea-served"}]'],
    ['a kind of the language', '[{"kind":"__proto__"}]'],
    ['an event of a class', JSON.stringify([CLASS_EVENTS.dealt])],
    ['a seat that is not there', JSON.stringify([{ ...seatTaken, seat: 4 }])],
    ['a field too few', JSON.stringify([{ ...seatTaken, secretHash: undefined }])],
    ['a field too many', JSON.stringify([{ ...seatTaken, secret: 'bam-1' }])],
    ['a tile that is not there', JSON.stringify([{ kind: 'round', event: { kind: 'submitted', seat: 0 } }])],
  ])('%s is rejected as the event of a room, and the error quotes nothing of it', (_, text) => {
    expect(() => roomEvents.eventsFrom(text)).toThrow(MESSAGE);
  });

  test('a snapshot that lacks something is rejected, and the error quotes nothing of it', () => {
    for (const read of [roomSnapshotFrom, classSnapshotFrom]) {
      expect(() => read('{"seq":3,"secret":"bam-1"}')).toThrow(MESSAGE);
    }
  });
});
