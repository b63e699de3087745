// The operator's metrics: a listener of their own, off by default, and nothing in them that names anybody.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readConfig } from '../../server/config.ts';
import {
  createMetrics,
  listenForMetrics,
  type Metrics,
  type MetricsListener,
} from '../../server/http/metrics.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';
import { deal, playOn, post, tableOfFour } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let metrics: Metrics;
let listener: MetricsListener;
let server: TestServer;
beforeEach(async () => {
  metrics = createMetrics();
  metrics.observeWork({
    cardsCompiled: 2,
    waiting: 7,
    leftOut: [{ task: 'analyze', reason: 'too-old', count: 3 }],
  });
  listener = await listenForMetrics(metrics, 0);
  server = await startServer({ seed: 'metrics', metrics });
});
afterEach(async () => {
  await server.stop();
  await listener.close();
});

const at = (path: string) => fetch(`http://127.0.0.1:${listener.port}${path}`);

test('the metrics are off unless a port is named', () => {
  expect(readConfig({})).toMatchObject({ ok: true, config: { metricsPort: null } });
  expect(readConfig({ METRICS_PORT: '9100' })).toMatchObject({ ok: true, config: { metricsPort: 9100 } });
});

test('the metrics are not at the address of the players', async () => {
  expect((await fetch(`${server.url}/metrics`)).status).toBe(404);
});

test('the metrics count rooms, sockets, requests and work that was left out', async () => {
  await tableOfFour(server);
  const response = await at('/metrics');
  expect(response.status).toBe(200);
  const text = await response.text();
  expect(text).toContain('rooms_active 1');
  expect(text).toContain('sockets_open 4');
  expect(text).toContain('http_requests_total{method="POST",route="/api/rooms/:code/seats",status="200"} 3');
  expect(text).toMatch(/^http_request_duration_seconds_count [1-9]/m);
  expect(text).toContain('tasks_waiting 7');
  expect(text).toContain('tasks_left_out_total{task="analyze",reason="too-old"} 3');
});

test('the listener of the metrics answers nothing else, and changes nothing', async () => {
  expect((await at('/')).status).toBe(404);
  expect((await at('/metrics/../healthz')).status).toBe(404);
  expect((await fetch(`http://127.0.0.1:${listener.port}/metrics`, { method: 'POST' })).status).toBe(404);
});

test('the metrics hold no tile, name, code or secret after a whole round and wrong addresses', async () => {
  const { code, peers, guests } = await tableOfFour(server);
  await deal(peers);
  await Promise.all(peers.map((peer) => playOn(peer, 'metrics')));
  await post(`${server.url}/api/rooms/${code}/nothing`, { name: 'Zyphrania' });
  await post(`${server.url}/Zyphrania`, {});
  const text = await (await at('/metrics')).text();
  const secrets = guests.map(({ secret }) => secret);
  expect(['Ines', 'Zyphrania', code, ...secrets].filter((word) => text.includes(word))).toEqual([]);
  expect(FACES.filter((face) => new RegExp(`\\b${face}\\b`).test(text))).toEqual([]);
});
