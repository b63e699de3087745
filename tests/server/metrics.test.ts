// The operator's metrics: a listener of their own, off by default, and nothing in them that names anybody.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readConfig } from '../../server/config.ts';
import {
  createMetrics,
  listenForMetrics,
  type Metrics,
  type MetricsListener,
} from '../../server/http/metrics.ts';
import type { Store } from '../../server/ports.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';
import { analysisOf, type FakeAnalyzer, fakeAnalyzer } from '../kit/fake-analysis.ts';
import { deal, playOn, post, tableOfFour } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let metrics: Metrics;
let listener: MetricsListener;
let server: TestServer;
let fake: FakeAnalyzer;
let isStoreAway: boolean;
beforeEach(async () => {
  metrics = createMetrics();
  metrics.observeWork({
    cardsCompiled: 2,
    running: 1,
    backlog: { waiting: 7, oldestMs: 1500, isFull: false },
    leftOut: [{ task: 'analyze', reason: 'too-old', count: 3 }],
  });
  listener = await listenForMetrics(metrics, { port: 0, host: '127.0.0.1' });
  fake = fakeAnalyzer();
  isStoreAway = false;
  const rooms = memoryStore();
  const store: Store = {
    ...rooms,
    commit: (batch) => (isStoreAway ? Promise.reject(new Error('away')) : rooms.commit(batch)),
  };
  server = await startServer({ seed: 'metrics', metrics, store, analyzer: fake.analyzer });
});
afterEach(async () => {
  await server.stop();
  await listener.close();
});

const at = (path: string) => fetch(`http://127.0.0.1:${listener.port}${path}`);

test('the metrics are off unless a port is named', () => {
  expect(readConfig({})).toMatchObject({ ok: true, config: { metrics: null } });
  expect(readConfig({ METRICS_PORT: '9100' })).toMatchObject({
    ok: true,
    config: { metrics: { port: 9100, host: '127.0.0.1' } },
  });
  expect(readConfig({ METRICS_PORT: '9100', METRICS_HOST: '::' })).toMatchObject({
    ok: true,
    config: { metrics: { port: 9100, host: '::' } },
  });
});

test('the metrics are not at the address of the players', async () => {
  expect((await fetch(`${server.url}/metrics`)).status).toBe(404);
});

test('the metrics count rooms, sockets, requests, work that waits and work that was left out', async () => {
  await tableOfFour(server);
  const response = await at('/metrics');
  expect(response.status).toBe(200);
  const text = await response.text();
  expect(text).toContain('rooms_active 1');
  expect(text).toContain('sockets_open 4');
  expect(text).toContain('http_requests_total{method="POST",route="/api/rooms/:code/seats",status="200"} 3');
  expect(text).toMatch(/^http_request_duration_seconds_count [1-9]/m);
  expect(text).toContain('tasks_waiting 7');
  expect(text).toContain('tasks_oldest_wait_seconds 1.5');
  expect(text).toContain('tasks_left_out_total{task="analyze",reason="too-old"} 3');
});

test('the metrics measure commits and reviews, count failures and rejections, and name nobody and no tile', async () => {
  const { code, peers, guests } = await tableOfFour(server);
  await deal(peers);
  await Promise.all(peers.map((peer) => playOn(peer, 'metrics')));
  await Promise.all(peers.map((peer) => peer.review()));
  server.clock.advance(4000);
  const early = await (await at('/metrics')).text();
  expect(early).not.toContain('until="last-analysis"');
  for (const { answer } of fake.asked) answer(analysisOf(100));
  await peers[0]!.until('the last review', (message) => message.kind === 'review' && message.more === false);
  await post(`${server.url}/api/rooms`, {});
  await post(`${server.url}/api/rooms/${code}/nothing`, { name: 'Zyphrania' });
  await post(`${server.url}/Zyphrania`, {});
  isStoreAway = true;
  expect(await peers[0]!.act({ kind: 'ready', ready: true })).toMatchObject({ code: 'try-later' });
  const text = await (await at('/metrics')).text();
  expect(text).toMatch(/^store_commit_duration_seconds_count [1-9]/m);
  expect(text).toContain('store_failures_total{operation="commit"} 1');
  expect(text).toContain('rejections_total{answer_to="request",code="bad-request"} 1');
  expect(text).toContain('rejections_total{answer_to="frame",code="try-later"} 1');
  expect(text).toContain('review_delay_seconds_sum{until="first-review"} 0');
  expect(text).toContain('review_delay_seconds_count{until="first-review"} 1');
  expect(text).toContain('review_delay_seconds_sum{until="last-analysis"} 4');
  expect(text).toContain('review_delay_seconds_count{until="last-analysis"} 1');
  const secrets = guests.map(({ secret }) => secret);
  expect(['Ines', 'Zyphrania', code, ...secrets].filter((word) => text.includes(word))).toEqual([]);
  expect(FACES.filter((face) => new RegExp(`\\b${face}\\b`).test(text))).toEqual([]);
});

test('the listener of the metrics answers nothing else, and changes nothing', async () => {
  expect((await at('/')).status).toBe(404);
  expect((await at('/metrics/../healthz')).status).toBe(404);
  expect((await fetch(`http://127.0.0.1:${listener.port}/metrics`, { method: 'POST' })).status).toBe(404);
});
