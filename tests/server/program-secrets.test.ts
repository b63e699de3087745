// Programs that are no pages: they get the secret of their seat in the answer, and the rules of secrets hold for them.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { OVERTAKEN_MS } from '../../server/room/seat-secrets.ts';
import {
  botsPath,
  invitationsPath,
  ROOMS_PATH,
  seatsPath,
  ticketPath,
} from '../../shared-engine/protocol/paths.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import { FRIENDS, pass, watch } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'programs' });
});
afterEach(() => server.stop());

const IN_BODY = { ...FRIENDS, secretIn: 'body' };

async function ask(path: string, body: unknown, headers: Record<string, string> = {}) {
  const response = await fetch(`${server.url}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });
  const cookie = response.headers.get('set-cookie');
  return { status: response.status, cookie, ...(await response.json()) };
}

/** A ticket got with this secret. */
const ticket = (code: string, secret: string, headers: Record<string, string> = {}) =>
  ask(ticketPath(code), {}, { authorization: `Bearer ${secret}`, ...headers });

async function comeBack(code: string, secret: string) {
  const answer = await ticket(code, secret);
  return { peer: await Peer.enter(server.url, answer.ticket), secret: answer.secret };
}

test('BT1 a program opens a room, takes a seat and gets tickets without a cookie, from secret to secret', async () => {
  const opened = await ask(ROOMS_PATH, IN_BODY);
  expect(opened).toMatchObject({
    status: 201,
    seat: 0,
    cookie: null,
    secret: expect.stringMatching(/^[\w-]{43}$/),
  });
  const claimed = await ask(seatsPath(opened.code), { name: 'Odo', seat: 3, secretIn: 'body' });
  expect(claimed).toMatchObject({ status: 200, seat: 3, cookie: null });
  const first = await comeBack(opened.code, claimed.secret);
  const second = await comeBack(opened.code, first.secret);
  expect(second.peer.table.you).toBe(3);
  expect(await first.peer.ended).toBe(CLOSE.replaced);
  expect(new Set([claimed.secret, first.secret, second.secret]).size).toBe(3);
});

test('BT1 a page never reads a secret: asking for it is rejected, and a bearer with an Origin gets it in a cookie alone', async () => {
  const page = { origin: server.url };
  expect(await ask(ROOMS_PATH, IN_BODY, page)).toMatchObject({
    status: 403,
    code: 'cookie-only',
    cookie: null,
  });
  const { code, secret } = await ask(ROOMS_PATH, IN_BODY);
  const claim = { name: 'Odo', seat: null, secretIn: 'body' };
  expect(await ask(seatsPath(code), claim, page)).toMatchObject({ status: 403, code: 'cookie-only' });
  const asPage = await ticket(code, secret, page);
  expect(asPage).toMatchObject({ status: 200, seat: 0, cookie: expect.stringMatching(/^seat=.*HttpOnly/) });
  expect(asPage.secret).toBeUndefined();
  const byCookie = await ask(ticketPath(code), {}, { cookie: `seat=${secret}` });
  expect([byCookie.seat, byCookie.secret]).toEqual([0, undefined]);
});

test('BT1 a page never reads the secret of a bot’s seat, though it brings a good invitation', async () => {
  const host = await ask(ROOMS_PATH, IN_BODY);
  const invited = await ask(
    invitationsPath(host.code),
    { seat: 1 },
    { authorization: `Bearer ${host.secret}` },
  );
  const claim = (headers: Record<string, string>) =>
    ask(botsPath(host.code), { name: 'Rote' }, { authorization: `Bearer ${invited.secret}`, ...headers });
  const asPage = await claim({ origin: server.url });
  expect(asPage).toMatchObject({ status: 403, code: 'cookie-only', cookie: null });
  expect(asPage.secret).toBeUndefined();
  expect(await claim({})).toMatchObject({ status: 201, seat: 1 });
});

test('BT1 a page of another origin is turned away with a good bearer, too', async () => {
  const { code, secret } = await ask(ROOMS_PATH, IN_BODY);
  const foreign = await ticket(code, secret, { origin: 'https://elsewhere.example' });
  expect(foreign).toMatchObject({ status: 403, code: 'wrong-origin' });
});

test('BT1 a secret in an address opens nothing', async () => {
  const { code, secret } = await ask(ROOMS_PATH, IN_BODY);
  for (const name of ['secret', 'seat', 'bearer', 'access_token'])
    expect((await ask(`${ticketPath(code)}?${name}=${secret}`, {})).seat).toBeNull();
});

test('RS4 a bearer that was replaced is told to ask again for 30 seconds, and is rejected after that', async () => {
  const { code, secret } = await ask(ROOMS_PATH, IN_BODY);
  const { secret: next } = await comeBack(code, secret);
  const owner = await comeBack(code, next);
  expect(await ticket(code, secret)).toMatchObject({ status: 409, code: 'ask-again' });
  await pass(server, OVERTAKEN_MS, [owner.peer]);
  expect(await ticket(code, secret)).toMatchObject({ status: 403, code: 'old-secret' });
});

test('RS4 a program whose answer was lost asks again with the same bearer', async () => {
  const { code, secret } = await ask(ROOMS_PATH, IN_BODY);
  const lost = await ticket(code, secret);
  const { secret: next } = await comeBack(code, secret);
  const { peer } = await comeBack(code, next);
  expect(peer.table.you).toBe(0);
  expect(await ticket(code, lost.secret)).toMatchObject({ code: 'ask-again' });
});

test('RS8 the holder of a bearer is told that somebody brought an old one', async () => {
  const { code, secret } = await ask(ROOMS_PATH, IN_BODY);
  const { secret: next } = await comeBack(code, secret);
  const { peer } = await comeBack(code, next);
  await pass(server, OVERTAKEN_MS, [peer]);
  await ticket(code, secret);
  await peer.until('the warning', ({ kind }) => kind === 'old-secret-shown');
});

test('RS9 the host takes the seat from a program, whose bearer is a stranger’s then', async () => {
  const { code, secret } = await ask(ROOMS_PATH, IN_BODY);
  const host = await comeBack(code, secret);
  const claimed = await ask(seatsPath(code), { name: 'Odo', seat: 2, secretIn: 'body' });
  const program = await comeBack(code, claimed.secret);
  await host.peer.act({ kind: 'unseat', seat: 2 });
  await program.peer.untilTable(({ you }) => you === null, 'the loss of the seat');
  expect(await ticket(code, program.secret)).toMatchObject({ status: 200, seat: null });
  expect((await watch(server, code)).table.seats[2]).toEqual({ kind: 'empty' });
});
