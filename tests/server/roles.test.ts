// Who may say what at a socket: every kind of message times every role; a new message without a row does not compile.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ClientMessage, TableAction } from '../../shared-engine/protocol/messages.ts';
import type { RejectionCode } from '../../shared-engine/protocol/rejections.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import type { Choice } from '../../shared-engine/rules/exchange/command.ts';
import {
  deal,
  type Guest,
  openRoom,
  ownView,
  sitDown,
  tableOfFour,
  ticketFor,
  watch,
} from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import { Peer } from '../kit/sockets.ts';

type Verb =
  | Exclude<ClientMessage['kind'], 'choose' | 'action'>
  | `choose ${Choice['kind']}`
  | `action ${TableAction['kind']}`;

const ROLES = ['host', 'seated', 'other seat', 'spectator', 'stranger', 'expired'] as const;
type Role = (typeof ROLES)[number];

/** An acknowledgement, the code of a rejection, or the code with which the socket ends. */
type Outcome = 'ack' | RejectionCode | number;

/** Whoever is not seated, whatever is said. */
const OUTSIDE = {
  spectator: 'not-seated',
  stranger: CLOSE.helloExpected,
  expired: 'not-seated',
} as const satisfies Partial<Record<Role, Outcome>>;

/** `wrong-step` and `nothing-to-withdraw` come from the round itself: the person was allowed to ask. */
const MATRIX: Readonly<Record<Verb, Readonly<Record<Role, Outcome>>>> = {
  hello: {
    host: 'bad-frame',
    seated: 'bad-frame',
    'other seat': 'bad-frame',
    spectator: 'bad-frame',
    stranger: CLOSE.ticketRejected,
    expired: 'bad-frame',
  },
  'analyzed-by': { host: 'ack', seated: 'ack', 'other seat': 'ack', ...OUTSIDE },
  'choose pass': { host: 'ack', seated: 'ack', 'other seat': 'not-your-seat', ...OUTSIDE },
  'choose withdraw': {
    host: 'nothing-to-withdraw',
    seated: 'nothing-to-withdraw',
    'other seat': 'not-your-seat',
    ...OUTSIDE,
  },
  'choose vote': { host: 'wrong-step', seated: 'wrong-step', 'other seat': 'not-your-seat', ...OUTSIDE },
  'choose ask': { host: 'wrong-step', seated: 'wrong-step', 'other seat': 'not-your-seat', ...OUTSIDE },
  'action ready': { host: 'ack', seated: 'ack', 'other seat': 'ack', ...OUTSIDE },
  'action leave': { host: 'ack', seated: 'ack', 'other seat': 'ack', ...OUTSIDE },
  'action seat-bot': { host: 'ack', seated: 'not-the-host', 'other seat': 'not-the-host', ...OUTSIDE },
  'action revoke-invitation': {
    host: 'ack',
    seated: 'not-the-host',
    'other seat': 'not-the-host',
    ...OUTSIDE,
  },
  'action swap-seats': { host: 'ack', seated: 'ack', 'other seat': 'ack', ...OUTSIDE },
  'action say': { host: 'ack', seated: 'ack', 'other seat': 'ack', ...OUTSIDE },
  'action set-terms': { host: 'ack', seated: 'not-the-host', 'other seat': 'not-the-host', ...OUTSIDE },
  'action unseat': { host: 'ack', seated: 'not-the-host', 'other seat': 'not-the-host', ...OUTSIDE },
};

/** Seat 3 is the one that was given up, so that is the one to be filled or vacated. */
const ACTIONS: { readonly [K in TableAction['kind']]: Extract<TableAction, { kind: K }> } = {
  ready: { kind: 'ready', ready: true },
  leave: { kind: 'leave' },
  'seat-bot': { kind: 'seat-bot', seat: 3, style: 'strong' },
  unseat: { kind: 'unseat', seat: 3 },
  'swap-seats': { kind: 'swap-seats', seat: 3 },
  say: { kind: 'say', phrase: 'one-moment', to: null },
  'set-terms': { kind: 'set-terms', terms: { blindPasses: false } },
  'revoke-invitation': { kind: 'revoke-invitation', seat: 3 },
};

function choiceOf(kind: Choice['kind'], peer: Peer): Choice {
  const view = peer.latest()?.view?.audience === 'seat' ? ownView(peer) : null;
  const tiles = (view?.rack ?? []).filter((face) => face !== 'joker').slice(0, 3);
  switch (kind) {
    case 'pass':
      return { kind, step: 'first-right', tiles, blind: 0 };
    case 'withdraw':
      return { kind, step: 'first-right' };
    case 'vote':
      return { kind, step: 'vote', go: true };
    case 'ask':
      return { kind, step: 'courtesy-ask', count: 1 };
  }
}

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'roles' });
});
afterAll(() => server.stop());

const verbs = Object.keys(MATRIX).filter((verb): verb is Verb => verb in MATRIX);

describe.each(verbs)('the message %s', (verb) => {
  test.each(ROLES)('is answered as its role allows to: %s', async (role) => {
    const expected = MATRIX[verb][role];
    const { peer, code } = await playing(role, verb.startsWith('choose'));
    const before = await eventsOf(server.store, code);
    expect(await say(peer, verb, role)).toBe(expected);
    if (expected !== 'ack') expect(await stored(code, before!.length)).toEqual(before);
  });
});

/** Somebody in this role at a table of four, with tiles on it or before the first deal. */
async function playing(role: Role, dealt: boolean): Promise<{ peer: Peer; code: string }> {
  const { code, peers, guests } = await tableOfFour(server);
  if (dealt) await deal(peers);
  await peers[3]!.act({ kind: 'leave' });
  await Promise.all(peers.map((peer) => peer.roundTrip()));
  return { code, peer: await inRole(role, peers, guests) };
}

async function inRole(role: Role, peers: readonly Peer[], guests: readonly Guest[]): Promise<Peer> {
  switch (role) {
    case 'host':
      return peers[0]!;
    case 'seated':
      return peers[1]!;
    case 'other seat':
      return peers[2]!;
    case 'spectator':
      return watch(server, guests[0]!.code);
    case 'stranger':
      return Peer.open(server.url);
    case 'expired':
      return peers[3]!;
  }
}

async function say(peer: Peer, verb: Verb, role: Role): Promise<Outcome> {
  const id = peer.newId();
  peer.send(messageOf(verb, role, peer, id));
  const answer = await Promise.race([peer.answerTo(id), peer.ended]);
  if (typeof answer === 'number') return answer;
  return answer.kind === 'ack' ? 'ack' : answer.code;
}

function messageOf(verb: Verb, role: Role, peer: Peer, id: string): ClientMessage {
  if (verb === 'hello') return { kind: 'hello', id, versions: [1, 1], ticket: 'T'.repeat(43) };
  if (verb === 'analyzed-by') return { kind: verb, id, round: 1, by: 'page' };
  const [kind, what] = verb.split(' ') as ['choose', Choice['kind']] | ['action', TableAction['kind']];
  if (kind === 'action') return { kind, id, action: ACTIONS[what] };
  const table = peer.latest();
  // The other seat plays for the one at its left; everybody else for the own seat, or for the first one.
  const seat = role === 'other seat' ? 1 : (table?.you ?? 0);
  const choice = choiceOf(what, peer);
  return { kind, id, round: table?.round ?? 1, seat, choice };
}

/** What is stored of the room apart from who connected and left, which no message decides. */
async function stored(code: string, events: number) {
  return (await eventsOf(server.store, code))!.slice(0, events);
}

describe('a ticket', () => {
  test('RS6 for one room lets nobody into another', async () => {
    const [mine, other] = [await openRoom(server), await openRoom(server)];
    const peer = await sitDown(server, mine);
    expect(peer.table.code).toBe(mine.code);
    // The secret of one room's seat is nobody's in another.
    expect((await ticketFor(server, { code: other.code, secret: mine.secret })).seat).toBeNull();
  });
});
