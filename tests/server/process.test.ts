// The server as a process: it starts on a free port, takes a table, and ends cleanly when asked to.
import { afterEach, expect, test } from 'vitest';
import { CLOSE, roomOpenedSchema, ticketPath, ticketSchema } from '../../shared-engine/index.ts';
import { FRIENDS, post } from '../kit/http-client.ts';
import { type ServerProcess, startProcess } from '../kit/server-process.ts';
import { Peer } from '../kit/sockets.ts';

let server: ServerProcess | null = null;
afterEach(() => {
  server?.child.kill('SIGKILL');
  server = null;
});

function start(environment: Readonly<Record<string, string>> = {}): ServerProcess {
  server = startProcess(environment);
  return server;
}

test.each(['SIGTERM', 'SIGINT'] as const)(
  'ends with code 0 on %s and tells its sockets that it restarts',
  async (signal) => {
    const { child, url: listening, ended } = start();
    const url = await listening;
    const opened = await post(`${url}/api/rooms`, FRIENDS);
    const { code } = roomOpenedSchema.parse(await opened.json());
    const { ticket } = ticketSchema.parse(await (await post(`${url}${ticketPath(code)}`, {})).json());
    const peer = await Peer.enter(url, ticket);
    const silent = await Peer.open(url);
    child.kill(signal);
    expect(await peer.ended).toBe(CLOSE.restarting);
    expect(await silent.ended).toBe(CLOSE.restarting);
    expect(await ended).toEqual([0, null]);
  },
);

test('refuses settings it cannot use, by name', async () => {
  const { ended, complaints } = start({ PORT: 'harbour' });
  expect(await ended).toEqual([2, null]);
  expect(complaints()).toContain('PORT');
});
