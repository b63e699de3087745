// The operator's figures: counts and times without a name, a code, an address or a tile, on a listener of their own.
import { createServer } from 'node:http';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';

/** Asked whenever somebody looks. */
interface Sources {
  rooms(): number;
  sockets(): number;
}

export interface Figures {
  observe(sources: Sources): void;
  /** `route` is the pattern of the path, never the path itself: that holds a room's code. */
  answered(method: string, route: string, status: number, ms: number): void;
  /** In the text format of Prometheus. */
  text(): Promise<string>;
}

export function createFigures(): Figures {
  const register = new Registry();
  const registers = [register];
  collectDefaultMetrics({ register });
  const labelNames = ['method', 'route', 'status'] as const;
  const answers = new Counter({ name: 'http_answers_total', help: 'HTTP answers.', labelNames, registers });
  const times = new Histogram({
    name: 'http_answer_milliseconds',
    help: 'Time to an HTTP answer.',
    buckets: [1, 5, 20, 100, 500, 2000],
    registers,
  });
  return {
    observe({ rooms, sockets }) {
      gauge('rooms_in_hand', 'Rooms at work at this server.', rooms);
      gauge('sockets_open', 'Open sockets.', sockets);
    },
    answered(method, route, status, ms) {
      answers.inc({ method, route, status });
      times.observe(ms);
    },
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

export interface FiguresListener {
  readonly port: number;
  close(): Promise<void>;
}

/** Answers `GET /metrics` on the loopback and nothing else. */
export async function listenForFigures(figures: Figures, port: number): Promise<FiguresListener> {
  const server = createServer((request, response) => {
    if (request.method !== 'GET' || request.url !== '/metrics') {
      response.writeHead(404).end();
      return;
    }
    figures.text().then(
      (text) => response.writeHead(200, { 'content-type': 'text/plain; version=0.0.4' }).end(text),
      () => response.writeHead(500).end(),
    );
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const address = server.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : port,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
