// The only reader of the environment: every setting of the server with its default and its bounds.
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import type { BackingChoice } from './store/backing.ts';

const schema = z.object({
  PORT: z.coerce.number().int().min(0).max(65535).default(8080),
  /** The address to listen on; the default is every address of the machine. */
  HOST: z.string().default('0.0.0.0'),
  LOG_LEVEL: z.enum(['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent']).default('info'),
  /** `memory` keeps rooms only as long as the process lives. */
  STORE: z.enum(['durable', 'memory']).default('durable'),
  /** Folder of the SQLite file with all rooms; created where there is none. */
  DATA_DIR: z.string().default('./data'),
  /** A PostgreSQL database for the rooms instead of the file; several servers may share it. */
  DATABASE_URL: z
    .string()
    .regex(/^postgres(ql)?:\/\//, 'must begin with postgres://')
    .optional(),
  /** Pages of these origins may call the server besides its own, separated by commas. */
  PUBLIC_ORIGIN: z
    .string()
    .default('')
    .transform((text) =>
      text
        .split(',')
        .map((origin) => origin.trim().replace(/\/$/, ''))
        .filter((origin) => origin !== ''),
    ),
  /** Proxies before the server whose X-Forwarded-For is believed. */
  TRUST_PROXY_HOPS: z.coerce.number().int().min(0).max(10).default(0),
  /** Requests a minute from one address; 0 for no limit. */
  REQUESTS_PER_MINUTE: z.coerce.number().int().min(0).default(600),
  /** Rooms opened a minute from one address; 0 for no limit. */
  ROOMS_PER_MINUTE: z.coerce.number().int().min(0).default(60),
  MAX_ROOMS: z.coerce.number().int().min(1).default(5000),
  MAX_SOCKETS: z.coerce.number().int().min(1).default(10_000),
  /** Sockets from one address; a class behind one router counts as one. 0 for no limit. */
  SOCKETS_PER_ADDRESS: z.coerce.number().int().min(0).default(200),
  /** Frames a second from one socket in the long run; twice as many may come at once. */
  MESSAGES_PER_SECOND: z.coerce.number().int().min(1).default(20),
  /** Figures for the operator, on a listener of their own that the loopback alone reaches; 0 for none. */
  METRICS_PORT: z.coerce.number().int().min(0).max(65535).default(0),
  /** Pause of a bot before it chooses, in milliseconds. */
  THINK_MS: z.coerce.number().int().min(0).max(60_000).default(900),
  /** How long a person may be gone before the stand-in chooses for those who wait, in milliseconds. */
  AWAY_MS: z.coerce.number().int().min(0).default(60_000),
  /** How long a person may be gone before the next deal no longer waits for them, in milliseconds. */
  DEAL_WAIT_MS: z.coerce.number().int().min(0).default(10_000),
  /** How long a room with nobody in it is held in memory, in milliseconds. */
  IDLE_MS: z.coerce
    .number()
    .int()
    .min(1000)
    .default(6 * 60 * 60 * 1000),
  /** How long a room is kept after its last event, in days. */
  KEEP_DAYS: z.coerce.number().int().min(1).default(30),
  /** Threads that look at choices more closely; 0 does it between requests. The default leaves one core free. */
  REVIEW_WORKERS: z.coerce
    .number()
    .int()
    .min(0)
    .max(64)
    .default(Math.max(1, availableParallelism() - 1)),
  /** How closely choices are looked at: a first answer alone, in some worlds, or in as many as it takes. */
  REVIEW_DEPTH: z.enum(['quick', 'shallow', 'deep']).default('deep'),
  /** Choices waiting for each of those threads from which on they are looked at less closely. */
  REVIEW_QUEUE: z.coerce.number().int().min(0).default(24),
});

const DAY_MS = 24 * 60 * 60 * 1000;

type Environment = z.infer<typeof schema>;

/** How long the table waits for whom, in milliseconds. */
export interface Pace {
  readonly think: number;
  readonly away: number;
  readonly dealWait: number;
  readonly idle: number;
  readonly keep: number;
}

export interface Config {
  readonly port: number;
  readonly host: string;
  /** Null where nobody asks for figures. */
  readonly metricsPort: number | null;
  readonly logLevel: Environment['LOG_LEVEL'];
  readonly backing: BackingChoice;
  readonly origins: readonly string[];
  readonly proxyHops: number;
  readonly limits: {
    readonly requestsPerMinute: number;
    readonly roomsPerMinute: number;
    readonly rooms: number;
    readonly sockets: number;
    readonly socketsPerAddress: number;
    readonly messagesPerSecond: number;
  };
  readonly pace: Pace;
  readonly review: ReviewSettings;
}

export interface ReviewSettings {
  readonly workers: number;
  readonly depth: Environment['REVIEW_DEPTH'];
  readonly queue: number;
}

export type ConfigResult =
  | { readonly ok: true; readonly config: Config }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Reads the settings; an empty variable counts as not set. */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): ConfigResult {
  const set = Object.entries(environment).filter(([, value]) => value !== undefined && value !== '');
  const parsed = schema.safeParse(Object.fromEntries(set));
  if (!parsed.success) {
    const problems = parsed.error.issues.map(({ path: name, code, message }) => {
      // Every setting is a text at first, so the wrong type is always a number that is none.
      return `${name.join('.')}: ${code === 'invalid_type' ? 'must be a number' : message}`;
    });
    return { ok: false, problems };
  }
  const e = parsed.data;
  return {
    ok: true,
    config: {
      port: e.PORT,
      host: e.HOST,
      metricsPort: e.METRICS_PORT === 0 ? null : e.METRICS_PORT,
      logLevel: e.LOG_LEVEL,
      backing: backingOf(e),
      origins: e.PUBLIC_ORIGIN,
      proxyHops: e.TRUST_PROXY_HOPS,
      limits: {
        requestsPerMinute: e.REQUESTS_PER_MINUTE,
        roomsPerMinute: e.ROOMS_PER_MINUTE,
        rooms: e.MAX_ROOMS,
        sockets: e.MAX_SOCKETS,
        socketsPerAddress: e.SOCKETS_PER_ADDRESS,
        messagesPerSecond: e.MESSAGES_PER_SECOND,
      },
      pace: {
        think: e.THINK_MS,
        away: e.AWAY_MS,
        dealWait: e.DEAL_WAIT_MS,
        idle: e.IDLE_MS,
        keep: e.KEEP_DAYS * DAY_MS,
      },
      review: { workers: e.REVIEW_WORKERS, depth: e.REVIEW_DEPTH, queue: e.REVIEW_QUEUE },
    },
  };
}

function backingOf({ STORE, DATA_DIR, DATABASE_URL }: Environment): BackingChoice {
  if (STORE === 'memory') return { kind: 'memory' };
  if (DATABASE_URL !== undefined) return { kind: 'postgres', url: DATABASE_URL };
  return { kind: 'sqlite', location: path.join(DATA_DIR, 'quadrille.db') };
}
