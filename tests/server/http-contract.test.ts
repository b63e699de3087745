// Every address of the server × everything that can go wrong: each answer is ours, and none tells its cause.
import { readFileSync } from 'node:fs';
import { connect } from 'node:net';
import path from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { BODY_LIMIT } from '../../server/app.ts';
import { RETRY_MS } from '../../server/http/readiness.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { httpRejectionSchema, versionSchema } from '../../shared-engine/protocol/room-http.ts';
import { NO_CODE, readAnswer, routesOf } from '../kit/routes.ts';
import { PAGE_STAND_IN, startServer, type TestServer, type TestServerOptions } from '../kit/server.ts';

/** Part of a cause that no answer may hold. */
const CAUSE = 'connect ECONNREFUSED keeper@db.internal';
const CODE = NO_CODE;
const DOCUMENT = readFileSync(path.join(PAGE_STAND_IN, 'index.html'), 'utf8');
const JSON_HEADERS = { 'content-type': 'application/json' };

let servers: TestServer[] = [];
afterEach(async () => {
  const started = servers;
  servers = [];
  await Promise.all(started.map((server) => server.stop()));
});

async function start(options: TestServerOptions = {}): Promise<TestServer> {
  const server = await startServer({ seed: 'contract', pageFolder: PAGE_STAND_IN, ...options });
  servers.push(server);
  return server;
}

/** Fails for an answer that is neither good nor a rejection of ours. */
async function answerTo(server: TestServer, at: string, init: RequestInit = {}) {
  const { status, code } = await readAnswer(server, at, init, [CAUSE]);
  return { status, code };
}

describe('every route', () => {
  test('is on the list that these tests go through', async () => {
    const routes = routesOf((await start()).app).map(({ method, path }) => `${method} ${path}`);
    for (const known of [
      'POST /api/rooms',
      `DELETE /api/rooms/${CODE}/personal-data`,
      'GET /lead',
      'GET /healthz',
    ])
      expect(routes).toContain(known);
    expect(routes).toHaveLength(new Set(routes).size);
    expect(routes.length).toBeGreaterThan(25);
  });

  test('rejects a body that is no JSON, of another type or too large, in our words', async () => {
    const server = await start();
    for (const { method, path } of routesOf(server.app).filter((route) => route.method === 'POST')) {
      const send = (body: string, type = 'application/json') =>
        answerTo(server, path, { method, body, headers: { 'content-type': type } });
      expect([path, await send('{"a"')]).toEqual([path, { status: 400, code: 'bad-request' }]);
      expect([path, await send('')]).toEqual([path, { status: 400, code: 'bad-request' }]);
      expect([path, await send('{}', 'text/strange')]).toEqual([path, { status: 415, code: 'bad-request' }]);
      const large = JSON.stringify('x'.repeat(BODY_LIMIT));
      expect([path, await send(large)]).toEqual([path, { status: 413, code: 'too-large' }]);
    }
  });

  test('gives an answer of ours to a code that nobody has, and to one that cannot be read', async () => {
    const server = await start();
    for (const { method, path } of routesOf(server.app)) {
      const init = method === 'POST' ? { method, headers: JSON_HEADERS, body: '{}' } : { method };
      const { status } = await answerTo(server, path, init);
      expect([path, status]).not.toEqual([path, 500]);
      if (!path.includes(CODE)) continue;
      const broken = await answerTo(server, path.replace(CODE, '%zz'), init);
      expect([path, broken.status]).toEqual([path, 400]);
    }
  });

  test('answers more requests than are allowed in our words', async () => {
    const server = await start({ settings: { REQUESTS_PER_MINUTE: '1' } });
    await answerTo(server, '/api/cards/house');
    for (const { method, path } of routesOf(server.app).filter(({ path: one }) => one.startsWith('/api/'))) {
      const answer = await answerTo(server, path, { method });
      expect([path, answer]).toEqual([path, { status: 429, code: method === 'HEAD' ? null : 'too-fast' }]);
    }
    // Files of the page are not counted.
    expect(await answerTo(server, '/none.js')).toEqual({ status: 404, code: 'not-found' });
  });

  test('says to try later while the store is away, logs the cause by request, and tells it nobody', async () => {
    const away = async () => {
      throw Object.assign(new Error(CAUSE), { code: 'ECONNREFUSED' });
    };
    const methods = Object.keys(memoryStore()).filter((name) => name !== 'close');
    const store = { ...memoryStore(), ...Object.fromEntries(methods.map((name) => [name, away])) };
    const server = await start({ store });
    const open = {
      name: 'Ines',
      mode: 'friends',
      terms: { deadline: null, revealRacks: false },
      bots: [null, null, null],
      card: null,
    };
    let failed = 0;
    for (const { method, path } of routesOf(server.app)) {
      if (method === 'HEAD' || (/classes|drills|clubs/.test(path) && !path.includes(CODE))) continue;
      const body = JSON.stringify(path === '/api/rooms' ? open : {});
      const init = method === 'POST' ? { method, headers: JSON_HEADERS, body } : { method };
      const { status, code } = await answerTo(server, path, init);
      if (!/^\/api\/(rooms|classes|drills|clubs)/.test(path)) continue;
      failed++;
      expect([path, status, code]).toEqual([path, 503, 'try-later']);
    }
    const errors = server.logged
      .map((line) => JSON.parse(line))
      .filter(({ msg }) => msg === 'a request failed');
    expect(errors).toHaveLength(failed);
    expect(errors.every(({ request, code }) => request !== undefined && code === 'ECONNREFUSED')).toBe(true);
    expect(server.logged.join()).not.toContain(CAUSE);
  });
});

describe('a link to a page', () => {
  test.each([
    [`/t/${CODE}/`, `/t/${CODE}`],
    [`/T/${CODE}`, `/t/${CODE}`],
    [`/t/${CODE.toLowerCase()}`, `/t/${CODE}`],
    [`/t/${CODE}.`, `/t/${CODE}`],
    ['/t/abcd%202345%20', `/t/${CODE}`],
    [`//T//abcd-2345//?from=mail`, `/t/${CODE}`],
    [`/C/${CODE}`, `/c/${CODE}`],
    [`/c/${CODE}/Big-Screen/`, `/c/${CODE}/big-screen`],
    [`/c/${CODE}/report.`, `/c/${CODE}/report`],
    ['/LEAD/', '/lead'],
  ])('that was typed as %s leads to %s, whoever asks', async (typed, meant) => {
    const { url } = await start();
    for (const accept of ['text/html,*/*;q=0.8', '*/*']) {
      const response = await fetch(`${url}${typed}`, { headers: { accept }, redirect: 'manual' });
      expect([response.status, response.headers.get('location')]).toEqual([302, meant]);
    }
    expect((await fetch(`${url}${meant}`, { redirect: 'manual' })).status).toBe(200);
  });

  test.each(['/none', '/t/none', `/t/${CODE}/more`, `/c/${CODE}/none`, '/lead/on', '/assets/none.js'])(
    'that leads nowhere, as %s, shows a person the page with status 404 and tells a program in our words',
    async (path) => {
      const server = await start();
      const accept = 'text/html,application/xhtml+xml,*/*;q=0.8';
      const person = await fetch(`${server.url}${path}`, { headers: { accept } });
      expect([person.status, await person.text()]).toEqual([404, DOCUMENT]);
      expect(person.headers.get('cache-control')).toBe('no-cache');
      expect(await answerTo(server, path)).toEqual({ status: 404, code: 'not-found' });
    },
  );

  test('is no part of the API: whoever asks that gets our words, and without a built page everybody does', async () => {
    const init = { headers: { accept: 'text/html' } };
    expect(await answerTo(await start(), '/api/none', init)).toEqual({ status: 404, code: 'not-found' });
    const bare = await start({ pageFolder: 'no such folder' });
    for (const path of ['/none', `/T/${CODE}`]) {
      expect(await answerTo(bare, path, init)).toEqual({ status: 404, code: 'not-found' });
    }
  });
});

describe('what a machine asks that looks after the server', () => {
  const READY = { status: 200, code: null };

  test('is which version runs and which protocol it speaks, and nothing else is told', async () => {
    const { url } = await start();
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    const response = await fetch(`${url}/api/version`);
    const answer = await response.json();
    expect(answer).toEqual({ version, protocol: { lowest: 1, highest: 1 } });
    expect(versionSchema.strict().parse(answer)).toEqual(answer);
    const told = [...response.headers].join();
    expect(told).not.toMatch(/node|fastify|express/i);
  });

  test('is whether it lives, which it does without its store, and whether anything can be stored', async () => {
    const rooms = memoryStore();
    let isAway = true;
    let tries = 0;
    const checkWritable = () => {
      tries++;
      return isAway ? Promise.reject(new Error(CAUSE)) : rooms.checkWritable();
    };
    const server = await start({
      store: { ...rooms, checkWritable },
      settings: { REQUESTS_PER_MINUTE: '1' },
    });
    for (let n = 0; n < 3; n++) {
      expect(await answerTo(server, '/healthz')).toEqual(READY);
      expect(await answerTo(server, '/readyz')).toEqual({ status: 503, code: 'not-ready' });
    }
    expect(tries).toBe(1);
    const { problems } = httpRejectionSchema.parse(await (await fetch(`${server.url}/readyz`)).json());
    expect(problems).toEqual(['Nothing can be stored.']);
    isAway = false;
    server.clock.advance(RETRY_MS);
    expect(await answerTo(server, '/readyz')).toEqual(READY);
    const told = server.logged.map((line) => JSON.parse(line).msg).filter((text) => text.includes('ready'));
    expect(told).toEqual(['the server is not ready', 'the server is ready again']);
  });

  test('is whether there is room in its queue', async () => {
    const backlog = { waiting: 5000, oldestMs: 0, isFull: true };
    const server = await start({ backlog });
    expect(await answerTo(server, '/readyz')).toEqual({ status: 503, code: 'not-ready' });
    backlog.isFull = false;
    server.clock.advance(RETRY_MS);
    expect(await answerTo(server, '/readyz')).toEqual(READY);
  });
});

describe('an address that is nobody’s', () => {
  test.each([
    ['/none.js', 404],
    ['/assets/none.js', 404],
    ['/t/none', 404],
    [`/c/${CODE}/none`, 404],
    ['/api/nothing', 404],
    ['/.env', 404],
    ['/..%2fpackage.json', 404],
    ['/assets/%2e%2e/%2e%2e/package.json', 404],
    ['/%E0%A4%A', 400],
    ['/api/rooms/%zz', 400],
  ])('%s is answered in our words', async (path, status) => {
    const server = await start();
    const code = status === 404 ? 'not-found' : 'bad-request';
    expect(await answerTo(server, path)).toEqual({ status, code });
    expect(await answerTo(server, path, { method: 'DELETE' })).toEqual({ status, code });
  });

  test('with two slashes or by another method is answered in our words', async () => {
    const server = await start();
    expect((await answerTo(server, '//')).status).toBeLessThan(500);
    expect(await answerTo(server, '/lead', { method: 'POST' })).toEqual({ status: 404, code: 'not-found' });
  });

  test('is no secret: its answer is the same with a built page and without one', async () => {
    const answers = await Promise.all(
      [PAGE_STAND_IN, 'no such folder'].map(async (pageFolder) => {
        const server = await start({ pageFolder });
        return (await fetch(`${server.url}/api/nothing`)).text();
      }),
    );
    expect(answers[0]).toBe(answers[1]);
  });

  test('that is not even HTTP gets an answer of ours', async () => {
    const { url } = await start();
    const socket = connect(Number(new URL(url).port), '127.0.0.1');
    socket.end('NONSENSE\r\n\r\n');
    const chunks: Buffer[] = [];
    for await (const chunk of socket) chunks.push(chunk);
    const [head, body] = Buffer.concat(chunks).toString().split('\r\n\r\n');
    expect(head).toContain('400 Bad Request');
    expect(httpRejectionSchema.strict().parse(JSON.parse(body!)).code).toBe('bad-request');
  });
});
