// V1, V2: what reaches each audience and the log over whole rounds, checked against the room's own log of events.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hashSecret } from '../../server/secrets.ts';
import { laterSeed } from '../../shared-engine/rules/deal/commitment.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, isFace } from '../../shared-engine/rules/tiles/face.ts';
import {
  ALONE,
  anyAnswer,
  deal,
  isClosed,
  openRoom,
  ownView,
  playOn,
  post,
  sitDown,
  tableOfFour,
  takeSeat,
  watch,
} from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'privacy' });
});
afterEach(() => server.stop());

/** A whole round of four people with somebody watching; ends when all reviews are there. */
async function wholeRound(seed: string) {
  const { code, guests, peers } = await tableOfFour(server);
  const spectator = await watch(server, code);
  await deal(peers);
  await Promise.all(peers.map((peer) => playOn(peer, seed)));
  await Promise.all(peers.map((peer) => peer.review()));
  await Promise.all([...peers, spectator].map((peer) => peer.roundTrip()));
  return { code, guests, peers, spectator };
}

describe('over a whole round', () => {
  test('V1 each seat is told its own tiles and no other', async () => {
    const { code, peers } = await wholeRound('own tiles');
    for (const [seat, peer] of peers.entries()) {
      let compared = 0;
      for (const message of peer.messages) {
        if (message.kind !== 'table' || message.table.view === null) continue;
        const { view } = message.table;
        if (view.audience !== 'seat') throw new Error('not a seat’s view');
        const round = await roundAt(code, message.seq);
        expect(view.rack).toEqual(facesOf(round.racks[SEATS[seat]!]));
        expect(view.record.start).toEqual(facesOf(dealTiles(round.deal).racks[SEATS[seat]!]));
        expect(movedIn(view.record.steps)).toEqual(movesOf(round, SEATS[seat]!));
        const { rack, answer, record, ...rest } = view;
        const others = { ...message, table: { ...message.table, view: rest } };
        expect(facesIn(others)).toEqual([]);
        expect(answer === null || isOwn(facesIn(answer), rack)).toBe(true);
        compared++;
      }
      // One a step at least: what happens together is told together.
      expect(compared).toBeGreaterThan(5);
    }
  });

  test('Z1 each review speaks of tiles its seat had in hand, and goes to that seat alone', async () => {
    const { peers } = await wholeRound('reviews');
    for (const [seat, peer] of peers.entries()) {
      const { review } = await peer.review();
      const { start, steps } = ownView(peer).record;
      const seen = new Set([...start, ...facesIn(steps)]);
      expect(review.seat).toBe(seat);
      expect(facesIn(review).filter((face) => !seen.has(face as never))).toEqual([]);
    }
  });

  test('V2 a spectator is told no tile at all', async () => {
    const { spectator } = await wholeRound('spectator');
    expect(spectator.frames.length).toBeGreaterThan(5);
    for (const frame of spectator.frames) expect(facesIn(JSON.parse(frame))).toEqual([]);
    expect(spectator.messages.filter(({ kind }) => kind === 'review')).toEqual([]);
    expect(spectator.table.view?.audience).toBe('spectator');
  });

  test('D4 Z2 where racks stay private, nothing that a seat or a spectator receives deals the racks anew', async () => {
    const { peers, spectator } = await wholeRound('dealt anew');
    const { dealer } = ownView(peers[0]!);
    const starts = peers.map((peer) => ownView(peer).record.start);
    for (const peer of [...peers, spectator]) {
      const numbers = new Set(peer.frames.flatMap((frame) => frame.match(/[0-9a-f]{64}/g) ?? []));
      expect(numbers.size).toBeGreaterThan(0);
      const dealt = [...numbers].map((seed) => dealTiles({ seed, dealer }).racks.map(facesOf));
      expect(
        dealt.filter((racks) => racks.some((rack, seat) => rack.join() === starts[seat]!.join())),
      ).toEqual([]);
    }
  });

  test('D4 Z2 where racks stay private nobody is told the seed, of the deal or of later draws, nor anybody’s secret', async () => {
    const { code, guests, peers, spectator } = await wholeRound('seed');
    const seed = await seedOf(code);
    const hidden = [
      seed,
      laterSeed({ seed }),
      ...guests.flatMap(({ secret }) => [secret, hashSecret(secret)]),
    ];
    for (const peer of [...peers, spectator]) {
      for (const message of peer.messages) {
        const text = JSON.stringify(message);
        expect(hidden.filter((word) => text.includes(word))).toEqual([]);
      }
    }
  });
});

describe('the log', () => {
  test('the log tells of every step and holds no tile, name, code, secret or seed, rejections and failures included', async () => {
    await server.stop();
    server = await startServer({
      seed: 'log',
      bots: {
        choose: async ({ view, seed }) => {
          throw new Error(`${view.rack.join()} of ${seed}`);
        },
      },
    });
    const broken = await post(`${server.url}/api/rooms`, {
      name: 'Zyphrania',
      door: 'alone',
      bots: ['joker'],
    });
    expect(broken.status).toBe(400);
    const { code, guests, peers } = await wholeRound('log');
    const answer = await peers[0]!.choose({ kind: 'pass', step: 'first-right', tiles: ['joker'], blind: 0 });
    expect(answer.kind).toBe('rejected');
    await peers[0]!.close();
    await expect.poll(() => server.logged.join('')).toContain('connection closed');
    expectConnectionsNamed();
    await expectBotFailure();

    const text = server.logged.join('');
    for (const step of ['first-right', 'first-across', 'first-left', 'vote'])
      expect(text).toContain(`"${step}"`);
    expect(text).toContain('round-closed');
    const secrets = guests.flatMap(({ secret }) => [secret, hashSecret(secret)]);
    const planted = [...namesAt(peers[0]!), ...secrets, guests[0]!.code, await seedOf(code)];
    expect(planted.filter((word) => text.includes(word))).toEqual([]);
    expect(FACES.filter((face) => new RegExp(`\\b${face}\\b`).test(text))).toEqual([]);
  });

  /** Each line of a connection says which it is and which request opened it, and one says where it entered. */
  function expectConnectionsNamed() {
    const lines = server.logged.map((line) => JSON.parse(line));
    const about = (text: string) => lines.filter(({ msg }) => msg === text);
    const opened = about('connection opened');
    expect(opened.map(({ connection }) => connection)).toEqual([1, 2, 3, 4, 5]);
    expect(about('entered').map(({ connection }) => connection)).toEqual([1, 2, 3, 4, 5]);
    expect(about('entered').filter(({ seat }) => seat === 'none')).toHaveLength(1);
    const { room } = about('event')[0];
    expect(about('entered').every((line) => line.room === room)).toBe(true);
    const { request, connection } = about('entered').find(({ seat }) => seat === 0);
    expect(opened.find((line) => line.connection === connection).request).toBe(request);
    expect(about('a frame was rejected')).toMatchObject([{ request, connection }]);
    expect(about('connection closed')).toMatchObject([{ request, connection }]);
    expect(about('request').filter((line) => !/^req-/.test(line.request))).toEqual([]);
  }

  /** A room whose bots fail with tiles and seed in the error's own words. */
  async function expectBotFailure() {
    const peer = await sitDown(server, await openRoom(server, ALONE));
    await peer.untilTable((table) => table.round === 1, 'the deal');
    await expect.poll(() => server.logged.some((line) => line.includes('a bot failed'))).toBe(true);
  }
});

describe('who sits down after the deal', () => {
  test('V1 who sits down during a round is told of it what a spectator is told, and gets no review', async () => {
    const { code, peers, guests } = await tableOfFour(server);
    await deal(peers);
    const [leaver, ...stayers] = peers as [Peer, ...Peer[]];
    expect(await leaver.choose(anyFirst(leaver))).toMatchObject({ kind: 'ack' });
    expect(await leaver.act({ kind: 'leave' })).toMatchObject({ kind: 'ack' });
    expect(leaver.table).toMatchObject({ you: null, view: { audience: 'spectator' } });
    await Promise.all(stayers.map((peer) => playOn(peer, 'without one')));
    await Promise.all(stayers.map((peer) => peer.review()));

    const heir = await takeSeat(server, code, { name: 'Runa', seat: guests[0]!.seat });
    const peer = await sitDown(server, heir);
    expect(peer.table).toMatchObject({ you: 0, view: { audience: 'spectator' } });
    expect(isClosed(peer)).toBe(true);
    await peer.roundTrip();
    for (const frame of peer.frames) expect(facesIn(JSON.parse(frame))).toEqual([]);
    await deal([peer, ...stayers]);
    expect(peer.table.view?.audience).toBe('seat');
  });

  test('Z1 who takes a seat does not get the review of the one who sat there before', async () => {
    const { code, peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'heir')));
    await peers[2]!.review();
    await peers[2]!.act({ kind: 'leave' });
    const heir = await sitDown(server, await takeSeat(server, code, { name: 'Runa', seat: 2 }));
    await heir.roundTrip();
    expect(heir.table.you).toBe(2);
    for (const frame of heir.frames) expect(facesIn(JSON.parse(frame))).toEqual([]);
  });

  function anyFirst(peer: Peer) {
    return anyAnswer(ownView(peer), { below: () => 0 });
  }
});

/** Every string anywhere in a value that is the name of a face. */
function facesIn(value: unknown): string[] {
  if (typeof value === 'string') return isFace(value) ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(facesIn);
}

function isOwn(faces: readonly string[], rack: readonly string[]): boolean {
  const left = [...rack];
  return faces.every((face) => left.splice(left.indexOf(face), 1)[0] === face);
}

/** From the log, where alone it stands. */
async function seedOf(code: string): Promise<string> {
  const dealt = (await eventsOf(server.store, code))!
    .flatMap(({ event }) => (event.kind === 'round' ? [event.event] : []))
    .find((event) => event.kind === 'dealt');
  return dealt!.deal.seed;
}

async function roundAt(code: string, seq: number): Promise<Round> {
  const log = (await eventsOf(server.store, code))!.filter((entry) => entry.seq <= seq);
  const events = log.flatMap(({ event }): RoundEvent[] => (event.kind === 'round' ? [event.event] : []));
  return replay(events)!;
}

function movedIn(steps: ReturnType<typeof ownView>['record']['steps']) {
  return steps.flatMap((step) => (step.kind === 'move' ? [[step.gave, step.received]] : []));
}

function movesOf(round: Round, seat: Seat) {
  return round.resolved.flatMap((step) =>
    step.kind === 'move' ? [[step.gave[seat], step.received[seat]]] : [],
  );
}

function namesAt({ table }: Peer): string[] {
  return table.seats.flatMap((seat) => (seat.kind === 'empty' ? [] : [seat.name]));
}
