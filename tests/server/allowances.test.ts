// What one person may do again and again: so often at once and slowly from then on, at nobody else's cost.
import { afterEach, describe, expect, test } from 'vitest';
import { MAX_EVENTS } from '../../server/aggregate/log-limits.ts';
import { type ClassCommand, decideClass } from '../../server/class/decide.ts';
import { beginClass, evolveClass } from '../../server/class/evolve.ts';
import { AIMS } from '../../server/class/state.ts';
import { CHANGES, FIRST_CHANGES, FIRST_RETURNS, RETURNS, SITTINGS } from '../../server/room/growth.ts';
import { classPath, seatsPath, ticketPath } from '../../shared-engine/protocol/paths.ts';
import { act, type JoinedPlayer, joinClass, openClass, TERMS } from '../kit/class-room.ts';
import { FakeClock } from '../kit/clock.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { type Guest, inviteBot, openRoom, post, sitDown, takeSeat } from '../kit/http-client.ts';
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

  /** 200, or the code of the rejection. */
  async function claimAt(code: string, seat: Guest['seat'] | null): Promise<number | string> {
    const response = await post(`${server.url}${seatsPath(code)}`, { name: 'Odo', seat });
    return response.ok ? response.status : (await response.json()).code;
  }

  test('LM7 a seat is taken 20 times at once and then every two minutes, and no other seat less often for it', async () => {
    server = await startServer();
    const host = await openRoom(server);
    const peer = await sitDown(server, host);
    const toggle = async () => {
      const guest = await takeSeat(server, host.code, { name: 'Tomas', seat: 1 });
      await peer.act({ kind: 'unseat', seat: guest.seat });
    };
    for (let n = 0; n < SITTINGS.atOnce; n++) await toggle();
    expect(await claimAt(host.code, 1)).toBe('too-often');
    // Whoever has no wish gets another seat, and the host is held up by nothing.
    const { seat } = await takeSeat(server, host.code, { name: 'Wilma', seat: null });
    expect(seat).toBe(2);
    expect(await inviteBot(server, host, 1)).toMatch(/./);
    for (const style of ['casual', 'strong'] as const)
      expect(await peer.act({ kind: 'seat-bot', seat: 1, style })).toMatchObject({ kind: 'ack' });
    server.clock.advance(SITTINGS.everyMs);
    expect(await claimAt(host.code, 1)).toBe(200);
  });

  test('LM7 a host changes bots and invitations 60 times at once and then once a minute, and a person is removed at any time', async () => {
    server = await startServer({ settings: { MESSAGES_PER_SECOND: '200' } });
    const host = await openRoom(server);
    const tomas = await takeSeat(server, host.code);
    const peer = await sitDown(server, host);
    const bot = (n: number) =>
      peer.act({ kind: 'seat-bot', seat: 3, style: n % 2 === 0 ? 'casual' : 'strong' });
    for (let n = 0; n < CHANGES.atOnce; n++) expect(await bot(n)).toMatchObject({ kind: 'ack' });
    expect(await bot(0)).toMatchObject({ code: 'too-often' });
    expect(await peer.act({ kind: 'unseat', seat: 3 })).toMatchObject({ code: 'too-often' });
    // Nobody else has less for it, and the next host begins with some of it.
    expect(await claimAt(host.code, 2)).toBe(200);
    expect(await peer.act({ kind: 'unseat', seat: 2 })).toMatchObject({ kind: 'ack' });
    const next = await sitDown(server, tomas);
    expect(await peer.act({ kind: 'leave' })).toMatchObject({ kind: 'ack' });
    for (let n = 0; n < FIRST_CHANGES; n++)
      expect(
        await next.act({ kind: 'seat-bot', seat: 3, style: n % 2 === 0 ? 'casual' : 'strong' }),
      ).toMatchObject({ kind: 'ack' });
    expect(await next.act({ kind: 'unseat', seat: 3 })).toMatchObject({ code: 'too-often' });
    server.clock.advance(CHANGES.everyMs);
    const [back] = [await sitDown(server, tomas), await next.ended];
    expect(await back.act({ kind: 'unseat', seat: 3 })).toMatchObject({ kind: 'ack' });
  });

  test('LM7 a player names aims 30 times at once and then every ten seconds, and nobody else less often for it', async () => {
    server = await startServer();
    const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('aims') }, { id: 'one' })]);
    const teacher = await openClass(server, drill);
    const [odo, ines] = [
      await joinClass(server, teacher.code, 'Odo'),
      await joinClass(server, teacher.code, 'Ines'),
    ];
    await act(server, teacher, { kind: 'deal-next' });
    const peers = await Promise.all([odo, ines].map((player) => sitDown(server, player)));
    await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
    const aim = async ({ classSecret }: JoinedPlayer) => {
      const aims = { step: 'first-right', sections: ['one'] };
      return (await post(`${server.url}${classPath(teacher.code, 'aims')}`, aims, classSecret)).ok;
    };
    for (let n = 0; n < AIMS.atOnce; n++) expect(await aim(odo)).toBe(true);
    expect([await aim(odo), await aim(ines)]).toEqual([false, true]);
    server.clock.advance(AIMS.everyMs);
    expect([await aim(odo), await aim(odo)]).toEqual([true, false]);
  });

  test('LM2 a class of 10,000 events takes nothing new, and its teacher deals, removes, closes joining and ends it', () => {
    const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('full') }, { id: 'one' })]);
    const opened = { drill, deals: [], terms: TERMS, card: { kind: 'house' }, secretHash: 'a' } as const;
    const begun = beginClass({ seq: 1, at: 0, event: { kind: 'opened', ...opened } })!;
    const joined = { kind: 'joined', name: 'Odo', secretHash: 'b', room: 'ROOMAAAA', seat: 0 } as const;
    const full = { ...evolveClass(begun, { seq: 2, at: 0, event: joined }), seq: MAX_EVENTS };
    const answerTo = (command: ClassCommand) => {
      const decision = decideClass(full, command, 0);
      return decision.ok || decision.code;
    };
    const never: readonly ClassCommand[] = [
      { ...joined, kind: 'join', seat: 1 },
      { kind: 'hold', before: 'vote' },
      { kind: 'show', shown: null },
      { kind: 'stand-in', player: 0, on: true },
      { kind: 'joining', open: true },
    ];
    for (const command of never) expect(answerTo(command)).toBe('used-up');
    expect(answerTo({ kind: 'deal-next' })).toBe('no-more-deals');
    const always: readonly ClassCommand[] = [
      { kind: 'remove', player: 0 },
      { kind: 'joining', open: false },
      { kind: 'freeze', deal: 0, seat: 0, step: 'vote', spreads: [] },
      { kind: 'end' },
    ];
    for (const command of always) expect(answerTo(command)).toBe(true);
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
