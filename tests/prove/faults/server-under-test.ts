// A server process that can be killed, stopped or paused and started again on the same port with the same rooms.
import { spawnSync } from 'node:child_process';
import { BUILT_MAIN, type ServerProcess, startProcess } from '../../kit/server-process.ts';
import { freePort } from '../../kit/temporary.ts';
import type { Size } from '../proof.ts';
import { builtServer } from './built-server.ts';

export interface ServerUnderTest {
  readonly url: string;
  readonly pid: () => number;
  /** Resolves when it listens; `more` are settings of this start alone. */
  start(more?: Readonly<Record<string, string>>): Promise<void>;
  /** Whether the process that was started last still runs. */
  isRunning(): boolean;
  /** Resolves with its exit code when it has ended. */
  end(signal: 'SIGKILL' | 'SIGTERM'): Promise<number | null>;
  signal(signal: 'SIGSTOP' | 'SIGCONT'): void;
}

/** How long somebody may be away before a bot chooses. */
export const ABSENT_MS = 4000;

/** Nothing is limited, bots are quick, reviews shallow: what is tested here is something else. */
const SETTINGS = {
  LOG_LEVEL: 'info',
  STORE: '',
  BOT_DELAY_MS: '30',
  DISCONNECT_GRACE_MS: String(ABSENT_MS),
  NEXT_DEAL_GRACE_MS: '1000',
  REQUESTS_PER_MINUTE: '0',
  SOCKETS_PER_IP: '0',
  ROOMS_PER_MINUTE: '0',
  REVIEW_DEPTH: 'quick',
  REVIEW_WORKERS: '0',
} as const;

/** Killed when the proof ends, whatever happens. */
const started = new Set<ServerProcess>();
process.once('exit', () => {
  for (const { child } of started) child.kill('SIGKILL');
});

/** Run as it is built, from a copy where the proof takes so long that somebody may build again; `preload` is a module that runs before it. */
export async function serverUnderTest(
  environment: Readonly<Record<string, string>>,
  size: Size,
  preload: string | null = null,
): Promise<ServerUnderTest> {
  const port = await freePort();
  const first = preload === null ? [] : ['--import', preload];
  const program = [...first, size === 'full' ? builtServer() : BUILT_MAIN];
  const running: { now: ServerProcess | null } = { now: null };
  return {
    url: `http://127.0.0.1:${port}`,
    pid: () => running.now?.child.pid ?? 0,
    isRunning: () => running.now?.child.exitCode === null && running.now.child.signalCode === null,
    async start(more = {}) {
      running.now = startProcess({ ...SETTINGS, PORT: String(port), ...environment, ...more }, program);
      started.add(running.now);
      await running.now.url;
    },
    async end(signal) {
      const ended = running.now;
      running.now = null;
      if (ended === null) return null;
      started.delete(ended);
      ended.child.kill(signal);
      const [code] = await ended.ended;
      return typeof code === 'number' ? code : null;
    },
    signal(signal) {
      running.now?.child.kill(signal);
    },
  };
}

/** Lets a running server write no file beyond this many bytes, as a full disk does; null lifts the limit. */
export function limitFileSize(house: ServerUnderTest, bytes: number | null): boolean {
  const limit = bytes === null ? 'unlimited' : `${bytes}:unlimited`;
  return spawnSync('prlimit', [`--pid=${house.pid()}`, `--fsize=${limit}`]).status === 0;
}

export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
