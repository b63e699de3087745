// The operator's metrics: counts and times without a name, a code, an address or a tile, on a listener of their own.
import { createServer } from 'node:http';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Measurements, Store } from '../ports.ts';
import type { Backlog } from '../work-ports.ts';

/** Asked whenever somebody reads the metrics. */
export interface MetricSources {
  rooms(): number;
  sockets(): number;
}

/** What the workers have done, and the work that was left out, by kind of task and reason. */
export interface WorkMetricSource {
  readonly cardsCompiled: number;
  readonly running: number;
  readonly backlog: Backlog;
  readonly leftOut: readonly { readonly task: string; readonly reason: string; readonly count: number }[];
}

export interface Metrics extends Measurements {
  observe(sources: MetricSources): void;
  observeWork(source: WorkMetricSource): void;
  /** `route` is the pattern of the path, never the path itself: that holds a room's code. */
  requestFinished(labels: { method: string; route: string; status: number }, ms: number): void;
  /** In the text format of Prometheus. */
  text(): Promise<string>;
}

const SECONDS_BUCKETS = [0.001, 0.005, 0.02, 0.1, 0.5, 2];
/** A commit takes a millisecond or two, and a database is given up after four and a half seconds. */
const COMMIT_BUCKETS = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.2, 1, 5];
/** A first review is there at once; what has waited for ten minutes is left out. */
const REVIEW_BUCKETS = [0.1, 0.5, 1, 2, 5, 10, 30, 60, 180, 600];

export function createMetrics(): Metrics {
  const register = new Registry();
  const registers = [register];
  collectDefaultMetrics({ register });
  const labelNames = ['method', 'route', 'status'] as const;
  const requests = new Counter({
    name: 'http_requests_total',
    help: 'HTTP requests answered.',
    labelNames,
    registers,
  });
  const durations = new Histogram({
    name: 'http_request_duration_seconds',
    help: 'Time from an HTTP request to its answer.',
    buckets: SECONDS_BUCKETS,
    registers,
  });
  return {
    observe({ rooms, sockets }) {
      gauge('rooms_active', 'Rooms at work at this server.', rooms);
      gauge('sockets_open', 'Open sockets.', sockets);
    },
    observeWork(source) {
      const { backlog } = source;
      gauge('tasks_running', 'Tasks that workers do now.', () => source.running);
      gauge(
        'tasks_waiting',
        'Reviews, analyses, cards, drills and bots that wait for a worker.',
        () => backlog.waiting,
      );
      gauge(
        'tasks_oldest_wait_seconds',
        'How long the oldest of them has waited.',
        () => backlog.oldestMs / 1000,
      );
      new Counter({
        name: 'cards_compiled_total',
        help: 'Card files compiled: each once while anybody uses it.',
        registers,
        collect() {
          this.reset();
          this.inc(source.cardsCompiled);
        },
      });
      new Counter({
        name: 'tasks_left_out_total',
        help: 'Tasks that were not done, because the queue was full or too slow, or because they failed.',
        labelNames: ['task', 'reason'],
        registers,
        collect() {
          this.reset();
          for (const { task, reason, count } of source.leftOut) this.inc({ task, reason }, count);
        },
      });
    },
    requestFinished(labels, ms) {
      requests.inc(labels);
      durations.observe(ms / 1000);
    },
    ...measurements(register),
    text: () => register.metrics(),
  };

  function gauge(name: string, help: string, value: () => number): void {
    new Gauge({
      name,
      help,
      registers,
      collect() {
        this.set(value());
      },
    });
  }
}

function measurements(register: Registry): Measurements {
  const registers = [register];
  const rejections = new Counter({
    name: 'rejections_total',
    help: 'Requests and frames that were rejected.',
    labelNames: ['answer_to', 'code'],
    registers,
  });
  const commits = new Histogram({
    name: 'store_commit_duration_seconds',
    help: 'Time that a batch of appends took to be stored.',
    buckets: COMMIT_BUCKETS,
    registers,
  });
  const failures = new Counter({
    name: 'store_failures_total',
    help: 'What the store could not do.',
    labelNames: ['operation'],
    registers,
  });
  const delays = new Histogram({
    name: 'review_delay_seconds',
    help: 'Time from the close of a round to its first reviews, and to the last deep analysis of its choices.',
    labelNames: ['until'],
    buckets: REVIEW_BUCKETS,
    registers,
  });
  return {
    rejected(answerTo, code) {
      rejections.inc({ answer_to: answerTo, code });
    },
    storeAsked(operation: keyof Store) {
      const stored = operation === 'commit' ? commits.startTimer() : null;
      return (outcome) => {
        if (outcome === 'failed') failures.inc({ operation });
        else stored?.();
      };
    },
    reviewed(until, ms) {
      delays.observe({ until }, ms / 1000);
    },
  };
}

export interface MetricsListener {
  readonly port: number;
  close(): Promise<void>;
}

/** Answers `GET /metrics` at this address and nothing else. */
export async function listenForMetrics(
  metrics: Pick<Metrics, 'text'>,
  { port, host }: { readonly port: number; readonly host: string },
): Promise<MetricsListener> {
  const server = createServer((request, response) => {
    if (request.method !== 'GET' || request.url !== '/metrics') {
      response.writeHead(404).end();
      return;
    }
    metrics.text().then(
      (text) => response.writeHead(200, { 'content-type': 'text/plain; version=0.0.4' }).end(text),
      () => response.writeHead(500).end(),
    );
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, resolve);
  });
  const address = server.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : port,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
