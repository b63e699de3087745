// The server as a process: it starts on a free port, takes a table, and ends cleanly when asked to.
import { readFileSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import { listenProblem, nodeProblem } from '../../server/start-problems.ts';
import { ticketPath } from '../../shared-engine/protocol/paths.ts';
import { roomOpenedSchema, ticketSchema } from '../../shared-engine/protocol/room-http.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
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

test('a server rejects settings it cannot use, by name', async () => {
  const { ended, stderr } = start({ PORT: 'harbour' });
  expect(await ended).toEqual([2, null]);
  expect(stderr()).toContain('PORT');
});

test('a port that is taken is told in one sentence, with the setting that changes it', async () => {
  const port = new URL(await start().url).port;
  const first = server;
  for (const setting of ['PORT', 'METRICS_PORT']) {
    const second = startProcess({ [setting]: port });
    expect(await second.ended).toEqual([1, null]);
    expect(second.stderr()).toBe(`Port ${port} is taken by another program; set ${setting} to a free one.\n`);
  }
  server = first;
});

test('every other reason why it cannot listen is told in one sentence too', () => {
  const failing = (code: string) => Object.assign(new Error('listen'), { code });
  for (const prefix of ['', 'METRICS_'] as const) {
    const told = ['EACCES', 'EADDRNOTAVAIL', 'ENOTFOUND', 'ENFILE'].map((code) =>
      listenProblem(failing(code), prefix, 80),
    );
    const sentence = new RegExp(`^[A-Z].*; set ${prefix}(PORT|HOST) to .*\\.$`);
    for (const one of told) expect(one).toMatch(sentence);
  }
});

test('a Node that is too old is told in one sentence, before anything else is read', () => {
  expect(['20.11.0', '20.12.1', '22.0.0', '100.0.0'].map(nodeProblem)).toEqual([null, null, null, null]);
  for (const version of ['8.0.0', '18.20.4', '20.10.0']) {
    expect(nodeProblem(version)).toBe(
      `Quadrille needs Node 20.11 or newer and this is ${version}; install a newer one.`,
    );
  }
  const main = readFileSync(new URL('../../server/main.ts', import.meta.url), 'utf8');
  expect(/^import .*$/m.exec(main)?.[0]).toBe("import './check-node.ts';");
});

test('main.ts puts real parts behind the ports of the assembly that the tests use, and adds nothing to it', () => {
  const source = readFileSync(new URL('../../server/main.ts', import.meta.url), 'utf8');
  const imported = [...source.matchAll(/^import .* from '(.*)';$/gm)].map(([, from]) => from);
  expect(imported.sort()).toEqual([
    './app.ts',
    './clock.ts',
    './config.ts',
    './http/metrics.ts',
    './http/pages.ts',
    './log.ts',
    './secrets.ts',
    './start-problems.ts',
    './store/storage.ts',
    './workers/workers.ts',
  ]);
  const used = [...source.matchAll(/\bapp\.(\w+)\(/g)].map(([, member]) => member);
  expect(used.sort()).toEqual(['close', 'listen']);
  expect(source.match(/buildApp\(/g)).toHaveLength(1);
});
