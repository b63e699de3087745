// The operator's figures: a listener of their own, off by default, and nothing in them that names anybody.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readConfig } from '../../server/config.ts';
import {
  createMetrics,
  listenForMetrics,
  type Metrics,
  type MetricsListener,
} from '../../server/http/metrics.ts';
import { FACES } from '../../shared-engine/index.ts';
import { deal, playOn, post, tableOfFour } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let metrics: Metrics;
let listener: MetricsListener;
let server: TestServer;
beforeEach(async () => {
  metrics = createMetrics();
  listener = await listenForMetrics(metrics, 0);
  server = await startServer({ seed: 'figures', metrics });
});
afterEach(async () => {
  await server.stop();
  await listener.close();
});

const at = (path: string) => fetch(`http://127.0.0.1:${listener.port}${path}`);

test('are off unless a port is named', () => {
  expect(readConfig({})).toMatchObject({ ok: true, config: { metricsPort: null } });
  expect(readConfig({ METRICS_PORT: 'many' })).toEqual({
    ok: false,
    problems: ['METRICS_PORT: must be a number'],
  });
  expect(readConfig({ METRICS_PORT: '9100' })).toMatchObject({ ok: true, config: { metricsPort: 9100 } });
});

test('are not to be had where the players are', async () => {
  expect((await fetch(`${server.url}/metrics`)).status).toBe(404);
});

test('count rooms, sockets and answers', async () => {
  await tableOfFour(server);
  const response = await at('/metrics');
  expect(response.status).toBe(200);
  const text = await response.text();
  expect(text).toContain('rooms_in_hand 1');
  expect(text).toContain('sockets_open 4');
  expect(text).toContain('route="/api/rooms/:code/seats",status="200"} 3');
});

test('answer nothing else, and change nothing', async () => {
  expect((await at('/')).status).toBe(404);
  expect((await at('/metrics/../healthz')).status).toBe(404);
  expect((await fetch(`http://127.0.0.1:${listener.port}/metrics`, { method: 'POST' })).status).toBe(404);
});

test('hold no tile, name, code or secret after a whole round and wrong addresses', async () => {
  const { code, peers, guests } = await tableOfFour(server);
  await deal(peers);
  await Promise.all(peers.map((peer) => playOn(peer, 'figures')));
  await post(`${server.url}/api/rooms/${code}/nothing`, { name: 'Zyphrania' });
  await post(`${server.url}/Zyphrania`, {});
  const text = await (await at('/metrics')).text();
  const secrets = guests.map(({ secret }) => secret);
  expect(['Ines', 'Zyphrania', code, ...secrets].filter((word) => text.includes(word))).toEqual([]);
  expect(FACES.filter((face) => new RegExp(`\\b${face}\\b`).test(text))).toEqual([]);
});
