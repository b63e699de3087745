// The server as a process of its own, run as it is built, on a free port of the loopback.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import path from 'node:path';
import { createInterface } from 'node:readline';

export interface ServerProcess {
  readonly child: ChildProcess;
  /** Where it listens; rejects with what it said when it ended without. */
  readonly url: Promise<string>;
  /** All it wrote to standard error so far. */
  readonly stderr: () => string;
  /** Its exit code and the signal that ended it. */
  readonly ended: Promise<unknown[]>;
}

/** Where the build puts what `npm start` runs; `vitest.config.ts` and the scripts of `package.json` bring it up to date. */
export const BUILT_MAIN = path.resolve(import.meta.dirname, '../../dist/server/main.js');

/** The built file of a command: `backup`, `copy-store`, `round`, `verify-deal`. */
export function builtCommand(name: string): string {
  return path.join(BUILT_MAIN, '../cli', `${name}.js`);
}

/** Stores its rooms in memory unless `environment` says otherwise. */
export function startProcess(
  environment: Readonly<Record<string, string>> = {},
  program: readonly string[] = [BUILT_MAIN],
  node = process.execPath,
): ServerProcess {
  const child = spawn(node, program, {
    env: { ...process.env, HOST: '127.0.0.1', PORT: '0', STORE: 'memory', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const chunks: Buffer[] = [];
  child.stderr.on('data', (chunk: Buffer) => chunks.push(chunk));
  const stderr = () => Buffer.concat(chunks).toString();
  const url = listening();
  // Whoever waits for the end alone need not hear that it never listened.
  url.catch(() => {});
  return { child, url, stderr, ended: once(child, 'close') };

  async function listening(): Promise<string> {
    for await (const line of createInterface({ input: child.stdout })) {
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(line)?.[0];
      if (found === undefined) continue;
      // Left unread, a full pipe would stop the server.
      child.stdout.resume();
      return found;
    }
    throw new Error(`the server ended without listening: ${stderr()}`);
  }
}
