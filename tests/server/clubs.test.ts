// A club's page: what stands on it, who puts a table there, and who may change it.
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { ActiveLogs, RECHECK_MS } from '../../server/aggregate/active-logs.ts';
import { type ClubCommand, decideClub } from '../../server/club/decide.ts';
import { clubPageFor } from '../../server/club/page.ts';
import { beginClub, CHANGES, type ClubEvent, evolveClub, LISTINGS } from '../../server/club/state.ts';
import { CLUB, clubEvents } from '../../server/club/stored-event.ts';
import { LISTED_FROM_ADDRESS } from '../../server/http/clubs.ts';
import {
  CLUB_LIMITS,
  type ClubPage,
  clubMadeSchema,
  clubPageSchema,
} from '../../shared-engine/protocol/club.ts';
import { CLUBS_PATH, clubPath, tableClubPath } from '../../shared-engine/protocol/paths.ts';
import { cookieIn } from '../kit/class-room.ts';
import { FakeClock } from '../kit/clock.ts';
import { ALONE, type Guest, openRoom, post, sitDown, takeSeat } from '../kit/http-client.ts';
import { publish, quickDrill } from '../kit/published.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let at: TestServer;
beforeAll(async () => {
  at = await startServer({ seed: 'clubs' });
});
afterAll(() => at.stop());

async function makeClub(name = 'Tuesday club') {
  const response = await post(`${at.url}${CLUBS_PATH}`, { name });
  const { code } = clubMadeSchema.parse(await response.json());
  return { code, secret: cookieIn(response, 'teacher') };
}
type Club = Awaited<ReturnType<typeof makeClub>>;

async function pageOf({ code }: Pick<Club, 'code'>, secret = 'nobody'): Promise<ClubPage> {
  const headers = { authorization: `Bearer ${secret}` };
  return clubPageSchema.parse(await (await fetch(`${at.url}${clubPath(code)}`, { headers })).json());
}
const act = (club: Club, action: object, secret = club.secret) =>
  post(`${at.url}${clubPath(club.code, 'actions')}`, action, secret);
const put = (table: Pick<Guest, 'code' | 'secret'>, club: string, on = true) =>
  post(`${at.url}${tableClubPath(table.code)}`, { club, on }, table.secret);
const rejection = async (response: Promise<Response>) => (await (await response).json()).code;
const tablesOn = async (club: Club) => (await pageOf(club)).tables.map(({ code }) => code);

test('CB1 CB2 CB3 a table that its host puts on the page stands there while a seat is free and somebody is there, without a name', async () => {
  const club = await makeClub();
  const host = await openRoom(at);
  const peer = await sitDown(at, host);
  const later = await openRoom(at);
  await sitDown(at, later);
  expect((await put(host, club.code)).status).toBe(200);
  expect((await put(later, club.code)).status).toBe(200);
  const { tables } = await pageOf(club);
  expect(tables).toMatchObject([
    { code: host.code, free: 3, card: 'House card', round: 0 },
    { code: later.code },
  ]);
  expect(JSON.stringify(await pageOf(club))).not.toContain('Ines');

  const guests = [await takeSeat(at, host.code), await takeSeat(at, host.code)];
  expect((await pageOf(club)).tables[0]).toMatchObject({ code: host.code, free: 1 });
  guests.push(await takeSeat(at, host.code));
  expect(await tablesOn(club)).toEqual([later.code]);
  expect((await pageOf(club)).listed).toEqual([]);
  expect((await pageOf(club, club.secret)).listed).toEqual([
    { code: host.code, standing: 'full' },
    { code: later.code, standing: 'open' },
  ]);

  // Nobody but the host puts it there or takes it off.
  expect(await rejection(put(guests[0]!, club.code))).toBe('not-the-host');
  expect(await rejection(put({ ...host, secret: 'a'.repeat(43) }, club.code))).toBe('not-seated');
  expect(await rejection(put(await openRoom(at, ALONE), club.code))).toBe('not-for-clubs');
  expect(await rejection(put(later, 'ABCD2345'))).toBe('no-such-club');
  expect(await rejection(put({ ...later, code: 'ABCD2345' }, club.code))).toBe('no-such-room');
  expect((await put(later, club.code, false)).status).toBe(200);
  expect(await tablesOn(club)).toEqual([]);

  const gone = await openRoom(at);
  const alone = await sitDown(at, gone);
  await put(gone, club.code);
  alone.socket.close();
  await expect.poll(() => tablesOn(club)).toEqual([]);
  // It was left, and takes the place of nobody any more; the other one was only full.
  peer.socket.close();
  at.clock.advance(24 * 60 * 60 * 1000);
  await pageOf(club);
  const log = await at.store.history(club.code);
  expect(log?.rows.at(-1)?.events).toContain(gone.code);
});

test('CB1 CB4 the page shows the drill that its teacher chooses, and is changed and deleted with a teacher’s key alone', async () => {
  const club = await makeClub('  Tuesday club ');
  const drill = await publish(at, quickDrill(2));
  expect(await pageOf(club)).toMatchObject({ name: 'Tuesday club', drill: null, teacher: false, keys: [] });
  expect((await act(club, { kind: 'show-drill', code: drill.code.toLowerCase() })).status).toBe(200);
  expect((await pageOf(club)).drill).toMatchObject({ code: drill.code, state: 'open', deals: 2 });
  expect(await rejection(act(club, { kind: 'show-drill', code: 'ABCD2345' }))).toBe('no-such-drill');
  expect(await rejection(act(club, { kind: 'rename', name: ' ' }))).toBe('bad-club-name');
  expect(await rejection(post(`${at.url}${CLUBS_PATH}`, { name: 'a\u202eb' }))).toBe('bad-club-name');
  // A mark alone is seen by nobody.
  expect(await rejection(act(club, { kind: 'rename', name: '\u0301' }))).toBe('bad-club-name');
  expect(await rejection(act(club, { kind: 'rename' }))).toBe('bad-request');

  // The browser of a teacher who looks in keeps the secret for 400 days more; nobody else is given one.
  const look = (cookie: string) => fetch(`${at.url}${clubPath(club.code)}`, { headers: { cookie } });
  expect(cookieIn(await look(`teacher=${club.secret}`), 'teacher')).toBe(club.secret);
  expect((await look(`teacher=${'a'.repeat(43)}`)).headers.getSetCookie()).toEqual([]);

  const { key } = await (await post(`${at.url}${clubPath(club.code, 'keys')}`, {}, club.secret)).json();
  const brought = await post(`${at.url}${clubPath(club.code, 'teacher')}`, { key });
  const other = cookieIn(brought, 'teacher');
  expect((await act(club, { kind: 'rename', name: 'Friday club' }, other)).status).toBe(200);
  expect((await pageOf(club)).name).toBe('Friday club');
  expect((await act(club, { kind: 'revoke-key', key: 0 })).status).toBe(200);
  expect(await rejection(act(club, { kind: 'rename', name: 'Monday club' }, other))).toBe('not-the-teacher');
  expect(at.logged.join()).not.toContain(club.code);

  const remove = (secret: string) =>
    fetch(`${at.url}${clubPath(club.code)}`, {
      method: 'DELETE',
      headers: { authorization: `Bearer ${secret}` },
    });
  expect((await remove(other)).status).toBe(403);
  expect((await remove(club.secret)).status).toBe(204);
  expect(await rejection(fetch(`${at.url}${clubPath(club.code)}`))).toBe('no-such-club');
});

test('CB2 a table that nobody can join keeps no other off a full page, one that the teacher took off stays off until let back, and from one address no more than 40 come in an hour', async () => {
  const own = await startServer({ seed: 'full club' });
  onTestFinished(() => own.stop());
  const made = await post(`${own.url}${CLUBS_PATH}`, { name: 'Tuesday club' });
  const club = clubMadeSchema.parse(await made.json());
  const secret = cookieIn(made, 'teacher');
  const list = async ({ code, secret }: Guest) =>
    (await post(`${own.url}${tableClubPath(code)}`, { club: club.code, on: true }, secret)).json();
  const teach = (action: object) => post(`${own.url}${clubPath(club.code, 'actions')}`, action, secret);
  const seen = async () => {
    const headers = { authorization: `Bearer ${secret}` };
    return clubPageSchema.parse(await (await fetch(`${own.url}${clubPath(club.code)}`, { headers })).json());
  };
  // Nobody is connected at any of these.
  const tables: Guest[] = [];
  for (let n = 0; n <= CLUB_LIMITS.tables; n++) tables.push(await openRoom(own));
  for (const table of tables) expect(await list(table)).toEqual({ ok: true });
  const { listed } = await seen();
  expect(listed.map(({ code }) => code)).toEqual(tables.slice(1).map(({ code }) => code));
  expect(listed[0]).toMatchObject({ standing: 'unattended' });

  const second = tables[1]!;
  await teach({ kind: 'take-off', table: second.code });
  expect(await list(second)).toMatchObject({ code: 'kept-off' });
  expect((await seen()).keptOff).toEqual([second.code]);
  await teach({ kind: 'let-back', table: second.code });
  expect(await list(second)).toEqual({ ok: true });
  for (let n = tables.length + 2; n < LISTED_FROM_ADDRESS; n++) await list(second);
  expect(await list(second)).toMatchObject({ code: 'listed-often' });
});

test('CB4 TK5 somebody who reads pages or tries keys without end is slowed down', async () => {
  const slow = await startServer({ seed: 'slow clubs' });
  const statuses: number[] = [];
  for (let n = 0; n < 241; n++)
    statuses.push((await fetch(`${slow.url}${clubPath('ABCD2345')}`, { method: 'GET' })).status);
  expect([statuses[239], statuses[240]]).toEqual([404, 429]);
  await slow.stop();
});

test('CB3 a table that a stopping server finds no more stays on the page for as long as it is stored', async () => {
  const submitted: unknown[] = [];
  const live = {
    code: 'ABCD2345',
    state: play({ kind: 'table-listed', table: 'BCDE2345' }, { kind: 'table-listed', table: 'CDEF2345' }),
    submit: async (command: ClubCommand) => {
      submitted.push(command);
      return { ok: true } as const;
    },
  };
  const none = { find: async () => null };
  const store = { versions: async () => new Map([['BCDE2345', 7]]) };
  const ports = { registry: none, published: none, store, clock: at.clock };
  await clubPageFor(live, { ...ports, idleMs: 1, publicAddress: null, keptMs: 1 }, false);
  expect(submitted).toEqual([{ kind: 'take-off', tables: ['CDEF2345'] }]);
});

const made = { kind: 'club-made', name: 'Tuesday club', secretHash: 'a'.repeat(64) } as const;

function play(...events: readonly ClubEvent[]) {
  const begun = beginClub({ seq: 1, at: 0, event: made })!;
  return events.reduce((state, event, n) => evolveClub(state, { seq: n + 2, at: 0, event }), begun);
}

test('CB2 CB4 tables are put on a page, and a page is changed, so often and no more; what is there already changes nothing', () => {
  const listed = Array.from({ length: CLUB_LIMITS.tables }, (_, n) => `TABLE${n}`);
  const list = (table: string) => ({ kind: 'table-listed', table }) as const;
  const comeAndGo = (table: string) => [list(table), { kind: 'tables-taken-off', tables: [table] } as const];
  const often = Array.from({ length: LISTINGS.atOnce - 1 }, () => comeAndGo('TABLE9')).flat();
  const some = play(...often, list('TABLE0'));
  const next = { kind: 'list', table: 'ANOTHER', unjoinable: [] } as const;
  expect(decideClub(some, next, 0)).toMatchObject({ ok: false, code: 'listed-often' });
  // One address uses up less in an hour than the page takes.
  expect(LISTED_FROM_ADDRESS).toBeLessThan(3_600_000 / LISTINGS.everyMs);
  expect(decideClub(some, next, LISTINGS.everyMs)).toMatchObject({ ok: true, events: [list('ANOTHER')] });
  expect(decideClub(some, { ...next, table: listed[0]! }, 0)).toEqual({ ok: true, events: [] });
  const full = play(...listed.map(list));
  expect(decideClub(full, next, 1e12)).toMatchObject({ ok: false, code: 'club-full' });
  // A full table, or one that everybody left, keeps nobody off the page.
  const gone = { kind: 'tables-taken-off', tables: ['TABLE5'] };
  expect(decideClub(full, { ...next, unjoinable: ['TABLE5', 'TABLE6'] }, 1e12)).toEqual({
    ok: true,
    events: [gone, list('ANOTHER')],
  });
  expect(decideClub(some, { ...next, unjoinable: ['TABLE5'] }, 1e12)).toMatchObject({
    events: [list('ANOTHER')],
  });
  const off = decideClub(full, { kind: 'take-off', tables: ['TABLE3', 'ANOTHER'] }, 0);
  expect(off).toEqual({ ok: true, events: [{ kind: 'tables-taken-off', tables: ['TABLE3'] }] });
  const changes = Array.from(
    { length: CHANGES.atOnce },
    (_, n) => ({ kind: 'club-renamed', name: `${n}` }) as const,
  );
  expect(decideClub(play(...changes), { kind: 'rename', name: 'more' }, 0)).toMatchObject({
    code: 'too-often',
  });
  expect(decideClub(play(...changes), { kind: 'show-drill', code: null }, 0)).toEqual({
    ok: true,
    events: [],
  });
});

test('ST4 a club’s page comes back from its JSON event by event, and from a snapshot', () => {
  const events: readonly ClubEvent[] = [
    { kind: 'club-renamed', name: 'Friday club' },
    { kind: 'drill-shown', code: 'ABCD2345' },
    { kind: 'table-listed', table: 'BCDE2345' },
    { kind: 'table-listed', table: 'CDEF2345' },
    { kind: 'tables-taken-off', tables: ['BCDE2345'] },
    { kind: 'table-listed', table: 'DEFG2345' },
    { kind: 'table-kept-off', table: 'CDEF2345' },
    { kind: 'table-kept-off', table: 'DEFG2345' },
    { kind: 'table-let-back', table: 'CDEF2345' },
    { kind: 'key-made', secretHash: 'b'.repeat(64) },
    { kind: 'key-revoked', key: 0 },
  ];
  const recorded = [made, ...events].map((event, n) => ({ seq: n + 1, at: n, event }));
  expect(clubEvents.eventsFrom(clubEvents.textOf(recorded.map(({ event }) => event)))).toEqual([
    made,
    ...events,
  ]);
  const state = play(...events);
  expect(state).toMatchObject({ tables: [], keptOff: ['DEFG2345'] });
  expect(CLUB.restore(play(), CLUB.snapshotOf(state)!)).toEqual(state);
});

test('ST7 a page that was removed because it is old leads nowhere within a minute, also for those who read it all the time', async () => {
  const club = await makeClub();
  await pageOf(club);
  await at.store.remove(club.code);
  at.clock.advance(RECHECK_MS);
  expect(await rejection(fetch(`${at.url}${clubPath(club.code)}`))).toBe('no-such-club');
  expect(await rejection(act(club, { kind: 'rename', name: 'Club' }))).toBe('no-such-club');
});

test('ST7 a store that fails when it is asked whether a page is still there is asked again by whoever comes next', async () => {
  const clock = new FakeClock();
  let isAway = true;
  const versions = () =>
    isAway ? Promise.reject(new Error('The store is away.')) : Promise.resolve(new Map<string, number>());
  const timing = { roomUnload: 10 * RECHECK_MS };
  const logs = new ActiveLogs(
    { store: { versions }, clock, bus: null, limits: { rooms: 1 }, timing },
    (code) => Promise.resolve({ code, usedAt: 0, catchUp: () => Promise.resolve(), stop: () => {} }),
  );
  expect(await logs.find('ABCD2345')).not.toBeNull();
  clock.advance(RECHECK_MS);
  await expect(logs.find('ABCD2345')).rejects.toThrow('The store is away.');
  isAway = false;
  expect(await logs.find('ABCD2345')).toBeNull();
});
