// The secret of a seat: it changes with each return, a copy of an old one opens nothing, and its owner keeps the seat.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { OVERTAKEN_MS } from '../../server/room/seat-secrets.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import { deal, openRoom, pass, playOn, sitDown, tableOfFour, takeSeat } from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { askForTicket, comeBack, copiedSecret, goodTicket } from '../kit/seat-secrets.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'seat secrets' });
});
afterEach(() => server.stop());

test('RS4 a secret that was copied opens nothing in 20 attempts once its owner has come back with the next one', async () => {
  const { guest, copy, owner } = await copiedSecret(server);
  await pass(server, OVERTAKEN_MS, [owner.peer]);
  for (let attempt = 0; attempt < 20; attempt++) {
    expect(await askForTicket(server, guest.code, copy)).toMatchObject({ status: 403, code: 'old-secret' });
  }
  expect((await askForTicket(server, guest.code, copy)).cookie).toMatch(/^seat=;/);
});

test('RS4 whoever brings an old secret locks the owner out neither by asking often nor at the socket', async () => {
  const { guest, copy, owner } = await copiedSecret(server);
  for (let attempt = 0; attempt < 10; attempt++) await askForTicket(server, guest.code, copy);
  await pass(server, OVERTAKEN_MS, [owner.peer]);
  for (let attempt = 0; attempt < 10; attempt++) await askForTicket(server, guest.code, copy);
  expect(await owner.peer.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
  const again = await comeBack(server, guest, owner.next);
  expect(again.peer.table.you).toBe(0);
});

test('RS4 a ticket that was got with a copied secret is worth nothing once the owner has come back', async () => {
  const guest = await openRoom(server);
  const { next } = await comeBack(server, guest, guest.secret);
  const { ticket } = await goodTicket(server, guest.code, guest.secret);
  const owner = await comeBack(server, guest, next);
  const thief = await Peer.open(server.url);
  thief.send({ kind: 'hello', id: 'h', versions: [1, 1], ticket });
  expect(await thief.ended).toBe(CLOSE.ticketRejected);
  expect(await owner.peer.act({ kind: 'ready', ready: false })).toMatchObject({ kind: 'ack' });
});

test('RS4 for 30 seconds after it was replaced a secret gets "ask again", because a page may have been overtaken', async () => {
  const { guest, copy, owner } = await copiedSecret(server);
  expect(await askForTicket(server, guest.code, copy)).toMatchObject({ status: 409, code: 'ask-again' });
  await pass(server, OVERTAKEN_MS - 1, [owner.peer]);
  expect(await askForTicket(server, guest.code, copy)).toMatchObject({
    status: 409,
    code: 'ask-again',
    cookie: '',
  });
});

test('RS4 two pages that open at once keep the seat, whichever of their answers the browser keeps', async () => {
  for (const keeps of [0, 1]) {
    const guest = await openRoom(server);
    const both = await Promise.all([
      goodTicket(server, guest.code, guest.secret),
      goodTicket(server, guest.code, guest.secret),
    ]);
    for (const { ticket } of both) await Peer.enter(server.url, ticket);
    const { peer } = await comeBack(server, guest, both[keeps]!.next);
    expect(peer.table.you).toBe(0);
    expect(await askForTicket(server, guest.code, both[1 - keeps]!.next)).toMatchObject({
      code: 'ask-again',
    });
  }
});

test('RS4 the same secret may be brought again as long as no answer arrives', async () => {
  const guest = await openRoom(server);
  let next = '';
  for (let times = 0; times < 20; times++) next = (await goodTicket(server, guest.code, guest.secret)).next;
  expect((await comeBack(server, guest, next)).peer.table.you).toBe(0);
});

test('RS8 the owner is told that somebody brought an old secret, once, at the table or at the next return', async () => {
  const { guest, copy, owner } = await copiedSecret(server);
  await pass(server, OVERTAKEN_MS, [owner.peer]);
  for (let attempt = 0; attempt < 5; attempt++) await askForTicket(server, guest.code, copy);
  await owner.peer.until('the warning', ({ kind }) => kind === 'old-secret-shown');
  const again = await comeBack(server, guest, owner.next);
  await again.peer.roundTrip();
  expect(again.peer.messages.filter(({ kind }) => kind === 'old-secret-shown')).toEqual([]);
  const stored = await eventsOf(server.store, guest.code);
  expect(stored?.filter(({ event }) => event.kind === 'old-secret-shown')).toHaveLength(1);
});

test('RS8 an owner who is away is told at the next return, also by another server', async () => {
  const { guest, copy, owner } = await copiedSecret(server);
  await pass(server, OVERTAKEN_MS, [owner.peer]);
  await owner.peer.close();
  const { clock, store } = server;
  await expect.poll(async () => (await eventsOf(store, guest.code))?.at(-1)?.event.kind).toBe('disconnected');
  await askForTicket(server, guest.code, copy);
  await server.stop();
  server = await startServer({ seed: 'after that', clock, store });
  const again = await comeBack(server, guest, owner.next);
  await again.peer.until('the warning', ({ kind }) => kind === 'old-secret-shown');
});

test('RS9 the host takes a seat from whoever took it over, in the middle of a deal too, and seats somebody anew', async () => {
  const { code, guests, peers } = await tableOfFour(server);
  await deal(peers);
  const thief = await sitDown(server, guests[3]!);
  expect(await peers[3]!.ended).toBe(CLOSE.replaced);
  expect(await peers[0]!.act({ kind: 'unseat', seat: 3 })).toMatchObject({ kind: 'ack' });
  await thief.untilTable(({ you, seats }) => you === null && seats[3].kind === 'bot', 'the loss of the seat');
  await Promise.all(peers.slice(0, 3).map((peer) => playOn(peer, 'after the theft')));
  const anew = await takeSeat(server, code, { name: 'Odo', seat: 3 });
  expect((await sitDown(server, anew)).table.you).toBe(3);
  expect(await askForTicket(server, code, guests[3]!.secret)).toMatchObject({ status: 200, seat: null });
});
