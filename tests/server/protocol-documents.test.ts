// The OpenAPI and AsyncAPI documents: they fit their published schemas, name everything there is, and every frame fits them.
import asyncApiSchemas from '@asyncapi/specs';
import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv } from 'ajv';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BODIES, EXAMPLES } from '../../server/http/bodies.ts';
import { openApiDocument } from '../../server/http/open-api.ts';
import { OPERATIONS } from '../../server/http/operations.ts';
import { asyncApiDocument } from '../../shared-engine/protocol/async-api.ts';
import { exampleMessages } from '../../shared-engine/protocol/example-messages.ts';
import { clientMessageSchema, serverMessageSchema } from '../../shared-engine/protocol/messages.ts';
import { invitationsPath, ROOMS_PATH, roomPath, ticketPath } from '../../shared-engine/protocol/paths.ts';
import { rejectionCodeSchema } from '../../shared-engine/protocol/rejections.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import { ALONE, deal, playOn, tableOfFour, watch } from '../kit/http-client.ts';
import { routesOf } from '../kit/routes.ts';
import { startServer, type TestServer } from '../kit/server.ts';

/** Formats are said beside the patterns that hold them, and both documents carry fields of their own. */
const LENIENT = { strict: false, validateFormats: false } as const;

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'documents' });
});
afterAll(() => server.stop());

async function served(path: string) {
  const response = await fetch(`${server.url}${path}`);
  return { type: response.headers.get('content-type'), document: await response.json() };
}

describe('the OpenAPI document', () => {
  const document = openApiDocument();

  test('is served as it is made, and fits the published schema of OpenAPI 3.1', async () => {
    const { type, document: answer } = await served('/api/openapi.json');
    expect(type).toBe('application/json; charset=utf-8');
    expect(answer).toEqual(JSON.parse(JSON.stringify(document)));
    const checked = await new Validator().validate(answer);
    expect(checked).toMatchObject({ valid: true });
    expect((await new Validator().validate({ ...answer, paths: [] })).valid).toBe(false);
  });

  test('describes every route of the server but those of the page, and no other', () => {
    const isOfPage = (pattern: string) => !pattern.startsWith('/api/') && !/^\/[a-z]+z$/.test(pattern);
    const routes = routesOf(server.app)
      .filter(({ method, pattern }) => method !== 'HEAD' && !isOfPage(pattern))
      .map(({ method, pattern }) => `${method} ${pattern.replaceAll(/:(\w+)/g, '{$1}')}`);
    const described = OPERATIONS.map(({ method, path }) => `${method.toUpperCase()} ${path}`);
    expect(described.toSorted()).toEqual(routes.toSorted());
    expect(described.length).toBeGreaterThan(20);
  });

  test('has no example that the server itself would not read', () => {
    const names = Object.keys(EXAMPLES).filter((name): name is keyof typeof EXAMPLES => name in EXAMPLES);
    expect(names.length).toBeGreaterThan(5);
    for (const name of names)
      expect([name, BODIES[name].safeParse(EXAMPLES[name]).success]).toEqual([name, true]);
  });

  test('describes the answers that come: opening, looking in, a ticket, rejections', async () => {
    const ajv = new Ajv2020(LENIENT).addSchema(JSON.parse(JSON.stringify(document)), 'openapi');
    const { paths } = JSON.parse(JSON.stringify(document));
    const asked = async (method: string, path: string, pattern: string, body?: unknown) => {
      const init = body === undefined ? {} : { body: JSON.stringify(body) };
      const response = await fetch(`${server.url}${path}`, {
        method,
        headers: body === undefined ? {} : { 'content-type': 'application/json' },
        ...init,
      });
      const { content, description } = paths[pattern][method.toLowerCase()].responses[response.status];
      const answer = await response.json();
      const name = content['application/json'].schema.$ref.split('/').at(-1);
      if (name === 'Rejection') expect(description).toContain(answer.code);
      expect(ajv.validate(`openapi#/components/schemas/${name}`, answer), ajv.errorsText()).toBe(true);
      return [name, answer] as const;
    };
    const [opened, { code }] = await asked('POST', ROOMS_PATH, '/api/rooms', { ...ALONE, secretIn: 'body' });
    expect(opened).toBe('RoomOpened');
    expect((await asked('GET', roomPath(code), '/api/rooms/{code}'))[0]).toBe('Lobby');
    expect((await asked('POST', ticketPath(code), '/api/rooms/{code}/ticket'))[0]).toBe('Ticket');
    expect((await asked('GET', `${roomPath(code)}/card`, '/api/rooms/{code}/card'))[0]).toBe('CardFile');
    const invite = await asked('POST', invitationsPath(code), '/api/rooms/{code}/invitations', { seat: 2 });
    expect(invite).toEqual(['Rejection', expect.objectContaining({ code: 'not-seated' })]);
    expect((await asked('POST', ROOMS_PATH, '/api/rooms', {}))[1].code).toBe('bad-request');
    const five = { ...ALONE, terms: { players: 5 } };
    expect((await asked('POST', ROOMS_PATH, '/api/rooms', five))[1].code).toBe('not-four-players');
    expect((await asked('GET', '/api/classes/ABCD2345', '/api/classes/{code}'))[0]).toBe('Rejection');
  });

  test('shows with each rejected status one of its own codes, and what a body of another type gets', async () => {
    const { paths, 'x-rejections': listed } = JSON.parse(JSON.stringify(document));
    const messages = new Map<string, string>(
      listed.map(({ code, message }: Record<'code' | 'message', string>) => [code, message]),
    );
    const answers = Object.values<object>(paths).flatMap((path) =>
      Object.values(path).flatMap(({ responses }) =>
        Object.entries<{ description: string; content: Record<string, { example: { code: string } }> }>(
          responses,
        ),
      ),
    );
    const rejected = answers.filter(([status]) => Number(status) >= 400);
    expect(rejected.length).toBeGreaterThan(100);
    for (const [status, { description, content }] of rejected) {
      const { example } = content['application/json']!;
      expect(description).toContain(example.code);
      expect(example).toEqual({ code: example.code, message: messages.get(example.code), problems: [] });
      const usual = listed.find(({ code }: { code: string }) => code === example.code).status;
      expect(usual).toBe(status === '415' ? 400 : Number(status));
    }
    const headers = { 'content-type': 'application/x-www-form-urlencoded' };
    const response = await fetch(`${server.url}${ROOMS_PATH}`, { method: 'POST', headers, body: '{}' });
    expect(response.status).toBe(415);
    expect(paths['/api/rooms'].post.responses[415].content['application/json'].example).toEqual(
      await response.json(),
    );
  });

  test('has every rejection with its status', () => {
    const { 'x-rejections': listed } = JSON.parse(JSON.stringify(document));
    expect(listed.map(({ code }: { code: string }) => code).toSorted()).toEqual(
      rejectionCodeSchema.options.toSorted(),
    );
    expect(listed).toContainEqual(
      expect.objectContaining({ code: 'seat-taken', status: 409, advice: 'repair' }),
    );
  });
});

describe('the AsyncAPI document', () => {
  const document = JSON.parse(JSON.stringify(asyncApiDocument()));

  test('is served as it is made, and fits the published schema of AsyncAPI 3', async () => {
    expect((await served('/api/asyncapi.json')).document).toEqual(document);
    const fits = new Ajv(LENIENT).compile(
      JSON.parse(JSON.stringify(asyncApiSchemas.schemasWithoutId['3.0.0'])),
    );
    expect(fits(document), JSON.stringify(fits.errors)).toBe(true);
    expect(fits({ ...document, channels: { socket: { address: 5 } } })).toBe(false);
  });

  test('has every kind of message in its direction, each with examples that the server and the page would read', () => {
    const kinds = (schema: typeof clientMessageSchema | typeof serverMessageSchema) =>
      schema.options.map(({ shape }) => shape.kind.value);
    const said = (action: string) =>
      document.operations[action].messages.map(({ $ref }: { $ref: string }) => $ref.split('/').at(-1));
    expect(said('receive')).toEqual(kinds(clientMessageSchema));
    expect(said('send')).toEqual(kinds(serverMessageSchema));
    const examples = exampleMessages();
    const without = Object.keys(document.components.messages).filter((kind) => !examples[kind]?.length);
    expect(without).toEqual(['review']);
    for (const message of Object.values(examples).flat()) {
      const read = [clientMessageSchema, serverMessageSchema].some(
        (schema) => schema.safeParse(message).success,
      );
      expect([message.kind, read]).toEqual([message.kind, true]);
    }
    expect(document['x-close-codes'].map(({ code }: { code: number }) => code)).toEqual(Object.values(CLOSE));
  });

  test('every frame of a played round fits it, in both directions, and a changed one does not', async () => {
    const { code, peers } = await tableOfFour(server);
    const spectator = await watch(server, code);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'recorded')));
    for (const peer of peers) await peer.review();
    await peers[0]!.choose({ kind: 'vote', step: 'vote', go: true });
    const ajv = new Ajv(LENIENT).addSchema(document, 'asyncapi');
    const seen = new Set<string>();
    const misfits = [...peers, spectator].flatMap(({ frames, sent }) =>
      [...frames, ...sent].filter((text) => {
        const frame = JSON.parse(text);
        seen.add(frame.kind);
        const { $ref } = document.components.messages[frame.kind].payload;
        return !ajv.validate(`asyncapi${$ref}`, frame);
      }),
    );
    expect(misfits).toEqual([]);
    for (const kind of [
      'hello',
      'choose',
      'action',
      'welcome',
      'ack',
      'rejected',
      'table',
      'delta',
      'review',
    ])
      expect(seen).toContain(kind);
    const text = peers[0]!.frames.find((frame) => frame.includes('"viewDelta"'))!;
    const broken = JSON.parse(text.replace('"stage"', '"stag"'));
    expect(ajv.validate('asyncapi#/components/schemas/DeltaMessage', broken)).toBe(false);
  });
});
