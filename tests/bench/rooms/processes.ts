// The processes of the load benchmark: a server on one core, the driver on the other, both ended with the bench.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import type { Reply, Request } from './driver.ts';

const TASKSET = '/usr/bin/taskset';
export const SERVER_CORE = 0;
export const DRIVER_CORE = 1;

export interface ServerUnderLoad {
  readonly url: string;
  /** Milliseconds of processor time used so far, by all its threads. */
  cpu(): number;
  /** Writes a line to its standard input and answers the next line it writes. */
  ask(line: string): Promise<string>;
  /** Drops whatever it writes from now on: a pipe that nobody reads would stop it. */
  dropLines(): void;
  /** Kills it, as a power cut would. */
  kill(): Promise<void>;
}

/** Starts `node ARGS` on the server's core; it says where it listens in its first line with an address. */
export async function startServer(
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
  core = SERVER_CORE,
): Promise<ServerUnderLoad> {
  const { child, nextLine, dropLines, kill } = start(core, args, environment);
  for (;;) {
    const url = /http:\/\/127\.0\.0\.1:\d+/.exec(await nextLine())?.[0];
    if (url === undefined) continue;
    return {
      url,
      kill,
      cpu: () => cpuOf(child.pid!),
      dropLines,
      ask(line) {
        child.stdin.write(`${line}\n`);
        return nextLine();
      },
    };
  }
}

export interface Driver {
  ask(request: Request): Promise<Reply>;
  kill(): Promise<void>;
}

export function startDriver(): Driver {
  const script = new URL('driver.ts', import.meta.url).pathname;
  const { child, nextLine, kill } = start(DRIVER_CORE, ['--import', 'tsx', script]);
  return {
    kill,
    async ask(request) {
      child.stdin.write(`${JSON.stringify(request)}\n`);
      const reply: Reply = JSON.parse(await nextLine());
      return reply;
    },
  };
}

const running = new Set<ChildProcess>();
// A benchmark that is interrupted leaves no process behind.
process.once('exit', () => {
  for (const child of running) child.kill('SIGKILL');
});

function start(core: number, args: readonly string[], environment: Readonly<Record<string, string>> = {}) {
  const command = [process.execPath, ...args];
  const pinned = existsSync(TASKSET) ? [TASKSET, '-c', `${core}`, ...command] : command;
  const child = spawn(pinned[0]!, pinned.slice(1), {
    env: { ...process.env, ...environment },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const reader = createInterface({ input: child.stdout });
  const lines = reader[Symbol.asyncIterator]();
  const exit = once(child, 'exit');
  running.add(child);
  return {
    child,
    async nextLine() {
      const { value, done } = await lines.next();
      if (done) throw new Error('A process of the benchmark ended early.');
      return value;
    },
    dropLines() {
      reader.close();
      child.stdout.resume();
    },
    async kill() {
      running.delete(child);
      child.kill('SIGKILL');
      await exit;
    },
  };
}

/** From the kernel's own account of the process, in clock ticks of 10 ms. */
export function cpuOf(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
  return (Number(fields[11]) + Number(fields[12])) * 10;
}
