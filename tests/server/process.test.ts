// The server as a process: it starts on a free port, takes a table, and ends cleanly when asked to.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { afterEach, expect, test } from 'vitest';
import { CLOSE, roomOpenedSchema, ticketPath, ticketSchema } from '../../shared-engine/index.ts';
import { FRIENDS, post } from '../kit/guests.ts';
import { Peer } from '../kit/sockets.ts';

let child: ChildProcess | null = null;
afterEach(() => {
  child?.kill('SIGKILL');
  child = null;
});

function start(environment: Readonly<Record<string, string>>): ChildProcess {
  child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    env: { ...process.env, HOST: '127.0.0.1', PORT: '0', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return child;
}

async function listening(server: ChildProcess): Promise<string> {
  for await (const line of createInterface({ input: server.stdout! })) {
    const url = /http:\/\/127\.0\.0\.1:\d+/.exec(line)?.[0];
    if (url) return url;
  }
  throw new Error('the server ended without listening');
}

test.each(['SIGTERM', 'SIGINT'] as const)(
  'ends with code 0 on %s and tells its sockets that it restarts',
  async (signal) => {
    const server = start({});
    const url = await listening(server);
    const opened = await post(`${url}/api/rooms`, FRIENDS);
    const { code } = roomOpenedSchema.parse(await opened.json());
    const { ticket } = ticketSchema.parse(await (await post(`${url}${ticketPath(code)}`, {})).json());
    const peer = await Peer.enter(url, ticket);
    const silent = await Peer.open(url);
    const exit = once(server, 'exit');
    server.kill(signal);
    expect(await peer.ended).toBe(CLOSE.restarting);
    expect(await silent.ended).toBe(CLOSE.restarting);
    expect(await exit).toEqual([0, null]);
  },
);

test('refuses settings it cannot use, by name', async () => {
  const server = start({ PORT: 'harbour' });
  const chunks: Buffer[] = [];
  server.stderr!.on('data', (chunk: Buffer) => chunks.push(chunk));
  expect(await once(server, 'exit')).toEqual([2, null]);
  expect(Buffer.concat(chunks).toString()).toContain('PORT');
});
