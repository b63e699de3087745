// The HTTP side: opening, looking in, taking a seat, tickets and cards, and what each of them rejects.
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import {
  cardPath,
  HOUSE_CARD_PATH,
  ROOMS_PATH,
  roomPath,
  seatsPath,
  ticketPath,
} from '../../shared-engine/protocol/paths.ts';
import { httpRejectionSchema, lobbySchema, type OpenRoom } from '../../shared-engine/protocol/room-http.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { ALONE, FRIENDS, openRoom, takeSeat } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer();
});
afterEach(() => server.stop());

const http = () => request(server.url);
const opening = (change: object = {}) =>
  http()
    .post(ROOMS_PATH)
    .send({ ...FRIENDS, ...change });

describe('opening a room', () => {
  test('answers with an eight-letter code and the first seat', async () => {
    const { status, body } = await opening();
    expect(status).toBe(201);
    expect(body).toEqual({ code: expect.stringMatching(/^[2-9A-HJKMNP-Z]{8}$/), seat: 0 });
  });

  test('keeps the seat in a cookie that scripts cannot read and other paths do not get', async () => {
    const { headers, body } = await opening();
    const cookies = [headers['set-cookie'] ?? []].flat();
    expect(cookies).toHaveLength(1);
    const [value, ...flags] = cookies[0]!.split('; ');
    expect(flags).toEqual(
      expect.arrayContaining(['HttpOnly', 'SameSite=Strict', `Path=${roomPath(body.code)}`]),
    );
    // 128 bits take 22 characters of this alphabet.
    expect(value).toMatch(/^seat=[\w-]{22,}$/);
  });

  const wrong: readonly [string, string, object][] = [
    ['a name of blanks', 'bad-name', { name: '   ' }],
    ['a name of 25 characters', 'bad-name', { name: 'x'.repeat(25) }],
    ['a name that turns the line around', 'bad-name', { name: 'Ines\u202E' }],
    ['an unknown mode', 'bad-request', { mode: 'window' }],
    ['a deadline of 14 seconds', 'bad-request', { terms: { deadline: 14, revealRacks: false } }],
    ['a deadline of 301 seconds', 'bad-request', { terms: { deadline: 301, revealRacks: false } }],
    ['a way to play that is none', 'bad-request', { terms: { courtesy: 'sometimes' } }],
    ['three players', 'not-four-players', { terms: { players: 3 } }],
    ['blank tiles', 'blank-tiles', { terms: { blankTiles: 6 } }],
    ['a pot', 'pot-for-courtesy', { terms: { courtesy: 'pot' } }],
    ['one friend who is always East', 'east-not-in-turn', { terms: { whoIsEast: 'always' } }],
    ['an unknown style', 'bad-request', { bots: ['brilliant', null, null] }],
    ['a field too many', 'bad-request', { seed: '0'.repeat(64) }],
  ];
  test.each(wrong)('E1 rejects %s with %s', async (_, code, change) => {
    const { status, body } = await opening(change);
    expect(status).toBeGreaterThanOrEqual(400);
    expect(httpRejectionSchema.parse(body)).toMatchObject({ code, problems: [] });
    expect(await server.store.count()).toBe(0);
  });

  test('E1 rejects a card with a pattern of 13 tiles and says which one and what to do', async () => {
    const pattern = HOUSE_CARD.patterns[0]!;
    const last = pattern.groups.at(-1)!;
    const groups =
      last.size === 1
        ? pattern.groups.slice(0, -1)
        : [...pattern.groups.slice(0, -1), { ...last, size: last.size - 1 }];
    const card = { ...HOUSE_CARD, patterns: [{ ...pattern, groups }] };
    const { status, body } = await opening({ card });
    expect(status).toBe(422);
    const rejection = httpRejectionSchema.parse(body);
    expect(rejection.code).toBe('bad-card');
    const parsed = parseCard(card);
    expect(rejection.problems).toEqual(parsed.ok ? [] : parsed.problems.map(({ message }) => message));
    expect(rejection.problems.join()).toContain(pattern.id);
    expect(rejection.problems.join()).toContain('13');
    expect(await server.store.count()).toBe(0);
  });

  test('E1 rejects what is not JSON, a poisoned object and a body beyond the limit', async () => {
    const send = (text: string) => http().post(ROOMS_PATH).set('content-type', 'application/json').send(text);
    for (const text of ['{"name":', '{"__proto__":{"name":"x"}}', '[]', 'null']) {
      const { status, body } = await send(text);
      expect([text, status, body.code]).toEqual([text, 400, 'bad-request']);
    }
    const { status, body } = await send(JSON.stringify({ ...FRIENDS, name: 'x'.repeat(600_000) }));
    expect([status, body.code]).toEqual([413, 'too-large']);
  });

  test('rejects more rooms than the server can hold', async () => {
    await server.stop();
    server = await startServer({ settings: { MAX_ROOMS: '2' } });
    expect((await opening()).status).toBe(201);
    expect((await opening()).status).toBe(201);
    const { status, body } = await opening();
    expect([status, body.code]).toEqual([503, 'too-many-rooms']);
  });

  test('rejects an address that opens too many in a minute, and asks of every address less than the limit', async () => {
    await server.stop();
    server = await startServer({ settings: { ROOMS_PER_MINUTE: '2', REQUESTS_PER_MINUTE: '4' } });
    for (let n = 0; n < 2; n++) expect((await opening()).status).toBe(201);
    const { status, body } = await opening();
    expect([status, body.code]).toEqual([429, 'too-fast']);
    for (let n = 0; n < 4; n++) expect((await http().get(HOUSE_CARD_PATH)).status).toBe(200);
    expect((await http().get(HOUSE_CARD_PATH)).status).toBe(429);
    expect((await http().get('/healthz')).status).toBe(200);
  });
});

describe('a room by its code', () => {
  test('shows who sits where and nothing of the tiles', async () => {
    const { code } = await openRoom(server, ALONE);
    const { body } = await http().get(roomPath(code));
    const lobby = lobbySchema.strict().parse(body);
    expect(lobby.seats.map(({ kind }) => kind)).toEqual(['person', 'bot', 'bot', 'bot']);
    expect(lobby.card).toEqual({ id: HOUSE_CARD.id, name: HOUSE_CARD.name });
  });

  test('W2 W6 shows how its table plays, as usual where nothing else was asked for', async () => {
    const terms = { secondCharleston: 'none', botPace: 'quick' } as const;
    const { code } = await openRoom(server, { ...ALONE, terms });
    const lobby = lobbySchema.parse((await http().get(roomPath(code))).body);
    expect(lobby.terms).toEqual({ ...STANDARD_TERMS.alone, ...terms });
    const { code: other } = await openRoom(server, { ...FRIENDS, terms: {} });
    expect((await http().get(roomPath(other))).body.terms).toEqual(STANDARD_TERMS.friends);
  });

  test('is found in small letters and with a hyphen', async () => {
    const { code } = await openRoom(server);
    const spoken = `${code.slice(0, 4)}-${code.slice(4)}`.toLowerCase();
    expect((await http().get(roomPath(spoken))).body.code).toBe(code);
  });

  test('gives one answer for a wrong code, whatever is wrong with it', async () => {
    const answers = new Set<string>();
    for (const code of ['ZZZZZZZZ', '22222222', 'short', 'a%2Fb', 'IIIIIIII']) {
      const { status, text } = await http().get(`${ROOMS_PATH}/${code}`);
      answers.add(`${status} ${text}`);
    }
    expect([...answers]).toEqual([expect.stringContaining('no-such-room')]);
    for (const path of [seatsPath('ZZZZZZZZ'), ticketPath('ZZZZZZZZ')]) {
      const { status, body } = await http().post(path).send({ name: 'Odo', seat: null });
      expect([status, body.code]).toEqual([404, 'no-such-room']);
    }
  });

  test('serves its card file, the house card or its host’s', async () => {
    const house = await openRoom(server);
    expect((await http().get(cardPath(house.code))).body).toEqual(HOUSE_CARD);
    expect((await http().get(HOUSE_CARD_PATH)).body).toEqual(HOUSE_CARD);
    const card = {
      ...HOUSE_CARD,
      id: 'garden',
      name: 'Garden card',
      patterns: HOUSE_CARD.patterns.slice(0, 9),
    };
    const own = await openRoom(server, { ...FRIENDS, card });
    expect((await http().get(cardPath(own.code))).body).toEqual(card);
    expect((await http().get(roomPath(own.code))).body.card).toEqual({ id: 'garden', name: 'Garden card' });
  });
});

describe('taking a seat', () => {
  test('gives the seat asked for, or the first free one', async () => {
    const { code } = await openRoom(server);
    expect((await takeSeat(server, code, { name: 'Odo', seat: 2 })).seat).toBe(2);
    expect((await takeSeat(server, code, { name: 'Wilma', seat: null })).seat).toBe(1);
  });

  test('rejects a seat somebody has, and any seat of a full table', async () => {
    const { code } = await openRoom(server);
    const claim = (seat: number | null) => http().post(seatsPath(code)).send({ name: 'Odo', seat });
    expect((await claim(0)).body.code).toBe('seat-taken');
    for (let n = 0; n < 3; n++) expect((await claim(null)).status).toBe(200);
    expect((await claim(null)).body.code).toBe('seat-taken');
  });

  test('answers a claim sent twice with the seat already held', async () => {
    const { code, secret } = await openRoom(server);
    const claim = () =>
      http().post(seatsPath(code)).set('cookie', `seat=${secret}`).send({ name: 'Ines', seat: 3 });
    expect((await claim()).body).toEqual({ seat: 0 });
    expect((await http().get(roomPath(code))).body.seats[3]).toEqual({ kind: 'empty' });
  });

  test('moves a bot aside between rounds, but not with tiles in its hand', async () => {
    const request: OpenRoom = { ...FRIENDS, bots: ['strong', 'strong', 'strong'] };
    const { code } = await openRoom(server, request);
    expect((await takeSeat(server, code, { name: 'Odo', seat: 2 })).seat).toBe(2);
    const alone = await openRoom(server, ALONE);
    await expect.poll(async () => (await http().get(roomPath(alone.code))).body.round).toBe(1);
    const { body } = await http().post(seatsPath(alone.code)).send({ name: 'Odo', seat: 2 });
    expect(body.code).toBe('round-running');
  });
});

describe('every answer', () => {
  test('forbids inline scripts and frames, and keeps the address to itself', async () => {
    const { headers } = await http().get('/healthz');
    const policy = headers['content-security-policy']!;
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).toContain("worker-src 'self'");
    // WebAssembly may be compiled; nothing else may be made from a string, and nothing may stand in the page itself.
    expect(policy.replace("'wasm-unsafe-eval'", '')).not.toContain('unsafe');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  test('rejects pages of other origins, and accepts its own, the configured and programs', async () => {
    await server.stop();
    server = await startServer({
      settings: { ALLOWED_ORIGINS: 'https://table.example, https://two.example/' },
    });
    const from = async (origin: string | null) => {
      const call = http().post(ROOMS_PATH);
      return (await (origin === null ? call : call.set('origin', origin)).send(FRIENDS)).status;
    };
    expect(await from('https://elsewhere.example')).toBe(403);
    expect(await from('null')).toBe(403);
    expect(await from(server.url.replace(/\d+$/, '1'))).toBe(403);
    expect(await from(server.url)).toBe(201);
    expect(await from('https://table.example')).toBe(201);
    expect(await from('https://two.example')).toBe(201);
    expect(await from(null)).toBe(201);
  });

  test('to an unknown address is a rejection in words', async () => {
    const { status, body } = await http().get('/api/nothing');
    expect(status).toBe(404);
    expect(httpRejectionSchema.parse(body).code).toBe('not-found');
  });
});
