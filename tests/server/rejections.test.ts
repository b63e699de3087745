// E1 over the socket: every rejected command gets one code and one message, and nothing changes.
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Choice } from '../../shared-engine/rules/exchange/command.ts';
import type { MoveStep } from '../../shared-engine/rules/exchange/schedule.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import {
  ALONE,
  deal,
  FRIENDS,
  openRoom,
  ownView,
  playOn,
  sitDown,
  tableOfFour,
  takeSeat,
  watch,
} from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'rejections' });
});
afterAll(() => server.stop());

describe('at the first pass of four people', () => {
  let peers: Peer[];
  let code: string;
  beforeEach(async () => {
    ({ peers, code } = await tableOfFour(server));
    await deal(peers);
  });

  const pass = (tiles: readonly Face[], blind = 0, step: MoveStep = 'first-right'): Choice => ({
    kind: 'pass',
    step,
    tiles,
    blind,
  });
  const plain = (peer: Peer) => ownView(peer).rack.filter((face) => face !== 'joker');
  const stranger = (peer: Peer) => FACES.find((face) => !ownView(peer).rack.includes(face))!;

  const table: readonly [string, string, (peer: Peer) => Promise<unknown>][] = [
    ['C1 two tiles', 'wrong-count', (p) => p.choose(pass(plain(p).slice(0, 2)))],
    ['C1 four tiles', 'wrong-count', (p) => p.choose(pass(plain(p).slice(0, 4)))],
    ['C1 no tile', 'wrong-count', (p) => p.choose(pass([]))],
    ['C2 a joker in a pass', 'joker-in-pass', (p) => p.choose(pass(['joker', ...plain(p).slice(0, 2)]))],
    ['a tile not held', 'tile-not-held', (p) => p.choose(pass([stranger(p), ...plain(p).slice(0, 2)]))],
    ['B1 a blind pass to the right', 'blind-not-allowed', (p) => p.choose(pass(plain(p).slice(0, 2), 1))],
    ['B1 half a blind tile', 'wrong-count', (p) => p.choose(pass(plain(p).slice(0, 2), 0.5))],
    ['a later step', 'wrong-step', (p) => p.choose(pass(plain(p).slice(0, 3), 0, 'first-left'))],
    ['a vote', 'wrong-step', (p) => p.choose({ kind: 'vote', step: 'vote', go: true })],
    ['a number across', 'wrong-step', (p) => p.choose({ kind: 'ask', step: 'courtesy-ask', count: 1 })],
    [
      'C4 a withdrawal of nothing',
      'nothing-to-withdraw',
      (p) => p.choose({ kind: 'withdraw', step: 'first-right' }),
    ],
    ['a choice for another seat', 'not-your-seat', (p) => p.choose(pass(plain(p).slice(0, 3)), { seat: 2 })],
    ['a round to come', 'wrong-round', (p) => p.choose(pass(plain(p).slice(0, 3)), { round: 2 })],
    ['being ready meanwhile', 'round-running', (p) => p.act({ kind: 'ready', ready: true })],
    [
      'a bot for a seat meanwhile',
      'round-running',
      (p) => p.act({ kind: 'seat-bot', seat: 3, style: 'strong' }),
    ],
  ];
  test.each(table)('%s is rejected with %s', async (_, rejection, attempt) => {
    const before = await server.store.load(code);
    const message = expect.stringMatching(/^[A-Z].*\.$/);
    expect(await attempt(peers[0]!)).toEqual({
      kind: 'rejected',
      id: expect.any(String),
      code: rejection,
      message,
    });
    expect(await server.store.load(code)).toEqual(before);
  });

  test('a second answer is rejected with already-answered, until the first is withdrawn', async () => {
    const [a] = peers as [Peer];
    expect(await a.choose(pass(plain(a).slice(0, 3)))).toMatchObject({ kind: 'ack' });
    expect(await a.choose(pass(plain(a).slice(3, 6)))).toMatchObject({ code: 'already-answered' });
    expect(ownView(a).answer).toEqual({ kind: 'pass', tiles: plain(a).slice(0, 3), blind: 0 });
    expect(await a.choose({ kind: 'withdraw', step: 'first-right' })).toMatchObject({ kind: 'ack' });
    expect(await a.choose(pass(plain(a).slice(3, 6)))).toMatchObject({ kind: 'ack' });
  });

  test('a spectator’s choice is rejected with not-seated', async () => {
    const spectator = await watch(server, code);
    expect(await spectator.choose(pass(plain(peers[0]!).slice(0, 3)))).toMatchObject({ code: 'not-seated' });
    expect(await spectator.act({ kind: 'leave' })).toMatchObject({ code: 'not-seated' });
  });
});

describe('a command repeated with its id', () => {
  test('ID1 is answered alike and happens once', async () => {
    const peer = await sitDown(server, await openRoom(server, ALONE));
    await peer.untilTable((table) => table.round === 1);
    const { code } = peer.table;
    const tiles = ownView(peer).rack.filter((face) => face !== 'joker');
    const choice: Choice = { kind: 'pass', step: 'first-right', tiles: tiles.slice(0, 3), blind: 0 };
    expect(await peer.choose(choice, { id: 'once' })).toEqual({ kind: 'ack', id: 'once' });
    await peer.untilTable(
      ({ view }) => view?.stage.phase === 'passing' && view.stage.step === 'first-across',
    );
    const own = async () =>
      (await server.store.history(code))!.rows.filter(({ commands }) =>
        commands.some((command) => command.endsWith('/once')),
      );
    const before = await own();
    expect(before).toHaveLength(1);
    expect(await peer.choose(choice, { id: 'once' })).toEqual({ kind: 'ack', id: 'once' });
    expect(await own()).toEqual(before);
  });

  test('ID2 is rejected alike, even when it would be right by now', async () => {
    const peer = await sitDown(server, await openRoom(server, ALONE));
    await peer.untilTable((table) => table.round === 1);
    const early: Choice = { kind: 'vote', step: 'vote', go: true };
    const rejected = await peer.choose(early, { id: 'early' });
    expect(rejected).toMatchObject({ kind: 'rejected', code: 'wrong-step' });
    await playOn(peer, 'to the vote', ({ stage }) => stage.phase === 'voting');
    expect(await peer.choose(early, { id: 'early' })).toEqual(rejected);
    expect(await peer.choose(early, { id: 'late' })).toMatchObject({ kind: 'ack' });
  });

  test('ID4 by another person is another command', async () => {
    const host = await openRoom(server);
    const guest = await takeSeat(server, host.code);
    const [a, b] = [await sitDown(server, host), await sitDown(server, guest)];
    expect(await a.act({ kind: 'ready', ready: true }, 'same')).toMatchObject({ kind: 'ack' });
    expect(await b.act({ kind: 'ready', ready: true }, 'same')).toMatchObject({ kind: 'ack' });
    await b.untilTable((table) => table.round === 1, 'the deal');
  });
});

describe('between rounds', () => {
  test('only the host seats bots and vacates seats', async () => {
    const { peers } = await tableOfFour(server);
    const [host, guest] = peers as [Peer, Peer, Peer, Peer];
    expect(await guest.act({ kind: 'unseat', seat: 0 })).toMatchObject({ code: 'not-the-host' });
    expect(await guest.act({ kind: 'seat-bot', seat: 0, style: 'casual' })).toMatchObject({
      code: 'not-the-host',
    });
    expect(await host.act({ kind: 'seat-bot', seat: 1, style: 'casual' })).toMatchObject({
      code: 'seat-taken',
    });
    expect(await host.act({ kind: 'unseat', seat: 1 })).toMatchObject({ kind: 'ack' });
    expect(await host.act({ kind: 'seat-bot', seat: 1, style: 'casual' })).toMatchObject({ kind: 'ack' });
    await guest.untilTable(({ you, seats }) => you === null && seats[1].kind === 'bot', 'the lost seat');
    expect(await guest.act({ kind: 'ready', ready: true })).toMatchObject({ code: 'not-seated' });
  });

  test('a choice before the first deal is rejected with no-round', async () => {
    const peer = await sitDown(server, await openRoom(server, FRIENDS));
    const choice: Choice = { kind: 'vote', step: 'vote', go: true };
    expect(await peer.choose(choice, { round: 1 })).toMatchObject({ code: 'no-round' });
  });

  test('a choice after the close is rejected with round-closed', async () => {
    const peer = await sitDown(server, await openRoom(server, ALONE));
    await peer.untilTable((table) => table.round === 1);
    await playOn(peer, 'to the close');
    expect(await peer.choose({ kind: 'vote', step: 'vote', go: true })).toMatchObject({
      code: 'round-closed',
    });
  });

  test('the host’s verbs go to the next person when the host leaves', async () => {
    const { peers } = await tableOfFour(server);
    const [host, next] = peers as [Peer, Peer, Peer, Peer];
    expect(await host.act({ kind: 'leave' })).toMatchObject({ kind: 'ack' });
    await next.untilTable(({ seats }) => seats[1].kind === 'person' && seats[1].host, 'the new host');
    expect(await next.act({ kind: 'unseat', seat: 2 })).toMatchObject({ kind: 'ack' });
  });
});
