// K1, K2 and the absent: deadlines, stand-ins, and whom a table waits for, with a clock that the test moves.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import {
  ALONE,
  anyAnswer,
  deal,
  FRIENDS,
  type Guest,
  openRoom,
  ownView,
  pass,
  playOn,
  sitDown,
  takeSeat,
} from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'waiting' });
});
afterEach(() => server.stop());

const first = (peer: Peer) => anyAnswer(ownView(peer), { below: () => 0 });
const stepAt = (peer: Peer) => stepOf(ownView(peer).stage) ?? 'closed';

/** Two people and two bots at the first pass, the bots submitted already. */
async function twoPeople(deadline: number | null): Promise<{ guests: [Guest, Guest]; a: Peer; b: Peer }> {
  const host = await openRoom(server, { ...FRIENDS, terms: { deadline, revealRacks: false } });
  const guest = await takeSeat(server, host.code, { name: 'Tomas', seat: 2 });
  const [a, b] = [await sitDown(server, host), await sitDown(server, guest)];
  await deal([a, b]);
  await botsSealed(a);
  return { guests: [host, guest], a, b };
}

async function botsSealed(peer: Peer): Promise<void> {
  await peer.untilTable(({ view }) => {
    return view?.stage.phase === 'passing' && view.stage.answered[1] && view.stage.answered[3];
  }, 'the bots’ passes');
}

function isGone(peer: Peer, seat: 0 | 2): boolean {
  const chair = peer.table.seats[seat];
  return chair.kind === 'person' && !chair.present;
}

describe('K1 a deadline', () => {
  test('K1 is told as the time left, and runs anew for every step', async () => {
    const { a, b } = await twoPeople(30);
    expect(a.table.remaining).toBe(30_000);
    await pass(server, 12_000, [a, b]);
    await a.choose(first(a));
    await b.roundTrip();
    expect(b.table.remaining).toBe(18_000);
    await b.choose(first(b));
    await a.untilTable(() => stepAt(a) === 'first-across');
    expect(a.table.remaining).toBe(30_000);
  });

  test('K2 is met by the stand-in of who has not chosen, and the step says so', async () => {
    const { a, b } = await twoPeople(15);
    await a.choose(first(a));
    await pass(server, 14_999, [a, b]);
    expect(stepAt(a)).toBe('first-right');
    await pass(server, 1, [a, b]);
    await b.untilTable(() => stepAt(b) === 'first-across', 'the next step');
    expect(ownView(b).record.steps[0]).toMatchObject({ by: ['player', 'bot', 'stand-in', 'bot'] });
    expect(await b.choose(first(b))).toMatchObject({ kind: 'ack' });
  });

  test('K2 carries a round whose people all sleep to its close, the vote and the numbers included', async () => {
    const { a, b } = await twoPeople(15);
    const steps = () => ownView(a).record.steps;
    while (stepAt(a) !== 'closed') {
      const before = steps().length;
      await pass(server, 15_000, [a, b]);
      await a.untilTable(() => steps().length > before || stepAt(a) === 'closed', 'the next step');
    }
    for (const { by } of steps()) {
      for (const seat of [0, 2] as const) expect(by[seat] ?? 'stand-in').toBe('stand-in');
    }
    await a.review();
  });

  test('K3 does not run while the server is down', async () => {
    const { guests, a, b } = await twoPeople(60);
    await pass(server, 40_000, [a, b]);
    const { clock, store } = server;
    await server.stop();
    clock.advance(3_600_000);
    server = await startServer({ seed: 'up again', clock, store });
    const back = await sitDown(server, guests[0]);
    expect(back.table.remaining).toBe(60_000);
    expect(stepAt(back)).toBe('first-right');
    await pass(server, 59_999, [back]);
    expect(stepAt(back)).toBe('first-right');
    await pass(server, 1, [back]);
    await back.untilTable(() => stepAt(back) === 'first-across', 'the next step');
  });

  test('K1 stands where the terms set none', async () => {
    const { a, b } = await twoPeople(null);
    expect(a.table.remaining).toBeNull();
    await pass(server, 600_000, [a, b]);
    expect(stepAt(a)).toBe('first-right');
    expect(ownView(b).answer).toBeNull();
  });
});

describe('a person who is disconnected', () => {
  test('PR5 is acted for after 60 seconds while somebody waits, and may come back at any time', async () => {
    const { a, b, guests } = await twoPeople(null);
    await b.close();
    await a.untilTable(() => isGone(a, 2), 'the absence');
    await a.choose(first(a));
    await pass(server, 59_999, [a]);
    expect(stepAt(a)).toBe('first-right');
    await pass(server, 1, [a]);
    await a.untilTable(() => stepAt(a) === 'first-across', 'the next step');
    expect(ownView(a).record.steps[0]).toMatchObject({ by: ['player', 'bot', 'stand-in', 'bot'] });

    // Gone already, so at the next step nobody waits another minute.
    await a.untilTable(
      ({ view }) => view?.stage.phase === 'passing' && view.stage.answered[2],
      'the stand-in',
    );
    const back = await sitDown(server, guests[1]);
    expect(ownView(back).record.start).toEqual(ownView(b).record.start);
    expect(ownView(back).answer).not.toBeNull();
    expect(await back.choose({ kind: 'withdraw', step: 'first-across' })).toMatchObject({ kind: 'ack' });
    expect(await back.choose(first(back))).toMatchObject({ kind: 'ack' });
    await Promise.all([a, back].map((peer) => playOn(peer, 'to the end')));
  });

  test('PR5 finds the round as it was, however late, when nobody was there to wait', async () => {
    const guest = await openRoom(server, ALONE);
    const peer = await sitDown(server, guest);
    await peer.untilTable(({ round }) => round === 1);
    await botsSealed(peer);
    const { rack } = ownView(peer);
    await peer.close();
    server.clock.advance(3_600_000);
    const back = await sitDown(server, guest);
    expect(ownView(back)).toMatchObject({
      rack,
      answer: null,
      stage: { phase: 'passing', step: 'first-right' },
    });
  });

  test('PR6 holds up the next deal for ten seconds and no longer', async () => {
    const { a, b } = await twoPeople(null);
    await Promise.all([a, b].map((peer) => playOn(peer, 'first round')));
    await b.close();
    await a.untilTable(() => isGone(a, 2), 'the absence');
    await a.act({ kind: 'ready', ready: true });
    await pass(server, 9_999, [a]);
    expect(a.table.round).toBe(1);
    await pass(server, 1, [a]);
    await a.untilTable(({ round }) => round === 2, 'the next deal');
    expect(a.table.seats[2]).toMatchObject({ kind: 'person', name: 'Tomas' });
  });
});

describe('bots', () => {
  test('SC1 W1 W5 pause two and a half times as long where the table plays slowly, and East is who is always East', async () => {
    await server.stop();
    server = await startServer({ settings: { BOT_DELAY_MS: '1000' } });
    const peer = await sitDown(
      server,
      await openRoom(server, { ...ALONE, terms: { botPace: 'slow', whoIsEast: 'always' } }),
    );
    await peer.untilTable(({ round }) => round === 1);
    expect(ownView(peer).dealer).toBe(0);
    const answered = () => {
      const { stage } = ownView(peer);
      return stage.phase === 'passing' && stage.answered[1];
    };
    await pass(server, 3124, [peer]);
    expect(answered()).toBe(false);
    await pass(server, 1, [peer]);
    await peer.untilTable(answered, 'the first bot');
  });

  test('SC1 pause before they choose, one after the other', async () => {
    await server.stop();
    server = await startServer({ settings: { BOT_DELAY_MS: '1000' } });
    const peer = await sitDown(server, await openRoom(server, ALONE));
    await peer.untilTable(({ round }) => round === 1);
    const submitted = () => {
      const { stage } = ownView(peer);
      return stage.phase === 'passing' && stage.answered;
    };
    await pass(server, 1249, [peer]);
    expect(submitted()).toEqual([false, false, false, false]);
    await pass(server, 1, [peer]);
    await peer.untilTable(() => String(submitted()) === 'false,true,false,false', 'the first bot');
    await pass(server, 250, [peer]);
    await peer.untilTable(() => String(submitted()) === 'false,true,true,false', 'the second bot');
  });
});
