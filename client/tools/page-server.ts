// The built server as a process of its own on a free loopback port, as players get it.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { requireBuiltPage } from './built-page.ts';

const MAIN = path.resolve(import.meta.dirname, '../../dist/server/main.js');

export interface PageServer {
  /** `http://127.0.0.1:PORT`, without a slash at the end. */
  readonly origin: string;
  /** Ends the process and deletes what it stored. */
  stop(): Promise<void>;
}

/** Bots that answer at once and no limits on one address, which all players of a test share. */
const SETTINGS = {
  HOST: '127.0.0.1',
  LOG_LEVEL: 'info',
  BOT_DELAY_MS: '0',
  REQUESTS_PER_MINUTE: '0',
  SOCKETS_PER_IP: '0',
  ROOMS_PER_MINUTE: '0',
};

export async function startPageServer(settings: Readonly<Record<string, string>> = {}): Promise<PageServer> {
  if (!existsSync(MAIN)) throw new Error('There is no built server; run `npm run build` first.');
  requireBuiltPage();
  // What the server stores beside itself belongs to this test alone.
  const folder = mkdtempSync(path.join(tmpdir(), 'quadrille-'));
  const server = spawn(process.execPath, [MAIN], {
    cwd: folder,
    env: { ...process.env, ...SETTINGS, PORT: '0', ...settings },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const exited = once(server, 'exit');
  for await (const line of createInterface({ input: server.stdout })) {
    const port = /listening at http:\/\/127\.0\.0\.1:(\d+)/.exec(line)?.[1];
    if (!port) continue;
    // Left unread, a full pipe would stop the server.
    server.stdout.resume();
    return {
      origin: `http://127.0.0.1:${port}`,
      async stop() {
        server.kill('SIGTERM');
        await exited;
        rmSync(folder, { recursive: true, force: true });
      },
    };
  }
  throw new Error('The server ended before it listened; its messages are above.');
}
