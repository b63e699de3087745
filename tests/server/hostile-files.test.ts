// A built server with a small heap, attacked with card and drill files over the network.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BUILT_MAIN, type ServerProcess, startProcess } from '../kit/server-process.ts';
import { freePort } from '../kit/temporary.ts';
import { siegeCards } from '../prove/siege/cards.ts';
import { siegeDrills } from '../prove/siege/drills.ts';
import type { WatchedServer } from '../prove/siege/watched-server.ts';

/** A fifth of what a card of 12,000 hands at sixty tables took when each table compiled it. */
const HEAP_MB = 64;

let server: ServerProcess;
let watched: WatchedServer;

beforeAll(async () => {
  const port = await freePort();
  const settings = { METRICS_PORT: String(port), REVIEW_WORKERS: '1' };
  server = startProcess(settings, [`--max-old-space-size=${HEAP_MB}`, BUILT_MAIN]);
  const metricsUrl = `http://127.0.0.1:${port}/metrics`;
  watched = { url: await server.url, pid: server.child.pid!, metricsUrl };
});

afterAll(async () => {
  server.child.kill('SIGKILL');
  await server.ended;
});

test('WK1 WK3 a hostile card is rejected, and the largest one opens many tables and is compiled once', async () => {
  const findings = await siegeCards(watched, 'small');
  expect(findings.filter(({ holds }) => !holds)).toEqual([]);
  expect(findings).toHaveLength(3);
});

test('WK5 WK6 an ordinary class opens while hard drills are prepared, and what nobody waits for ends', async () => {
  const findings = await siegeDrills(watched, 'small');
  expect(findings.filter(({ holds }) => !holds)).toEqual([]);
  expect(findings).toHaveLength(3);
});
