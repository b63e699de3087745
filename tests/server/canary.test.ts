// Faces that a seat never held in a round are canaries: they must be in nothing that this seat can get.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createMetrics } from '../../server/http/metrics.ts';
import { cardPath, personalDataPath, roomPath, ticketPath } from '../../shared-engine/protocol/paths.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import { deal, type Guest, playOn, post, tableOfFour, watch } from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

const metrics = createMetrics();
let server: TestServer;
let peers: Peer[];
let guests: Guest[];
let spectator: Peer;
let code: string;
/** For each seat the faces it never held in the round, which somebody else did hold. */
let foreign: readonly (readonly Face[])[];

beforeAll(async () => {
  server = await startServer({ seed: 'canary', metrics });
  ({ code, peers, guests } = await tableOfFour(server));
  spectator = await watch(server, code);
  await deal(peers);
  // Tiles of the others' racks, offered as if they were one's own: the rejections must not give them away.
  for (const peer of peers) {
    const tiles = FACES.slice(0, 3);
    await peer.choose({ kind: 'pass', step: 'first-right', tiles, blind: 0 });
    await peer.choose({ kind: 'withdraw', step: 'first-right' });
  }
  await Promise.all(peers.map((peer) => playOn(peer, 'canary')));
  await Promise.all(peers.map((peer) => peer.review()));
  await Promise.all([...peers, spectator].map((peer) => peer.roundTrip()));
  foreign = await foreignFaces();
});
afterAll(() => server.stop());

test('there are canaries for every seat', () => {
  for (const faces of foreign) expect(faces.length).toBeGreaterThan(2);
});

describe.each(SEATS)('seat %i', (seat) => {
  test('DL8 V1 receives no canary in any frame, its review included', () => {
    expect(peers[seat]!.frames.length).toBeGreaterThan(20);
    expect(found(foreign[seat]!, peers[seat]!.frames)).toEqual([]);
  });

  test('DL8 finds no canary in its personal data', async () => {
    const text = await (await get(personalDataPath(code), guests[seat]!.secret)).text();
    expect(text).toContain('passed');
    expect(found(foreign[seat]!, [text])).toEqual([]);
  });
});

test('DL8 V2 no tile at all is in a spectator’s frames, the lobby, a ticket, a rejection, the log or the metrics', async () => {
  const lobby = await (await get(roomPath(code))).text();
  const ticket = await (await post(`${server.url}${ticketPath(code)}`, {})).text();
  const rejected = await (await post(`${server.url}${ticketPath('ZZZZZZZZ')}`, {})).text();
  const texts = [...spectator.frames, lobby, ticket, rejected, ...server.logged, await metrics.text()];
  expect(found(FACES, texts)).toEqual([]);
  // The search itself finds what is there.
  expect(found(FACES, [await (await get(cardPath(code))).text(), ...peers[0]!.frames])).not.toEqual([]);
});

/** A review's words for what a pass did not give away: kinds of tiles, not tiles of anybody. */
const KINDS_OF_TILES = 'no pair, flower or like numbers';

function found(faces: readonly Face[], texts: readonly string[]): Face[] {
  return faces.filter((face) => {
    const quoted = new RegExp(`["\\s,]${face}["\\s,]`);
    return texts.some((text) => quoted.test(text.replaceAll(KINDS_OF_TILES, '')));
  });
}

function get(path: string, secret?: string): Promise<Response> {
  const headers = secret === undefined ? {} : { authorization: `Bearer ${secret}` };
  return fetch(`${server.url}${path}`, { headers });
}

async function foreignFaces(): Promise<Face[][]> {
  const log = (await eventsOf(server.store, code))!;
  const round = replay(
    log.flatMap(({ event }): RoundEvent[] => (event.kind === 'round' ? [event.event] : [])),
  );
  if (round === null) throw new Error('no round was stored');
  const held = SEATS.map((seat) => heldBy(round, seat));
  return SEATS.map((seat) => {
    const others = SEATS.filter((other) => other !== seat).flatMap((other) => [...held[other]!]);
    return [...new Set(others)].filter((face) => !held[seat]!.has(face));
  });
}

function heldBy(round: NonNullable<ReturnType<typeof replay>>, seat: Seat): ReadonlySet<Face> {
  const moved = round.resolved.flatMap((step) =>
    step.kind === 'move' ? [...step.gave[seat], ...step.received[seat]] : [],
  );
  return new Set([...facesOf(dealTiles(round.deal).racks[seat]), ...moved]);
}
