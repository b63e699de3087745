// Part 3: every route × everything that can go wrong with a request, also while the store cannot be written.

import path from 'node:path';
import Database from 'better-sqlite3';
import { FRIENDS } from '../../kit/http-client.ts';
import { type Route, readAnswer, routesOf } from '../../kit/routes.ts';
import { PAGE_STAND_IN, startServer } from '../../kit/server.ts';
import type { Finding } from './finding.ts';
import { type Attack, findingsOf, type Siege, UNLIMITED } from './siege.ts';

const tell = findingsOf('3 error path');
const JSON_TYPE = { 'content-type': 'application/json' };

export const errorPath: Attack = async (siege) => {
  const routes = await everyRoute();
  return [
    await wrongRequests(siege, routes),
    await tooManyRequests(siege, routes),
    await storeAway(siege),
    ...(await pages(siege)),
  ];
};

/** The same assembly in this process lists its routes. */
async function everyRoute(): Promise<readonly Route[]> {
  const { app, stop } = await startServer({ seed: 'routes', pageFolder: PAGE_STAND_IN });
  const routes = routesOf(app);
  await stop();
  return routes;
}

async function wrongRequests({ server }: Siege, routes: readonly Route[]): Promise<Finding> {
  const problems: string[] = [];
  let tried = 0;
  const attempt = async (at: string, init: RequestInit, wanted: readonly number[]) => {
    tried++;
    const told = await readAnswer(server, at, init).catch((error: Error) => error.message);
    if (typeof told === 'string') problems.push(told);
    else if (!wanted.includes(told.status)) problems.push(`${init.method} ${at}: ${told.status}`);
  };
  for (const { method, path: at } of routes) {
    await attempt(
      at.replace('ABCD2345', '%zz'),
      { method },
      at.includes('ABCD2345') ? [400] : [200, 400, 404],
    );
    await attempt(at, { method: 'PATCH' }, [404]);
    if (method !== 'POST') continue;
    for (const body of ['{"a"', '', '[]', '{"__proto__":{}}', 'null'])
      await attempt(at, { method, body, headers: JSON_TYPE }, [400, 404]);
    await attempt(at, { method, body: '{}', headers: { 'content-type': 'text/strange' } }, [415]);
  }
  return tell(
    `of ${tried} wrong requests to ${routes.length} routes, answers that are not ours`,
    '0',
    problems.slice(0, 3).join('; ') || '0',
    problems.length === 0,
  );
}

async function tooManyRequests({ start }: Siege, routes: readonly Route[]): Promise<Finding> {
  const server = await start({ ...UNLIMITED, REQUESTS_PER_MINUTE: '1' });
  await fetch(`${server.url}/api/cards/house`);
  const api = routes.filter(({ path: at }) => at.startsWith('/api/'));
  const answers = await Promise.all(
    api.map(({ method, path: at }) => readAnswer(server, at, { method }).catch(() => null)),
  );
  const other = answers.filter((answer) => answer?.status !== 429);
  return tell(
    `of ${api.length} routes, those that answer another thing than 429 in our words to one request too many`,
    '0',
    other.length,
    other.length === 0,
  );
}

/** Another program holds the file, so that nothing can be written. */
async function storeAway({ server }: Siege): Promise<Finding> {
  const file = new Database(path.join(server.dataFolder, 'quadrille.db'));
  file.exec('BEGIN IMMEDIATE');
  try {
    const init = { method: 'POST', headers: JSON_TYPE, body: JSON.stringify(FRIENDS) };
    const { status, code, requestId } = await readAnswer(server, '/api/rooms', init);
    return tell(
      'opening a room while the file is locked',
      '503 try-later with a request id, and no cause',
      `${status} ${code}, request ${requestId === null ? 'without id' : 'with id'}`,
      status === 503 && code === 'try-later' && requestId !== null,
    );
  } finally {
    file.exec('ROLLBACK');
    file.close();
  }
}

async function pages({ server }: Siege): Promise<Finding[]> {
  const accept = { accept: 'text/html' };
  const led = await Promise.all(
    ['/T/abcd2345', '/t/ABCD2345/', '/t/ABCD2345.', '/c/ABCD2345/Report/'].map(async (at) => {
      const response = await fetch(`${server.url}${at}`, { headers: accept, redirect: 'manual' });
      return response.headers.get('location');
    }),
  );
  const wanted = ['/t/ABCD2345', '/t/ABCD2345', '/t/ABCD2345', '/c/ABCD2345/report'];
  const missing = await fetch(`${server.url}/nobody-lives-here`, { headers: accept });
  const isPage = missing.headers.get('content-type')?.startsWith('text/html') === true;
  return [
    tell('where mistyped links lead', wanted.join(), led.join(), led.join() === wanted.join()),
    tell(
      'an address where nothing is, to a person',
      '404 with the page (npm run build makes it)',
      `${missing.status} ${isPage ? 'with' : 'without'} the page`,
      missing.status === 404 && isPage,
    ),
  ];
}
