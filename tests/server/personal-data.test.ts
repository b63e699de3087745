// Personal data: what is stored about a person is told to that person alone, and deleted on demand.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { replayRoom } from '../../server/room/room.ts';
import { hashSecret } from '../../server/secrets.ts';
import { personalDataPath, roomPath } from '../../shared-engine/protocol/paths.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import { deal, type Guest, ownView, playOn, tableOfFour, ticketFor } from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'personal data' });
});
afterEach(() => server.stop());

function ask(method: 'GET' | 'DELETE', code: string, secret?: string): Promise<Response> {
  const headers = secret === undefined ? {} : { authorization: `Bearer ${secret}` };
  return fetch(`${server.url}${personalDataPath(code)}`, { method, headers });
}

async function halfWay() {
  const table = await tableOfFour(server);
  await deal(table.peers);
  await Promise.all(table.peers.map((peer) => playOn(peer, 'mine', ({ stage }) => stage.phase === 'voting')));
  return table;
}

test('the holder of a seat reads the own name and choices, and nothing of anybody else', async () => {
  const { code, guests, peers } = await halfWay();
  const response = await ask('GET', code, guests[1]!.secret);
  expect(response.status).toBe(200);
  const text = await response.text();
  const { seat, entries }: { seat: Seat; entries: { what: string; name?: string; tiles?: string[] }[] } =
    JSON.parse(text);
  expect(seat).toBe(1);
  expect(entries[0]).toMatchObject({ what: 'sat down', name: 'Tomas' });
  const gave = ownView(peers[1]!).record.steps.flatMap((step) => (step.kind === 'move' ? [step.gave] : []));
  const passes = entries.filter(({ what }) => what === 'passed').map(({ tiles }) => tiles);
  expect(gave.length).toBe(3);
  for (const [n, tiles] of passes.entries()) expect(gave[n]).toEqual(expect.arrayContaining(tiles!));
  for (const foreign of ['Ines', 'Wilma', 'Odo', ...guests.map(({ secret }) => hashSecret(secret))]) {
    expect(text).not.toContain(foreign);
  }
});

test('personal data is closed to a request without a secret, with another room’s secret, or with a wrong code', async () => {
  const { code } = await halfWay();
  const other = await tableOfFour(server);
  expect((await ask('GET', code)).status).toBe(403);
  expect((await ask('GET', code, other.guests[0]!.secret)).status).toBe(403);
  expect((await ask('DELETE', code, other.guests[0]!.secret)).status).toBe(403);
  expect((await ask('GET', 'ZZZZZZZZ', other.guests[0]!.secret)).status).toBe(404);
});

test('deleting personal data vacates the seat, leaves neither name nor secret, and lets the others play on', async () => {
  const { code, guests, peers } = await halfWay();
  const before = await storedAt(code);
  expect((await ask('DELETE', code, guests[3]!.secret)).status).toBe(204);
  const log = await storedAt(code);
  const stored = await server.store.history(code);
  expect(stored?.snapshot?.state).toContain('Wilma');
  const text = JSON.stringify(stored);
  expect(text).not.toContain('Odo');
  expect(text).not.toContain(hashSecret(guests[3]!.secret));
  expect(text).toContain('Wilma');
  expect(log.slice(0, before.length).map(({ seq, at }) => [seq, at])).toEqual(
    before.map(({ seq, at }) => [seq, at]),
  );
  const round = (all: typeof log) => all.filter(({ event }) => event.kind === 'round');
  expect(round(log).slice(0, round(before).length)).toEqual(round(before));
  expect(await isWorthless(guests[3]!)).toBe(true);
  const stayers = peers.slice(0, 3);
  await Promise.all(stayers.map((peer) => playOn(peer, 'going on')));
  expect(stayers.map((peer) => peer.table.view?.stage.phase)).toEqual(['closed', 'closed', 'closed']);
});

test('a room without a person’s data replays to the room as it is, in a new process too', async () => {
  const { code, guests } = await halfWay();
  await ask('DELETE', code, guests[2]!.secret);
  const { store, clock } = server;
  expect(replayRoom((await eventsOf(store, code))!)?.seats[2]).toMatchObject({ kind: 'bot' });
  const seats = async () => (await (await fetch(`${server.url}${roomPath(code)}`)).json()).seats;
  const named = (await seats()).map(({ name }: { name: string }) => name);
  await server.stop();
  server = await startServer({ seed: 'personal data again', store, clock });
  expect((await seats()).map(({ name }: { name: string }) => name)).toEqual(named);
  expect(named).not.toContain('Wilma');
});

async function storedAt(code: string) {
  return (await eventsOf(server.store, code))!;
}

async function isWorthless(guest: Guest): Promise<boolean> {
  return (
    (await ticketFor(server, guest)).seat === null &&
    (await ask('GET', guest.code, guest.secret)).status === 403
  );
}
