// Guests at a test server: people who open rooms, take seats, sit down at the socket and play.
import {
  botsPath,
  invitationsPath,
  ROOMS_PATH,
  seatsPath,
  ticketPath,
} from '../../shared-engine/protocol/paths.ts';
import {
  botInvitedSchema,
  type ClaimSeat,
  type OpenRoom,
  roomOpenedSchema,
  seatClaimedSchema,
  ticketSchema,
} from '../../shared-engine/protocol/room-http.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { decisionFor } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { PASS_SIZE } from '../../shared-engine/rules/exchange/schedule.ts';
import { pendingDecision } from '../../shared-engine/rules/view/pending-decision.ts';
import type { SeatView } from '../../shared-engine/rules/view/view.ts';
import type { TestServer } from './server.ts';
import { Peer } from './sockets.ts';

/** Somebody with a seat and its secret, as a browser would keep it. */
export interface Guest {
  readonly code: string;
  readonly seat: Seat;
  readonly secret: string;
}

/** Where a server listens, in this process or in another. */
type Address = Pick<TestServer, 'url'>;

export const FRIENDS: OpenRoom = {
  name: 'Ines',
  mode: 'friends',
  terms: { deadline: null, revealRacks: false },
  bots: [null, null, null],
  card: null,
};
export const ALONE: OpenRoom = { ...FRIENDS, mode: 'alone', bots: ['strong', 'casual', 'guarded'] };

export async function openRoom(server: Address, request: OpenRoom = FRIENDS): Promise<Guest> {
  const response = await post(`${server.url}${ROOMS_PATH}`, request);
  const { code, seat } = roomOpenedSchema.parse(await response.json());
  return { code, seat, secret: secretIn(response) };
}

export async function takeSeat(
  server: Address,
  code: string,
  claim: ClaimSeat = { name: 'Tomas', seat: null },
): Promise<Guest> {
  const response = await post(`${server.url}${seatsPath(code)}`, claim);
  const { seat } = seatClaimedSchema.parse(await response.json());
  return { code, seat, secret: secretIn(response) };
}

/** The secret of an invitation of the host's for a bot on this seat. */
export async function inviteBot(server: Address, host: Guest, seat: Seat): Promise<string> {
  const response = await post(`${server.url}${invitationsPath(host.code)}`, { seat }, host.secret);
  return botInvitedSchema.parse(await response.json()).secret;
}

/** A bot on the seat of this invitation. */
export async function seatInvited(server: Address, code: string, invitation: string): Promise<Guest> {
  const response = await post(`${server.url}${botsPath(code)}`, { name: 'Rote' }, invitation);
  const { seat, secret = '' } = seatClaimedSchema.parse(await response.json());
  return { code, seat, secret };
}

/** A ticket for the guest's seat, or for a spectator of the room. */
export async function ticketFor(server: Address, { code, secret }: { code: string; secret?: string }) {
  const response = await post(`${server.url}${ticketPath(code)}`, {}, secret);
  return ticketSchema.parse(await response.json());
}

export async function sitDown(server: Address, guest: Guest): Promise<Peer> {
  return Peer.enter(server.url, (await ticketFor(server, guest)).ticket, guest.code);
}

export async function watch(server: Address, code: string): Promise<Peer> {
  return Peer.enter(server.url, (await ticketFor(server, { code })).ticket, code);
}

/** A friends' table with four people at their sockets, seat by seat. */
export async function tableOfFour(server: Address, request: OpenRoom = FRIENDS) {
  const host = await openRoom(server, request);
  const names = ['Tomas', 'Wilma', 'Odo'];
  const guests: Guest[] = [host];
  for (const name of names) guests.push(await takeSeat(server, host.code, { name, seat: null }));
  const peers: Peer[] = [];
  for (const guest of guests) peers.push(await sitDown(server, guest));
  return { code: host.code, guests, peers };
}

/** Everybody asks for the next deal and gets it. */
export async function deal(peers: readonly Peer[]): Promise<void> {
  const round = Math.max(...peers.map(({ table }) => table.round)) + 1;
  for (const peer of peers) await peer.act({ kind: 'ready', ready: true });
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === round, 'the deal')));
}

/** What a seat may see of the round; fails for a spectator. */
export function ownView(peer: Peer): SeatView {
  const { view } = peer.table;
  if (view?.audience !== 'seat') throw new Error('not a seat’s view');
  return view;
}

export function isClosed(peer: Peer): boolean {
  return peer.table.view?.stage.phase === 'closed';
}

/** Whether the open step waits for this peer's own answer. */
export function isAsked(peer: Peer): boolean {
  const { view } = peer.table;
  return view?.audience === 'seat' && pendingDecision(view) !== null;
}

/** An evenly drawn legal answer to the open step; blind passes among them. */
export function anyAnswer(view: SeatView, random: Random): AnswerChoice {
  const decision = decisionFor(view.stage, view.record.seat, view.terms);
  switch (decision?.kind) {
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const blind = blindAllowed ? random.below(count + 1) : 0;
      return { kind: 'pass', step, tiles: anyTiles(view, count - blind, random), blind };
    }
    case 'vote':
      return { kind: 'vote', step: 'vote', go: random.below(6) > 0 };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: random.below(PASS_SIZE + 1) };
    case undefined:
      throw new Error(`the ${view.stage.phase} step asks nothing of this seat`);
  }
}

/** Plays until the round is closed, or until `stop` says so. */
export async function playOn(
  peer: Peer,
  seed: string,
  stop: (view: SeatView) => boolean = () => false,
): Promise<void> {
  const random = stream(seed, `guest/${peer.table.you}`);
  for (;;) {
    await peer.untilTable(() => isAsked(peer) || isClosed(peer), 'a question or the close');
    if (isClosed(peer) || stop(ownView(peer))) return;
    const answer = await peer.choose(anyAnswer(ownView(peer), random));
    if (answer.kind === 'rejected') throw new Error(`${answer.code}: ${answer.message}`);
  }
}

/** Moves the server's clock on while all these sockets answer its heartbeats. */
export async function pass(server: TestServer, ms: number, peers: readonly Peer[]): Promise<void> {
  for (let left = ms; left > 0; left -= 10_000) {
    server.clock.advance(Math.min(left, 10_000));
    await Promise.all(peers.map((peer) => peer.roundTrip()));
  }
}

export function post(url: string, body: unknown, secret?: string, signal?: AbortSignal): Promise<Response> {
  const headers = {
    'content-type': 'application/json',
    ...(secret === undefined ? {} : { authorization: `Bearer ${secret}` }),
  };
  return fetch(url, { method: 'POST', headers, body: JSON.stringify(body), ...(signal && { signal }) });
}

function anyTiles({ rack }: SeatView, count: number, random: Random) {
  const tiles = rack.filter((face) => face !== 'joker');
  return Array.from({ length: count }, () => tiles.splice(random.below(tiles.length), 1)[0]!);
}

function secretIn(response: Response): string {
  const cookie = response.headers.get('set-cookie') ?? '';
  const secret = /^seat=([^;]+)/.exec(cookie)?.[1];
  if (secret === undefined) throw new Error(`no seat cookie came (${response.status})`);
  return secret;
}
