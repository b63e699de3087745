// The only reader of the environment: every setting of the server with its default and its bounds.
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import { meantSetting } from './misspelled-setting.ts';
import type { StorageChoice } from './store/storage.ts';

const schema = z.object({
  /** The port to listen on; 0 for any free one. */
  PORT: z.coerce.number().int().min(0).max(65535).default(8080),
  /** The address to listen on; the default is every address of the machine. */
  HOST: z.string().default('0.0.0.0'),
  LOG_LEVEL: z.enum(['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent']).default('info'),
  /** Where rooms are stored; `memory` only as long as the process lives. Postgres where DATABASE_URL is set, else SQLite. */
  STORE: z.enum(['sqlite', 'postgres', 'memory']).optional(),
  /** Folder of the SQLite file with all rooms; created where there is none. */
  DATA_DIR: z.string().default('./data'),
  /** The PostgreSQL database with all rooms; several servers may share it. */
  DATABASE_URL: z
    .string()
    .regex(/^postgres(ql)?:\/\//, 'must begin with postgres://')
    .optional(),
  /** Pages of these origins may call the server besides its own, separated by commas. */
  ALLOWED_ORIGINS: z
    .string()
    .default('')
    .transform((text) =>
      text
        .split(',')
        .map((origin) => origin.trim().replace(/\/$/, ''))
        .filter((origin) => origin !== ''),
    ),
  /**
   * The address under which phones reach the server, as in https://club.example: square codes and links of a class have it
   * whatever address its teacher's page was opened with.
   */
  PUBLIC_ADDRESS: z
    .string()
    .optional()
    .transform((text, context) => {
      if (text === undefined) return null;
      const origin = URL.canParse(text) ? new URL(text) : null;
      const isAlone = origin !== null && /^(\/)?$/.test(origin.pathname + origin.search + origin.hash);
      if (isAlone && /^https?:$/.test(origin.protocol)) return origin.origin;
      context.addIssue('must be an address such as https://club.example, without a path');
      return z.NEVER;
    }),
  /**
   * How long a browser that came over TLS is told to come over TLS alone, in days; 0 says nothing. Nothing is ever said
   * over plain HTTP, where it would lock a table in a home network out of later visits.
   */
  HSTS_DAYS: z.coerce.number().int().min(0).max(730).default(0),
  /** Proxies before the server whose X-Forwarded-For is believed. */
  TRUST_PROXY_HOPS: z.coerce.number().int().min(0).max(10).default(0),
  /**
   * Requests a minute from one address, which is an IPv4 address or a /64 of IPv6; 0 for no limit. Files of the page do
   * not count. Set for a club evening, 60 people behind one router in one minute: coming in takes each of them 6
   * requests (class or table, seat, ticket, card, socket, and the table once more), a reload 5, and they reload 3
   * times: 60 × 21 = 1,260. A teacher's two pages ask again after every change, at 5 changes for each of the 60 in that
   * minute: 2 × 300 = 600. Twice the sum of 1,860, rounded.
   */
  REQUESTS_PER_MINUTE: z.coerce.number().int().min(0).default(3600),
  /**
   * Rooms opened a minute from one address; one with a card of its own and a class count as ten. 0 for no limit. 60
   * people who each open a table, and open another because the first was a mistake. Twice as many may have nobody at them: two
   * such evenings may follow each other within the minutes after which empty rooms are given back.
   */
  ROOMS_PER_MINUTE: z.coerce.number().int().min(0).default(120),
  /** Rooms and classes in memory at once. */
  MAX_ROOMS: z.coerce.number().int().min(1).default(5000),
  MAX_SOCKETS: z.coerce.number().int().min(1).default(10_000),
  /**
   * Sockets from one address; 0 for no limit. 60 people with a page each, the socket of the page before it that a weak
   * line has not ended yet, and half of them a second device with the same: 60 × 2 + 30 × 2 = 180, and room for as
   * many spectators as one table takes, and for half as many people more.
   */
  SOCKETS_PER_IP: z.coerce.number().int().min(0).default(300),
  /** Frames a second from one socket in the long run; twice as many may come at once. */
  MESSAGES_PER_SECOND: z.coerce.number().int().min(1).default(20),
  /** Port of the metrics, on a listener of their own; 0 for none. */
  METRICS_PORT: z.coerce.number().int().min(0).max(65535).default(0),
  /** The address that the metrics listen on; whoever reaches it may read them. */
  METRICS_HOST: z.string().default('127.0.0.1'),
  /** Pause of a bot before it chooses, in milliseconds. */
  BOT_DELAY_MS: z.coerce.number().int().min(0).max(60_000).default(900),
  /** How long a bot that somebody brings may take for a choice before a stand-in chooses, in milliseconds. */
  EXTERNAL_BOT_MS: z.coerce.number().int().min(100).max(300_000).default(10_000),
  /** How long a person may be disconnected before a bot chooses for the sake of those who wait, in milliseconds. */
  DISCONNECT_GRACE_MS: z.coerce.number().int().min(0).default(60_000),
  /** How long a person may be disconnected before the next deal no longer waits for them, in milliseconds. */
  NEXT_DEAL_GRACE_MS: z.coerce.number().int().min(0).default(10_000),
  /** How long a room with nobody in it stays in memory, in milliseconds. */
  ROOM_UNLOAD_MS: z.coerce
    .number()
    .int()
    .min(1000)
    .default(5 * 60 * 1000),
  /** How long a room is stored after its last event, in days. */
  RETENTION_DAYS: z.coerce.number().int().min(1).default(30),
  /** How long a class and its tables are stored after their last event, in days: a group that meets once a month goes on. */
  CLASS_RETENTION_DAYS: z.coerce.number().int().min(1).default(400),
  /** Megabytes of all rooms' events; beyond them the rooms untouched longest are removed. 0 for no limit. */
  RETENTION_MB: z.coerce.number().int().min(0).default(4096),
  /** Threads for deep analyses; 0 analyzes between requests. The default leaves one core free. */
  REVIEW_WORKERS: z.coerce
    .number()
    .int()
    .min(0)
    .max(64)
    .default(Math.max(1, availableParallelism() - 1)),
  /** How closely choices are analyzed: first answers alone, a few hundred sampled deals, or as many as it takes. */
  REVIEW_DEPTH: z.enum(['quick', 'shallow', 'deep']).default('deep'),
  /** With more choices than this waiting for each of those threads, they are analyzed less closely. */
  REVIEW_MAX_QUEUE: z.coerce.number().int().min(0).default(24),
});

/** The names of all settings. */
export const SETTINGS: readonly string[] = Object.keys(schema.shape);

const DAY_MS = 24 * 60 * 60 * 1000;
const MB = 1024 * 1024;

type Environment = z.infer<typeof schema>;

/** How long the server waits for whom and what, in milliseconds. */
export interface Timing {
  readonly botDelay: number;
  readonly externalBot: number;
  readonly disconnectGrace: number;
  readonly nextDealGrace: number;
  readonly roomUnload: number;
  readonly retention: number;
  readonly classRetention: number;
}

export interface Config {
  readonly port: number;
  readonly host: string;
  /** Null for no metrics. */
  readonly metrics: { readonly port: number; readonly host: string } | null;
  readonly logLevel: Environment['LOG_LEVEL'];
  readonly storage: StorageChoice;
  readonly allowedOrigins: readonly string[];
  /** Null where pages go by the address that they were opened with. */
  readonly publicAddress: string | null;
  readonly trustedProxyHops: number;
  readonly hstsDays: number;
  readonly limits: {
    readonly requestsPerMinute: number;
    readonly roomsPerMinute: number;
    readonly rooms: number;
    /** Rooms with nobody at them that one address has opened; 0 for no limit. */
    readonly emptyRoomsPerIp: number;
    /** All that is stored together; infinite for no limit. */
    readonly storedBytes: number;
    readonly sockets: number;
    readonly socketsPerIp: number;
    readonly messagesPerSecond: number;
  };
  readonly timing: Timing;
  readonly review: ReviewSettings;
}

export interface ReviewSettings {
  readonly workers: number;
  readonly depth: Environment['REVIEW_DEPTH'];
  readonly maxQueue: number;
}

export type ConfigResult =
  | { readonly ok: true; readonly config: Config }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Reads the settings; an empty variable counts as not set. */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): ConfigResult {
  const set = Object.entries(environment).filter(([, value]) => value !== undefined && value !== '');
  const problems = set.flatMap(([name]) => {
    const meant = meantSetting(name, SETTINGS);
    return meant === null ? [] : [`${name}: is no setting; write ${meant}`];
  });
  const parsed = schema.safeParse(Object.fromEntries(set));
  if (!parsed.success) {
    for (const { path: name, code, message } of parsed.error.issues) {
      // Every setting is a text at first, so the wrong type is always a number that is none.
      problems.push(`${name.join('.')}: ${code === 'invalid_type' ? 'must be a number' : message}`);
    }
  } else if (parsed.data.STORE === 'postgres' && parsed.data.DATABASE_URL === undefined) {
    problems.push('DATABASE_URL: must be set where STORE is postgres');
  }
  if (!parsed.success || problems.length > 0) return { ok: false, problems };
  return { ok: true, config: configFrom(parsed.data) };
}

function configFrom(e: Environment): Config {
  return {
    port: e.PORT,
    host: e.HOST,
    metrics: e.METRICS_PORT === 0 ? null : { port: e.METRICS_PORT, host: e.METRICS_HOST },
    logLevel: e.LOG_LEVEL,
    storage: storageOf(e),
    allowedOrigins: e.ALLOWED_ORIGINS,
    publicAddress: e.PUBLIC_ADDRESS,
    trustedProxyHops: e.TRUST_PROXY_HOPS,
    hstsDays: e.HSTS_DAYS,
    limits: {
      requestsPerMinute: e.REQUESTS_PER_MINUTE,
      roomsPerMinute: e.ROOMS_PER_MINUTE,
      rooms: e.MAX_ROOMS,
      emptyRoomsPerIp: 2 * e.ROOMS_PER_MINUTE,
      storedBytes: e.RETENTION_MB === 0 ? Number.POSITIVE_INFINITY : e.RETENTION_MB * MB,
      sockets: e.MAX_SOCKETS,
      socketsPerIp: e.SOCKETS_PER_IP,
      messagesPerSecond: e.MESSAGES_PER_SECOND,
    },
    timing: {
      botDelay: e.BOT_DELAY_MS,
      externalBot: e.EXTERNAL_BOT_MS,
      disconnectGrace: e.DISCONNECT_GRACE_MS,
      nextDealGrace: e.NEXT_DEAL_GRACE_MS,
      roomUnload: e.ROOM_UNLOAD_MS,
      retention: e.RETENTION_DAYS * DAY_MS,
      classRetention: e.CLASS_RETENTION_DAYS * DAY_MS,
    },
    review: { workers: e.REVIEW_WORKERS, depth: e.REVIEW_DEPTH, maxQueue: e.REVIEW_MAX_QUEUE },
  };
}

function storageOf({ STORE, DATA_DIR, DATABASE_URL }: Environment): StorageChoice {
  if (STORE === 'memory') return { kind: 'memory' };
  if (STORE !== 'sqlite' && DATABASE_URL !== undefined) return { kind: 'postgres', url: DATABASE_URL };
  return { kind: 'sqlite', location: path.join(DATA_DIR, 'quadrille.db') };
}
