// The two example bots, as they are given away, at one table of the built server for a round.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { botLink, tablePath } from '../../shared-engine/protocol/paths.ts';
import { deal, inviteBot, openRoom, ownView, playOn, ticketFor } from '../kit/http-client.ts';
import { pythonWithWebsockets } from '../kit/python.ts';
import { BUILT_MAIN, type ServerProcess, startProcess } from '../kit/server-process.ts';
import { Peer } from '../kit/sockets.ts';

const FOLDER = path.resolve(import.meta.dirname, '../../server/examples');
const BUILT_BOT = path.join(BUILT_MAIN, '../examples/bot.mjs');
const python = pythonWithWebsockets();
if (!python.ok) console.warn(`The example in Python does not play: ${python.why}`);

let server: ServerProcess;
const bots: { readonly child: ChildProcess; readonly said: Buffer[] }[] = [];
beforeAll(() => {
  server = startProcess({ BOT_DELAY_MS: '0', REVIEW_DEPTH: 'quick', EXTERNAL_BOT_MS: '60000' });
});
afterAll(async () => {
  for (const { child } of bots) child.kill('SIGKILL');
  server.child.kill('SIGKILL');
  await server.ended;
});

function start(program: string, args: readonly string[]) {
  const child = spawn(program, args, { stdio: ['ignore', 'ignore', 'pipe'] });
  const bot = { child, said: [] as Buffer[], ended: once(child, 'close') };
  child.stderr.on('data', (chunk: Buffer) => bot.said.push(chunk));
  bots.push(bot);
  return bot;
}

test('each example is at most 80 lines and imports nothing of this project', () => {
  for (const file of ['bot.mts', 'bot.py']) {
    const text = readFileSync(path.join(FOLDER, file), 'utf8');
    expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(80);
    expect(text).not.toMatch(/from ['"]\.|import ['"]\./);
  }
});

test('both example bots wait for the end of a round, take their seats by a link, choose for themselves at every step, and end after the next round', async () => {
  const url = await server.url;
  const opened = await openRoom({ url });
  const { ticket, secret = '' } = await ticketFor({ url }, opened);
  const host = await Peer.enter(url, ticket);
  const linkFor = async (seat: 1 | 2) =>
    botLink(`${url}${tablePath(opened.code)}`, await inviteBot({ url }, { ...opened, secret }, seat));
  const links = [await linkFor(1), await linkFor(2)] as const;
  await deal([host]);
  const playing = [start(process.execPath, [BUILT_BOT, links[0], '2'])];
  if (python.ok) playing.push(start(python.python, [path.join(FOLDER, 'bot.py'), links[1], '2']));
  await Promise.all(playing.map(({ child }) => once(child.stderr, 'data')));
  await playOn(host, 'before the example bots');
  const isHere = (seat: 1 | 2) => {
    const info = host.table.seats[seat];
    return info.kind === 'bot' && info.external?.present === true;
  };
  await host.untilTable(() => isHere(1) && isHere(2) === python.ok, 'the bots');
  await deal([host]);
  await playOn(host, 'with example bots');
  const { steps } = ownView(host).record;
  expect(steps.length).toBeGreaterThan(3);
  for (const { by } of steps) for (const seat of [1, 2]) expect([null, 'bot']).toContain(by[seat]);
  for (const { ended, said } of playing) {
    expect(await ended).toEqual([0, null]);
    expect(Buffer.concat(said).toString()).toMatch(/^([^\n]*A round is being played[^\n]*\n)+$/);
  }
});
