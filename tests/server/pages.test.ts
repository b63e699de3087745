// The built page as the server hands it out: its files, and the same document for every link to a table.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import request from 'supertest';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { tablePath } from '../../shared-engine/index.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let folder: string;
let server: TestServer;
beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'page-'));
  mkdirSync(path.join(folder, 'assets'));
  writeFileSync(path.join(folder, 'index.html'), '<!doctype html><title>table</title>');
  writeFileSync(path.join(folder, 'assets', 'main-abc123.js'), 'export {};');
  server = await startServer({ clientFolder: folder });
});
afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true });
});

test('serves the document at the front and at every link to a table, and lets nobody keep it', async () => {
  for (const address of ['/', tablePath('ABCD2345')]) {
    const { status, text, headers } = await request(server.url).get(address);
    expect([status, text]).toEqual([200, '<!doctype html><title>table</title>']);
    expect(headers['cache-control']).toBe('no-cache');
    expect(headers['content-security-policy']).toContain("script-src 'self'");
  }
});

test('serves files with a hash in their name to be kept for good', async () => {
  const { headers } = await request(server.url).get('/assets/main-abc123.js');
  expect(headers['content-type']).toContain('javascript');
  expect(headers['cache-control']).toContain('immutable');
});

test('hands out nothing beside the folder', async () => {
  for (const address of [
    '/../package.json',
    '/..%2fpackage.json',
    '/assets/%2e%2e/%2e%2e/package.json',
    '/none.js',
  ]) {
    expect((await request(server.url).get(address)).status).toBeGreaterThanOrEqual(400);
  }
});

test('without a built page answers the API alone', async () => {
  const bare = await startServer({ clientFolder: path.join(folder, 'not built') });
  expect((await request(bare.url).get('/healthz')).status).toBe(200);
  expect((await request(bare.url).get('/')).status).toBe(404);
  await bare.stop();
});
