// The border of the stores: every kind of event goes through text and back, and nothing else comes in.
import { expect, onTestFinished, test } from 'vitest';
import type { RoomEvent } from '../../server/room/event.ts';
import { replayRoom } from '../../server/room/evolve.ts';
import { logged } from '../../server/room/room.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { openSqlite } from '../../server/store/sqlite.ts';
import { eventFrom } from '../../server/store/stored-event.ts';
import {
  facesOf,
  forFour,
  HOUSE_CARD,
  openRound,
  type RoundEvent,
  stream,
} from '../../shared-engine/index.ts';
import { temporaryFolder } from '../kit/temporary.ts';
import { LOG_START } from '../kit/logs.ts';
import { opened, playOn } from '../kit/rounds.ts';
import { storeOf } from '../kit/stores.ts';

const TERMS = { deadline: 30, revealRacks: true };

/** One event of each kind; the compiler holds that none is left out. */
const ONE_OF_EACH: { readonly [K in RoomEvent['kind']]: Extract<RoomEvent, { readonly kind: K }> } = {
  opened: { kind: 'opened', mode: 'alone', terms: TERMS, card: { kind: 'file', file: HOUSE_CARD } },
  'seat-taken': { kind: 'seat-taken', seat: 0, name: 'Ines 🀄', secretHash: 'a'.repeat(64) },
  'seat-vacated': { kind: 'seat-vacated', seat: 3 },
  'bot-seated': { kind: 'bot-seated', seat: 1, name: 'Odo', style: 'guarded' },
  came: { kind: 'connected', seat: 0, node: 'node', connection: 'node.1', from: { page: 'page', nth: 1 } },
  went: { kind: 'disconnected', seat: 0, connection: 'node.1' },
  'secret-changed': { kind: 'secret-changed', seat: 0, secretHash: 'b'.repeat(64), before: 'a'.repeat(64) },
  'timer-claimed': { kind: 'timer-claimed', node: 'node', others: ['other'] },
  ready: { kind: 'ready', seat: 0, ready: true },
  led: { kind: 'controls-changed', controls: { holdBefore: 'vote', standIn: [0] } },
  'more-time': { kind: 'more-time', seconds: 30 },
  class: { kind: 'class', event: { kind: 'stand-in', player: 3, on: true } },
  round: { kind: 'round', event: { kind: 'voted', seat: 2, go: false, by: 'stand-in' } },
  closed: { kind: 'closed' },
};

const PREPARED = forFour((seat) => facesOf(opened('prepared').round.racks[seat]));

const FOLLOWED: RoundEvent = {
  kind: 'advanced',
  outcome: { kind: 'vote', go: [true, true, false, true], by: ['player', 'bot', 'bot', 'bot'] },
};

function roundNamed(name: string): readonly RoundEvent[] {
  return playOn(opened(name), stream(name, 'answers')).log;
}

test.each(Object.values(ONE_OF_EACH).map((event) => [event.kind, event] as const))(
  'an event of kind %s comes back as it was',
  (_, event) => {
    expect(eventFrom(JSON.stringify(event))).toEqual(event);
  },
);

test('whole rounds come back event by event, every kind of event among them', () => {
  const rare: RoundEvent[] = [
    { kind: 'withdrawn', seat: 1, step: 'first-left' },
    openRound({ seed: 'a'.repeat(64), dealer: 0, prepared: PREPARED }, { revealRacks: true }),
    FOLLOWED,
  ];
  const events = [...rare, ...Array.from({ length: 60 }, (_, at) => roundNamed(`stored ${at}`)).flat()];
  for (const event of events) {
    const stored: RoomEvent = { kind: 'round', event };
    expect(eventFrom(JSON.stringify(stored))).toEqual(stored);
  }
  const kinds = ['asked', 'closed', 'dealt', 'advanced', 'submitted', 'resolved', 'withdrawn', 'voted'];
  expect([...new Set(events.map(({ kind }) => kind))].sort()).toEqual(kinds);
});

test('a room played through replays to the same state from the file and from memory (E2)', async () => {
  const { folder, discard } = await temporaryFolder();
  onTestFinished(discard);
  const rounds = ['first', 'second'].flatMap((name) => roundNamed(`replayed ${name}`));
  const events: RoomEvent[] = [
    ONE_OF_EACH.opened,
    ONE_OF_EACH['seat-taken'],
    ONE_OF_EACH['bot-seated'],
    ...rounds.map((event): RoomEvent => ({ kind: 'round', event })),
  ];
  const log = logged(events, { after: 0, at: LOG_START, command: null });
  for (const store of [memoryStore(), storeOf(openSqlite(`${folder}/quadrille.db`))]) {
    await store.create('ABCDEFGH', log);
    expect(replayRoom((await store.load('ABCDEFGH'))!)).toEqual(replayRoom(log));
    await store.close();
  }
});

const seatTaken = ONE_OF_EACH['seat-taken'];
test.each([
  ['no JSON', '{"kind":'],
  ['null', 'null'],
  ['a list', '[]'],
  ['an unknown kind', '{"kind":"tea-served"}'],
  ['a kind of the language', '{"kind":"__proto__"}'],
  ['a seat that is not there', JSON.stringify({ ...seatTaken, seat: 4 })],
  ['a field too few', JSON.stringify({ ...seatTaken, key: undefined })],
  ['a field too many', JSON.stringify({ ...seatTaken, secret: 'bam-1' })],
  ['a tile that is not there', JSON.stringify({ ...ONE_OF_EACH.round, event: { kind: 'submitted', seat: 0 } })],
])('%s is no event, and the error quotes nothing of it', (_, text) => {
  expect(() => eventFrom(text)).toThrow(/^A kept event cannot be read; was it written by a newer version\?$/);
});
