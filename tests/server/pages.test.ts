// The built page as the server hands it out: its files, and the same document for every link to a table.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import request from 'supertest';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { classLink, tablePath } from '../../shared-engine/protocol/paths.ts';
import { PAGE_STAND_IN, startServer, type TestServer } from '../kit/server.ts';

const DOCUMENT = readFileSync(path.join(PAGE_STAND_IN, 'index.html'), 'utf8');

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.stop());

test('the document is served at the front and at every link, and no browser stores it for good', async () => {
  for (const address of [
    '/',
    tablePath('ABCD2345'),
    classLink('ABCD2345'),
    `${classLink('ABCD2345')}/report`,
    '/lead',
  ]) {
    const { status, text, headers } = await request(server.url).get(address);
    expect([status, text]).toEqual([200, DOCUMENT]);
    expect(headers['cache-control']).toBe('no-cache');
    expect(headers['content-security-policy']).toContain("script-src 'self'");
  }
});

test('files with a hash in their name are served to be stored for good', async () => {
  const { headers } = await request(server.url).get('/assets/main-abc123.js');
  expect(headers['content-type']).toContain('javascript');
  expect(headers['cache-control']).toContain('immutable');
});

test('nothing beside the folder of the page is served', async () => {
  for (const address of [
    '/../package.json',
    '/..%2fpackage.json',
    '/assets/%2e%2e/%2e%2e/package.json',
    '/none.js',
  ]) {
    expect((await request(server.url).get(address)).status).toBeGreaterThanOrEqual(400);
  }
});

test('without a built page the server answers the API alone', async () => {
  const bare = await startServer({ pageFolder: path.join(PAGE_STAND_IN, 'not built') });
  expect((await request(bare.url).get('/healthz')).status).toBe(200);
  expect((await request(bare.url).get('/')).status).toBe(404);
  await bare.stop();
});
