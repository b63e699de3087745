// Who is in a class: a teacher removes players and closes joining, and places that were given up are free again.
import { expect, onTestFinished, test } from 'vitest';
import { CLASS_LIMITS, classJoinedSchema } from '../../shared-engine/protocol/class.ts';
import {
  classPath,
  classPersonalDataPath,
  roomPath,
  ticketPath,
} from '../../shared-engine/protocol/paths.ts';
import { personalDataSchema } from '../../shared-engine/protocol/room-http.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import {
  act,
  cookieIn,
  dashboardOf,
  type JoinedPlayer,
  joinAll,
  joinClass,
  openClass,
  reportOf,
} from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { isClosed, playOn, post, sitDown } from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer, type TestServerOptions } from '../kit/server.ts';

const DRILL = drillOf([dealOf({ kind: 'random', seed: seedNamed('one') }, { id: 'one' })]);
const TABLES = { ...DRILL, form: 'tables' } as const;

async function server(options: TestServerOptions = {}): Promise<TestServer> {
  const started = await startServer({ seed: 'class players', ...options });
  onTestFinished(() => started.stop());
  return started;
}

function asPlayer(
  { url }: TestServer,
  method: 'GET' | 'DELETE',
  code: string,
  { classSecret }: JoinedPlayer,
) {
  const headers = { authorization: `Bearer ${classSecret}` };
  return fetch(`${url}${classPersonalDataPath(code)}`, { method, headers });
}

test('AC4 a removed player is out at once, gets back in with no secret, and a bot plays on', async () => {
  const at = await server();
  const teacher = await openClass(at, TABLES, { names: true });
  const { players, peers } = await joinAll(at, teacher.code, ['Ines', 'Vandal', 'Wilma']);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
  expect((await act(at, teacher, { kind: 'remove', player: 1 })).status).toBe(200);
  await peers[1]!.ended;
  const [, vandal] = players;
  const back = [
    await post(`${at.url}${ticketPath(vandal!.code)}`, {}, vandal!.secret),
    await fetch(`${at.url}${roomPath(vandal!.code)}`, {
      headers: { authorization: `Bearer ${vandal!.secret}` },
    }),
    await post(
      `${at.url}${classPath(teacher.code, 'aims')}`,
      { step: 'vote', sections: [] },
      vandal!.classSecret,
    ),
  ];
  expect(back.map(({ status }) => status)).toEqual([404, 404, 404]);
  const again = await post(
    `${at.url}${classPath(teacher.code, 'players')}`,
    { name: 'Odo' },
    vandal!.classSecret,
  );
  expect([again.status, await again.json()]).toMatchObject([403, { code: 'removed' }]);
  expect((await dashboardOf(at, teacher)).players.map(({ name }) => name)).toEqual(['Ines', 'Wilma']);
  const stay = [peers[0]!, peers[2]!];
  await Promise.all(stay.map((peer) => playOn(peer, 'without the vandal')));
  expect(stay.every(isClosed)).toBe(true);
  // What a bot alone has chosen is nothing that the teacher could talk about.
  const seats = (await dashboardOf(at, teacher)).spreads.map(({ seat }) => seat);
  expect([...new Set(seats)]).toEqual([0, 2]);
  expect((await act(at, teacher, { kind: 'remove', player: 1 })).status).toBe(200);
  expect((await act(at, teacher, { kind: 'remove', player: 9 })).status).toBe(404);
});

test('AC4 nobody but the teacher removes a player', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  const { players } = await joinAll(at, teacher.code, ['Ines', 'Tomas']);
  const { code } = teacher;
  for (const secret of [players[0]!.classSecret, players[0]!.secret]) {
    expect((await act(at, { code, secret }, { kind: 'remove', player: 1 })).status).toBe(403);
  }
});

test('AC4 a removed player still sees and deletes what is stored, and nobody else’s', async () => {
  const at = await server();
  const teacher = await openClass(at, TABLES);
  const { players } = await joinAll(at, teacher.code, ['Ines', 'Odo']);
  await act(at, teacher, { kind: 'remove', player: 1 });
  const heir = await joinClass(at, teacher.code, 'Odo');
  expect([heir.code, heir.seat]).toEqual([players[1]!.code, players[1]!.seat]);
  const shown = await asPlayer(at, 'GET', teacher.code, players[1]!);
  const { entries } = personalDataSchema.parse(await shown.json());
  expect(entries.map(({ what }) => what)).toEqual(
    expect.arrayContaining(['joined the class', 'the teacher removed the player', 'sat down', 'left']),
  );
  expect((await asPlayer(at, 'DELETE', teacher.code, players[1]!)).status).toBe(204);
  const names = (await eventsOf(at.store, heir.code))?.flatMap(({ event }) =>
    event.kind === 'seat-taken' ? [event.name] : [],
  );
  expect(names).toEqual(['Ines', 'Somebody', 'Odo']);
  expect((await sitDown(at, heir)).table.you).toBe(heir.seat);
});

test('AC5 places of those who left are free again, and each tile is counted for who played it', async () => {
  const at = await server();
  const teacher = await openClass(at, TABLES);
  const { players } = await joinAll(at, teacher.code, ['Ines', 'Tomas', 'Wilma', 'Odo']);
  expect((await asPlayer(at, 'DELETE', teacher.code, players[1]!)).status).toBe(204);
  const heir = await joinClass(at, teacher.code, 'Alba');
  expect([heir.code, heir.seat]).toEqual([players[1]!.code, players[1]!.seat]);
  const guests = [players[0]!, heir, players[2]!, players[3]!];
  const peers = await Promise.all(guests.map((guest) => sitDown(at, guest)));
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
  await Promise.all(peers.map((peer) => playOn(peer, 'four again')));
  expect((await reportOf(at, teacher)).deals.map(({ players: count }) => count)).toEqual([4]);
});

test('AC5 a class is full with sixty who are there, not with sixty who were', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  const players: JoinedPlayer[] = [];
  for (let n = 0; n < CLASS_LIMITS.players; n++) {
    players.push(await joinClass(at, teacher.code, `Player ${n}`));
  }
  const join = () => post(`${at.url}${classPath(teacher.code, 'players')}`, { name: 'One more' });
  expect(await (await join()).json()).toMatchObject({ code: 'class-full' });
  await act(at, teacher, { kind: 'remove', player: 7 });
  expect((await join()).status).toBe(201);
  expect(await (await join()).json()).toMatchObject({ code: 'class-full' });
});

test('CH6 AC8 a player whom the teacher calls otherwise is called so at the table and by the dashboard, and deleted by no name', async () => {
  const at = await server();
  const teacher = await openClass(at, TABLES);
  const { players, peers } = await joinAll(at, teacher.code, ['Ines', 'Petra']);
  const rename = async (player: number, name: string) => {
    const answer = await act(at, teacher, { kind: 'rename', player, name });
    return [answer.status, (await answer.json()).code];
  };
  const everybodyReads = (name: string) =>
    Promise.all(
      peers.map((peer) =>
        peer.untilTable(({ seats: [, one] }) => one.kind === 'person' && one.name === name, name),
      ),
    );
  expect(await rename(1, 'INES')).toEqual([200, undefined]);
  await everybodyReads('INES (2)');
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
  expect(await rename(1, 'Quentin')).toEqual([200, undefined]);
  await everybodyReads('Quentin');
  expect((await dashboardOf(at, teacher)).players.map(({ name }) => name)).toEqual(['Ines', 'Quentin']);
  expect(await rename(1, '\u200b')).toEqual([422, 'bad-name']);
  expect(await rename(7, 'Quentin')).toEqual([404, 'no-such-player']);
  expect((await asPlayer(at, 'DELETE', teacher.code, players[1]!)).status).toBe(204);
  const logs = await Promise.all([players[1]!.code, teacher.code].map((code) => at.store.history(code)));
  expect(JSON.stringify(logs)).toContain('Ines');
  expect(JSON.stringify(logs)).not.toMatch(/Petra|INES|Quentin/);
});

test('CH7 before the first deal a player is put to another table, also in exchange; the page finds the place, and the old one forgets', async () => {
  const at = await server();
  const teacher = await openClass(at, TABLES);
  const { players, peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas', 'Wilma']);
  const seat = async (player: number, table: number, to: Seat) =>
    (await act(at, teacher, { kind: 'seat', player, table, seat: to })).status;
  const places = async () =>
    (await dashboardOf(at, teacher)).players.map(({ name, table, seat: on }) => `${name} ${table} ${on}`);
  const backAt = async ({ name, classSecret }: JoinedPlayer) => {
    const again = await post(`${at.url}${classPath(teacher.code, 'players')}`, { name }, classSecret);
    const { room, seat: on } = classJoinedSchema.parse(await again.json());
    return sitDown(at, { code: room, seat: on, secret: cookieIn(again, 'seat') });
  };
  expect(await seat(1, 2, 0)).toBe(200);
  await peers[1]!.ended;
  expect(await places()).toEqual(['Ines 1 0', 'Tomas 2 0', 'Wilma 1 2']);
  expect((await backAt(players[1]!)).table.seats[0]).toMatchObject({ kind: 'person', name: 'Tomas' });
  expect(await seat(0, 2, 0)).toBe(200);
  expect(await places()).toEqual(['Ines 2 0', 'Tomas 1 0', 'Wilma 1 2']);
  const there = await Promise.all([backAt(players[0]!), backAt(players[1]!)]);
  expect(there.map(({ table: { you, seats } }) => you !== null && seats[you])).toMatchObject([
    { name: 'Ines' },
    { name: 'Tomas' },
  ]);
  const named = (await eventsOf(at.store, players[0]!.code))!.flatMap(({ event }) =>
    event.kind === 'seat-taken' ? [event.name] : [],
  );
  expect(named).toEqual(['Somebody', 'Somebody', 'Wilma', 'Tomas']);
  await act(at, teacher, { kind: 'deal-next' });
  const all = [...there, peers[2]!];
  await Promise.all(all.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
  expect(await seat(0, 1, 3)).toBe(409);
  await Promise.all(all.map((peer) => playOn(peer, 'put elsewhere')));
  expect((await reportOf(at, teacher)).deals.map(({ players: count }) => count)).toEqual([3]);
});

test('AC6 while joining is closed nobody new gets in, those who are in come back, and it can be opened again', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  const [ines] = (await joinAll(at, teacher.code, ['Ines'])).players;
  expect((await act(at, teacher, { kind: 'joining', open: false })).status).toBe(200);
  const path = `${at.url}${classPath(teacher.code, 'players')}`;
  const rejected = await post(path, { name: 'Odo' });
  expect([rejected.status, await rejected.json()]).toMatchObject([409, { code: 'joining-closed' }]);
  expect((await post(path, { name: 'Ines' }, ines!.classSecret)).status).toBe(200);
  expect((await sitDown(at, ines!)).table.you).toBe(0);
  expect((await dashboardOf(at, teacher)).joiningOpen).toBe(false);
  await act(at, teacher, { kind: 'joining', open: true });
  expect((await joinClass(at, teacher.code, 'Odo')).name).toBe('Odo');
});

test('AC4 AC6 what the teacher decided about players stands after a restart of the server', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  const { players } = await joinAll(at, teacher.code, ['Ines', 'Vandal']);
  await act(at, teacher, { kind: 'remove', player: 1 });
  await act(at, teacher, { kind: 'deal-next' });
  await act(at, teacher, { kind: 'joining', open: false });
  const { store, clock } = at;
  await at.app.close();
  const next = await server({ seed: 'after that', store, clock });
  expect(await dashboardOf(next, teacher)).toMatchObject({ joiningOpen: false, players: [{ name: 'Ines' }] });
  const path = `${next.url}${classPath(teacher.code, 'players')}`;
  const back = await post(path, { name: 'Odo' }, players[1]!.classSecret);
  expect(await back.json()).toMatchObject({ code: 'removed' });
});
