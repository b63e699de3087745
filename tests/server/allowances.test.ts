// What one person may do again and again: so often at once and slowly from then on, at nobody else's cost.
import { afterEach, describe, expect, test } from 'vitest';
import { CHANGES, FIRST_RETURNS, RETURNS } from '../../server/room/growth.ts';
import { classPath, seatsPath, ticketPath } from '../../shared-engine/protocol/paths.ts';
import { joinClass, openClass } from '../kit/class-room.ts';
import { FakeClock } from '../kit/clock.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { type Guest, openRoom, post, sitDown, takeSeat } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
afterEach(() => server?.stop());

describe('what one person does again and again', () => {
  async function ticketAt(guest: Guest): Promise<number> {
    return (await post(`${server.url}${ticketPath(guest.code)}`, {}, guest.secret)).status;
  }

  test('LM7 a seat is come back to 120 times at once and then once a minute, and no other seat less often for it', async () => {
    server = await startServer();
    const host = await openRoom(server);
    const tomas = await takeSeat(server, host.code);
    for (let n = 0; n < RETURNS.atOnce; n++) expect(await ticketAt(tomas)).toBe(200);
    const response = await post(`${server.url}${ticketPath(host.code)}`, {}, tomas.secret);
    expect([response.status, (await response.json()).code]).toEqual([429, 'too-often']);
    const peer = await sitDown(server, host);
    server.clock.advance(RETURNS.everyMs);
    expect([await ticketAt(tomas), await ticketAt(tomas)]).toEqual([200, 429]);
    // Whoever sits there next has used nothing of it up.
    const [back] = [await sitDown(server, host), await peer.ended];
    expect(await back.act({ kind: 'unseat', seat: tomas.seat })).toMatchObject({ kind: 'ack' });
    const wilma = await takeSeat(server, host.code, { name: 'Wilma', seat: tomas.seat });
    for (let n = 0; n < FIRST_RETURNS; n++) expect(await ticketAt(wilma)).toBe(200);
    expect(await ticketAt(wilma)).toBe(429);
  });

  test('LM7 people and bots sit down 60 times at once and then once a minute, and a person is removed at any time', async () => {
    server = await startServer({ settings: { MESSAGES_PER_SECOND: '200' } });
    const host = await openRoom(server);
    const tomas = await takeSeat(server, host.code);
    const peer = await sitDown(server, host);
    const bot = (n: number) =>
      peer.act({ kind: 'seat-bot', seat: 3, style: n % 2 === 0 ? 'casual' : 'strong' });
    // The host and a friend sit there already.
    for (let n = 2; n < CHANGES.atOnce; n++) expect(await bot(n)).toMatchObject({ kind: 'ack' });
    expect(await bot(0)).toMatchObject({ code: 'too-often' });
    expect(await peer.act({ kind: 'unseat', seat: 3 })).toMatchObject({ code: 'too-often' });
    const claim = await post(`${server.url}${seatsPath(host.code)}`, { name: 'Odo', seat: null });
    expect([claim.status, (await claim.json()).code]).toEqual([429, 'too-often']);
    expect(await peer.act({ kind: 'unseat', seat: tomas.seat })).toMatchObject({ kind: 'ack' });
    server.clock.advance(2 * CHANGES.everyMs);
    expect((await takeSeat(server, host.code)).seat).toBe(1);
  });

  test('LM8 one address has twice ROOMS_PER_MINUTE rooms with nobody at them, and gets them back in minutes', async () => {
    const clock = new FakeClock();
    server = await startServer({ clock, settings: { ROOMS_PER_MINUTE: '1' } });
    await openRoom(server);
    const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('quota') }, { id: 'one' })]);
    const { code } = await openClass(server, drill);
    const joining = async () => {
      const response = await post(`${server.url}${classPath(code, 'players')}`, { name: 'Odo' });
      return [response.status, response.ok ? null : (await response.json()).code];
    };
    const odo = await joinClass(server, code, 'Odo');
    expect(await joining()).toEqual([429, 'too-many-empty-rooms']);
    // A table at which somebody sits is not empty.
    await sitDown(server, odo);
    expect(await joining()).toEqual([201, null]);
    expect(await joining()).toEqual([429, 'too-many-empty-rooms']);
    for (let n = 0; n < 36; n++) {
      clock.advance(10_000);
      await new Promise((resolve) => setImmediate(resolve));
    }
    expect(await joining()).toEqual([201, null]);
  });
});
