// No room grows without end: withdrawals, events and the store have limits that never stop a round from being finished.
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { MAX_BEHIND_SNAPSHOT, MAX_EVENTS } from '../../server/aggregate/log-limits.ts';
import { record, rowOf } from '../../server/aggregate/recorded.ts';
import type { Store } from '../../server/ports.ts';
import type { RoomEvent } from '../../server/room/event.ts';
import { MAX_UNREADY, MAX_WITHDRAWALS } from '../../server/room/growth.ts';
import { shortLogOf } from '../../server/room/round-log.ts';
import { roomEvents } from '../../server/room/stored-event.ts';
import { type MemoryPlace, memoryStore } from '../../server/store/memory.ts';
import { ROOMS_PATH, roomPath, seatsPath } from '../../shared-engine/protocol/paths.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { begin, evolve } from '../../shared-engine/rules/exchange/evolve.ts';
import { FakeClock } from '../kit/clock.ts';
import {
  anyAnswer,
  deal,
  FRIENDS,
  type Guest,
  isClosed,
  openRoom,
  ownView,
  playOn,
  post,
  sitDown,
  tableOfFour,
  ticketFor,
} from '../kit/http-client.ts';
import { opened, playOn as playRound } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
afterEach(() => server?.stop());

describe('withdrawing', () => {
  test('LM1 a pass is withdrawn five times in a step, then it stays, and the next step begins anew', async () => {
    server = await startServer();
    const { code, peers } = await tableOfFour(server);
    await deal(peers);
    const [ines] = peers as [(typeof peers)[0]];
    const pass = () => ines.choose(anyAnswer(ownView(ines), { below: () => 0 }));
    const withdraw = (step: 'first-right' | 'first-across') => ines.choose({ kind: 'withdraw', step });
    for (let n = 0; n < MAX_WITHDRAWALS; n++) {
      expect(await pass()).toMatchObject({ kind: 'ack' });
      expect(await withdraw('first-right')).toMatchObject({ kind: 'ack' });
    }
    expect(await pass()).toMatchObject({ kind: 'ack' });
    const before = (await server.store.history(code))?.rows.length;
    for (let n = 0; n < 15; n++) {
      expect(await withdraw('first-right')).toMatchObject({ code: 'too-many-withdrawals' });
    }
    expect((await server.store.history(code))?.rows).toHaveLength(before!);
    for (const peer of peers.slice(1)) await peer.choose(anyAnswer(ownView(peer), { below: () => 0 }));
    await pass();
    expect(await withdraw('first-across')).toMatchObject({ kind: 'ack' });
  });

  test('LM1 readiness is taken back twenty times before a deal, then it stays, and the next deal begins anew', async () => {
    server = await startServer({ settings: { MESSAGES_PER_SECOND: '100' } });
    const { peers } = await tableOfFour(server);
    const [ines] = peers as [(typeof peers)[0]];
    const ready = (is: boolean) => ines.act({ kind: 'ready', ready: is });
    for (let n = 0; n < MAX_UNREADY; n++) {
      expect([await ready(true), await ready(false)]).toMatchObject([{ kind: 'ack' }, { kind: 'ack' }]);
    }
    expect(await ready(true)).toMatchObject({ kind: 'ack' });
    expect(await ready(false)).toMatchObject({ code: 'stays-ready' });
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'readiness')));
    expect([await ready(true), await ready(false)]).toMatchObject([{ kind: 'ack' }, { kind: 'ack' }]);
  });

  test('LM3 the shortest log of a round leads to the same round, after every event and whatever was withdrawn', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 8 }), (name) => {
        const { log } = playRound(opened(name), stream(name, 'short log'));
        const [dealt, ...rest] = log;
        if (dealt?.kind !== 'dealt') throw new Error('no deal');
        let round = begin(dealt);
        for (const event of rest.flatMap(withdrawnOnce)) {
          round = evolve(round, event);
          expect(shortLogOf(round).reduce(evolve, begin(dealt))).toEqual(round);
        }
        expect(shortLogOf(round).length).toBeLessThanOrEqual(12);
      }),
      { numRuns: 30 },
    );
  });
});

const MORE_TIME: RoomEvent = { kind: 'more-time', seconds: 0 };

/** A pass is submitted, withdrawn and submitted again. */
function withdrawnOnce(event: RoundEvent): readonly RoundEvent[] {
  if (event.kind !== 'submitted') return [event];
  return [event, { kind: 'withdrawn', seat: event.seat, step: event.step }, event];
}

describe('a long log', () => {
  let place: MemoryPlace;
  let starts = 0;
  /** How many events each load read behind the first row. */
  let read: number[];

  function countingStore(): Store {
    const store = memoryStore(place);
    return {
      ...store,
      async load(code) {
        const log = await store.load(code);
        read.push((log?.rows.slice(1) ?? []).reduce((sum, { version, after }) => sum + version - after, 0));
        return log;
      },
    };
  }

  async function restarted(): Promise<TestServer> {
    await server?.stop();
    read = [];
    return startServer({
      seed: `start ${starts++}`,
      store: countingStore(),
      settings: { MESSAGES_PER_SECOND: '100000' },
    });
  }

  /** Adds an event that changes nothing again and again, a row each, as an earlier version without limits did. */
  async function lengthen(code: string, until: number, event: RoomEvent = MORE_TIME): Promise<void> {
    const store = memoryStore(place);
    const version = (await store.versions([code])).get(code)!;
    const at = server.clock.now();
    for (let after = version; after < until; after++) {
      const row = rowOf(record([event], { after, at }), [], roomEvents);
      await store.commit([{ code, row, snapshot: null }]);
    }
  }

  /** One event for each of four guests, so many times; as they come at once, a row holds four at most. */
  async function comeBack(guests: readonly Guest[], times: number): Promise<void> {
    for (let n = 0; n < times; n++) await Promise.all(guests.map((guest) => ticketFor(server, guest)));
  }
  const TIMES = MAX_BEHIND_SNAPSHOT / 4 + 5;
  const MOST = MAX_BEHIND_SNAPSHOT + 4;

  test('LM2 a room of 10,000 events finishes its round, people come back to it, and nothing more begins there', async () => {
    place = new Map();
    server = await restarted();
    const host = await openRoom(server, { ...FRIENDS, bots: ['casual', 'casual', null] });
    const peer = await sitDown(server, host);
    await peer.act({ kind: 'ready', ready: true });
    await peer.untilTable(({ round }) => round === 1);
    await lengthen(host.code, MAX_EVENTS + 20);
    server = await restarted();
    const back = await sitDown(server, host);
    await playOn(back, 'to the end');
    expect(isClosed(back)).toBe(true);
    for (const action of [
      { kind: 'ready', ready: true },
      { kind: 'seat-bot', seat: 1, style: 'strong' },
    ] as const) {
      const message = expect.stringMatching(/used as long as one can be/);
      expect(await back.act(action)).toMatchObject({ kind: 'rejected', code: 'used-up', message });
    }
    const claim = await post(`${server.url}${seatsPath(host.code)}`, { name: 'Odo', seat: 1 });
    expect([claim.status, (await claim.json()).code]).toEqual([409, 'used-up']);
    // However long it is, whoever sits there gets in, with the review, and can leave.
    for (let n = 0; n < 20; n++) await ticketFor(server, host);
    const again = await sitDown(server, host);
    expect((await again.review()).round).toBe(1);
    expect(await again.act({ kind: 'leave' })).toMatchObject({ kind: 'ack' });
  });

  test('LM3 loading reads at most 256 events and one row behind the newest snapshot, though a room was told hundreds of things between two deals', async () => {
    place = new Map();
    server = await restarted();
    const { code, guests } = await tableOfFour(server);
    await comeBack(guests, TIMES);
    server = await restarted();
    expect((await fetch(`${server.url}${roomPath(code)}`)).status).toBe(200);
    expect((await memoryStore(place).history(code))!.rows.at(-1)!.version).toBeGreaterThan(MOST);
    expect(read[0]).toBeLessThanOrEqual(MOST);
    expect((await sitDown(server, guests[1]!)).table.you).toBe(1);
  });

  test('LM3 loading is as bounded in the middle of a round, and everybody finds the own choice as it was', async () => {
    place = new Map();
    server = await restarted();
    const { code, guests, peers } = await tableOfFour(server);
    await deal(peers);
    for (const peer of peers.slice(0, 2)) await peer.choose(anyAnswer(ownView(peer), { below: () => 0 }));
    const [first] = peers.map(ownView);
    await comeBack(guests, TIMES);
    server = await restarted();
    const back = await sitDown(server, guests[0]!);
    expect(read[0]).toBeLessThanOrEqual(MOST);
    expect(ownView(back)).toEqual(first);
    expect((await memoryStore(place).load(code))!.rows.length).toBeLessThanOrEqual(MAX_BEHIND_SNAPSHOT + 2);
  });

  test('LM5 rooms that nobody is in count no longer after minutes, and are found again by their codes', async () => {
    place = new Map();
    const clock = new FakeClock();
    server = await startServer({ store: memoryStore(place), clock, settings: { MAX_ROOMS: '3' } });
    const left = [await openRoom(server), await openRoom(server), await openRoom(server)];
    expect((await post(`${server.url}${ROOMS_PATH}`, FRIENDS)).status).toBe(503);
    for (let n = 0; n < 36; n++) {
      clock.advance(10_000);
      await new Promise((resolve) => setImmediate(resolve));
    }
    expect((await post(`${server.url}${ROOMS_PATH}`, FRIENDS)).status).toBe(201);
    for (const { code } of left.slice(1)) {
      expect((await fetch(`${server.url}${roomPath(code)}`)).status).toBe(200);
    }
  });

  test('LM4 the sweep removes the rooms untouched longest once all together are larger than RETENTION_MB', async () => {
    place = new Map();
    const clock = new FakeClock();
    server = await startServer({ store: memoryStore(place), clock, settings: { RETENTION_MB: '1' } });
    const old = await openRoom(server);
    clock.advance(1000);
    const long: RoomEvent = { kind: 'timer-claimed', node: 'n', others: ['x'.repeat(200)] };
    await lengthen(old.code, 3000, long);
    clock.advance(1000);
    const young = await openRoom(server);
    await lengthen(young.code, 3000, long);
    expect([...place.keys()]).toHaveLength(2);
    clock.advance(120_000);
    await expect.poll(() => [...place.keys()]).toEqual([young.code]);
    expect((await fetch(`${server.url}${roomPath(old.code)}`)).status).toBe(404);
  });
});
