// Bots that run elsewhere: invited by the host with a link, shown to all as bots, replaced while silent, gone with the host.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { FORGOTTEN_NAME, NO_SECRET_HASH } from '../../server/room/personal-data.ts';
import { roomEvents } from '../../server/room/stored-event.ts';
import { botsPath, invitationsPath, personalDataPath } from '../../shared-engine/protocol/paths.ts';
import { httpRejectionSchema, personalDataSchema } from '../../shared-engine/protocol/room-http.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import {
  anyAnswer,
  deal,
  type Guest,
  inviteBot,
  isAsked,
  isClosed,
  openRoom,
  ownView,
  pass,
  playOn,
  post,
  seatInvited,
  sitDown,
  takeSeat,
  ticketFor,
  watch,
} from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

const LIMIT_MS = 5_000;

let server: TestServer;
beforeEach(async () => {
  server = await startServer({ seed: 'external bots', settings: { EXTERNAL_BOT_MS: String(LIMIT_MS) } });
});
afterEach(() => server.stop());

/** The code of a rejection, or the status of an answer. */
async function answerTo(path: string, body: unknown, secret?: string): Promise<string | number> {
  const response = await post(`${server.url}${path}`, body, secret);
  return response.ok ? response.status : httpRejectionSchema.parse(await response.json()).code;
}

const claim = (code: string, secret?: string, name = 'Rote') => answerTo(botsPath(code), { name }, secret);

/** Somebody at the socket, with the secret that came with the ticket. */
async function arrive(guest: Guest): Promise<{ peer: Peer; now: Guest }> {
  const { ticket, secret = '' } = await ticketFor(server, guest);
  return { peer: await Peer.enter(server.url, ticket), now: { ...guest, secret } };
}

/** A host at the socket, and a bot of the host's own on seat 2; `invitation` is what it came with. */
async function withBot() {
  const opened = await openRoom(server);
  const invitation = await inviteBot(server, opened, 2);
  const guest = await seatInvited(server, opened.code, invitation);
  const [host, bot] = [await arrive(opened), await arrive(guest)];
  const present = ({ seats: [, , at] }: Table) => at.kind === 'bot' && at.external?.present === true;
  await Promise.all([host, bot].map(({ peer }) => peer.untilTable(present, 'the bot')));
  return { host: host.now, peer: host.peer, guest: bot.now, bot: bot.peer, invitation };
}

test('BT2 an invitation seats one bot: whoever brings it after the bot has connected gets nothing', async () => {
  const { host, peer, bot, invitation } = await withBot();
  expect(bot.table).toMatchObject({ you: 2, code: host.code });
  expect(await claim(host.code, invitation)).toBe('invitation-over');
  expect(await claim(host.code)).toBe('invitation-over');
  expect(peer.table.seats[3]).toEqual({ kind: 'empty' });
});

test('BT2 a bot that did not hear the answer claims its seat again with the same invitation', async () => {
  const host = await openRoom(server);
  const secret = await inviteBot(server, host, 1);
  const lost = await seatInvited(server, host.code, secret);
  const heard = await seatInvited(server, host.code, secret);
  expect((await ticketFor(server, lost)).seat).toBeNull();
  expect((await sitDown(server, heard)).table.you).toBe(1);
  expect(await claim(host.code, secret)).toBe('invitation-over');
});

test('BT2 an invitation is worth nothing once it is taken back, made anew, or a person sits down there', async () => {
  const { peer, now: host } = await arrive(await openRoom(server));
  const [first, second] = [await inviteBot(server, host, 1), await inviteBot(server, host, 1)];
  expect(await claim(host.code, first)).toBe('invitation-over');
  await peer.untilTable(
    ({ seats }) => seats[1].kind === 'empty' && seats[1].invited === true,
    'the invitation',
  );
  expect(await peer.act({ kind: 'revoke-invitation', seat: 1 })).toMatchObject({ kind: 'ack' });
  await peer.untilTable(({ seats }) => seats[1].kind === 'empty' && !seats[1].invited, 'its end');
  expect(await claim(host.code, second)).toBe('invitation-over');
  const third = await inviteBot(server, host, 1);
  // Whoever does not mind where gets another seat.
  expect((await takeSeat(server, host.code, { name: 'Odo', seat: null })).seat).toBe(2);
  await takeSeat(server, host.code, { name: 'Wilma', seat: 1 });
  expect(await claim(host.code, third)).toBe('invitation-over');
});

test('BT2 a guest without a wish gets a seat that no bot is invited to, as long as there is one', async () => {
  const { peer, now: host } = await arrive(await openRoom(server));
  await peer.act({ kind: 'seat-bot', seat: 1, style: 'casual' });
  for (const seat of [2, 3] as const) await inviteBot(server, host, seat);
  const claims = [await takeSeat(server, host.code), await takeSeat(server, host.code)];
  expect(claims.map(({ seat }) => seat)).toEqual([1, 2]);
});

test('BT2 the host alone invites, and not to a seat that somebody holds', async () => {
  const { host, guest } = await withBot();
  const other = await takeSeat(server, host.code, { name: 'Odo', seat: 1 });
  const path = invitationsPath(host.code);
  expect(await answerTo(path, { seat: 3 })).toBe('not-seated');
  expect(await answerTo(path, { seat: 3 }, other.secret)).toBe('not-the-host');
  for (const seat of [0, 1, 2]) expect(await answerTo(path, { seat }, host.secret)).toBe('seat-taken');
  expect(await answerTo(path, { seat: 4 }, host.secret)).toBe('bad-request');
  expect(await answerTo(path, { seat: 3 }, guest.secret)).toBe('not-the-host');
});

test('BT2 an invitation and its bot are there after a restart, in the middle of a round too', async () => {
  const { peer, now: host } = await arrive(await openRoom(server));
  const guest = await seatInvited(server, host.code, await inviteBot(server, host, 2));
  const open = await inviteBot(server, host, 3);
  const bot = await arrive(guest);
  await deal([peer]);
  const { clock, store } = server;
  await server.stop();
  server = await startServer({ seed: 'after that', clock, store });
  const back = [await sitDown(server, host), await sitDown(server, bot.now)];
  expect(back.map((one) => ownView(one).record.seat)).toEqual([0, 2]);
  expect(await claim(host.code, open)).toBe('round-running');
  await Promise.all(back.map((one) => playOn(one, 'after the restart')));
  expect(await claim(host.code, open)).toBe(201);
  const lobby = await (await fetch(`${server.url}/api/rooms/${host.code}`)).json();
  expect(lobby.seats[3]).toMatchObject({ kind: 'bot', name: 'Rote (2)', external: { by: 'Ines' } });
});

test('BT2 a bot waits for the end of a round with its claim, and a bot of the server makes room for it', async () => {
  const { peer, now: host } = await arrive(await openRoom(server));
  const secret = await inviteBot(server, host, 1);
  await deal([peer]);
  expect(await claim(host.code, secret)).toBe('round-running');
  await playOn(peer, 'alone');
  expect(await claim(host.code, secret)).toBe(201);
});

test('BT3 everybody sees that the seat is a bot’s and whose, whether it is there, and that a bot chose', async () => {
  const { host, peer, bot } = await withBot();
  const shown = { kind: 'bot', name: 'Rote', external: { by: 'Ines', present: true } };
  for (const { table } of [peer, bot, await watch(server, host.code)])
    expect(table.seats[2]).toMatchObject(shown);
  await deal([peer]);
  for (const one of [peer, bot]) await answer(one);
  const { view } = await peer.untilTable(
    ({ view: now }) => now?.audience === 'seat' && now.record.steps.length > 0,
  );
  const [step] = view?.audience === 'seat' ? view.record.steps : [];
  expect(step?.by).toEqual(['player', 'bot', 'bot', 'bot']);
  await bot.close();
  await peer.untilTable(
    ({ seats: [, , at] }) => at.kind === 'bot' && at.external?.present === false,
    'its end',
  );
});

test('BT4 a bot plays a round with its seat’s view, gets no review and cannot do what the host does', async () => {
  const { peer, bot } = await withBot();
  expect(bot.table.view).toBeNull();
  await deal([peer]);
  await Promise.all([playOn(peer, 'host'), playOn(bot, 'bot')]);
  await peer.review();
  await bot.roundTrip();
  expect(isClosed(bot)).toBe(true);
  expect(ownView(bot).record.seat).toBe(2);
  expect(bot.messages.filter(({ kind }) => kind === 'review')).toEqual([]);
  for (const action of [
    { kind: 'unseat', seat: 0 },
    { kind: 'seat-bot', seat: 3, style: 'strong' },
    { kind: 'revoke-invitation', seat: 3 },
  ] as const)
    expect(await bot.act(action)).toMatchObject({ code: 'not-the-host' });
});

test('BT5 a stand-in chooses for a bot that is silent, at its limit and not before, and the bot plays on', async () => {
  const { peer, bot } = await withBot();
  await deal([peer]);
  await answer(peer);
  await pass(server, LIMIT_MS - 1, [peer, bot]);
  expect(stepsOf(peer)).toBe(0);
  await pass(server, 1, [peer, bot]);
  await peer.untilTable(() => stepsOf(peer) === 1, 'the choice of the stand-in');
  expect(ownView(peer).record.steps[0]?.by).toEqual(['player', 'bot', 'stand-in', 'bot']);
  for (const one of [peer, bot]) await answer(one);
  await peer.untilTable(() => stepsOf(peer) === 2, 'the choice of the bot');
  expect(ownView(peer).record.steps[1]?.by[2]).toBe('bot');
});

test('BT5 for a bot that is gone a stand-in chooses at once, no deal waits for it, and it comes back to its seat', async () => {
  const { peer, guest, bot } = await withBot();
  await bot.close();
  await deal([peer]);
  await answer(peer);
  await peer.untilTable(() => stepsOf(peer) === 1, 'the choice of the stand-in');
  await playOn(peer, 'without the bot');
  await deal([peer]);
  const back = await sitDown(server, guest);
  expect(ownView(back).record.seat).toBe(2);
});

test('BT6 the host removes a bot in the middle of a round, and its secrets open nothing any more', async () => {
  const { host, peer, guest, bot, invitation } = await withBot();
  await deal([peer]);
  expect(await peer.act({ kind: 'unseat', seat: 2 })).toMatchObject({ kind: 'ack' });
  await bot.untilTable(({ you }) => you === null, 'the loss of the seat');
  expect(await bot.act({ kind: 'ready', ready: true })).toMatchObject({ code: 'not-seated' });
  expect(await claim(host.code, invitation)).toBe('invitation-over');
  expect((await ticketFor(server, guest)).seat).toBeNull();
  await playOn(peer, 'with a bot of the server');
  expect(peer.table.seats[2]).toEqual({ kind: 'bot', name: expect.any(String), style: 'typical' });
});

test('BT6 the host removes a bot that has not connected, and its invitation seats none after it', async () => {
  const { peer, now: host } = await arrive(await openRoom(server));
  const invitation = await inviteBot(server, host, 1);
  await seatInvited(server, host.code, invitation);
  expect(await peer.act({ kind: 'unseat', seat: 1 })).toMatchObject({ kind: 'ack' });
  expect(await claim(host.code, invitation)).toBe('invitation-over');
});

test('BT6 bots and invitations go with the host who made them, and the next host has none', async () => {
  const { host, peer, bot } = await withBot();
  const other = await sitDown(server, await takeSeat(server, host.code, { name: 'Odo', seat: 1 }));
  const left = await inviteBot(server, host, 3);
  await peer.act({ kind: 'leave' });
  await other.untilTable(({ seats }) => seats[1].kind === 'person' && seats[1].host, 'the new host');
  expect(other.table.seats.map(({ kind }) => kind)).toEqual(['empty', 'person', 'empty', 'empty']);
  expect(await claim(host.code, left)).toBe('invitation-over');
  await bot.untilTable(({ you }) => you === null, 'the loss of the seat');
});

test('what is stored about a bot is told to its maker, and name and secrets are deleted when that is asked for', async () => {
  const { host, peer, guest } = await withBot();
  const url = `${server.url}${personalDataPath(host.code)}`;
  const headers = { authorization: `Bearer ${guest.secret}` };
  const { entries } = personalDataSchema.parse(await (await fetch(url, { headers })).json());
  expect(entries[0]).toMatchObject({ what: 'sat down as a bot', seat: 2, name: 'Rote' });
  expect((await fetch(url, { method: 'DELETE', headers })).status).toBe(204);
  await peer.untilTable(({ seats }) => seats[2].kind === 'empty', 'the free seat');
  const { rows } = (await server.store.history(host.code))!;
  expect(JSON.stringify(rows)).toContain('external-bot-seated');
  expect(JSON.stringify(rows)).not.toContain('Rote');
});

test('a bot that claimed its seat twice is told of both, and both names and secrets are deleted', async () => {
  const host = await openRoom(server);
  const invitation = await inviteBot(server, host, 1);
  await seatInvited(server, host.code, invitation);
  const { secret } = await seatInvited(server, host.code, invitation);
  const url = `${server.url}${personalDataPath(host.code)}`;
  const headers = { authorization: `Bearer ${secret}` };
  const { entries } = personalDataSchema.parse(await (await fetch(url, { headers })).json());
  expect(entries.map(({ what }) => what)).toEqual(['sat down as a bot', 'sat down as a bot']);
  expect((await fetch(url, { method: 'DELETE', headers })).status).toBe(204);
  const { rows } = (await server.store.history(host.code))!;
  const seated = rows
    .flatMap(({ events }) => roomEvents.eventsFrom(events))
    .filter(({ kind }) => kind === 'external-bot-seated');
  const forgotten = { name: FORGOTTEN_NAME, secretHash: NO_SECRET_HASH };
  expect(seated).toMatchObject([forgotten, forgotten]);
  expect(await claim(host.code, invitation)).toBe('invitation-over');
});

test('BT1 no secret of an invitation or of a bot’s seat is in the log', async () => {
  const { guest, invitation } = await withBot();
  expect(server.logged.join()).toContain('external-bot-seated');
  for (const secret of [guest.secret, invitation]) expect(server.logged.join()).not.toContain(secret);
});

async function answer(peer: Peer): Promise<void> {
  await peer.untilTable(() => isAsked(peer), 'a question');
  await peer.choose(anyAnswer(ownView(peer), stream('external', `seat ${peer.table.you}`)));
}

function stepsOf(peer: Peer): number {
  return ownView(peer).record.steps.length;
}
