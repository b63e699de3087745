// The server is killed in the middle of a round: the page waits, finds it again, and the round goes on.
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { browserSuite } from '../kit/browser-suite.ts';
import { temporaryFolder } from '../kit/folder.ts';
import { dealAlone, nextHeading, passThree, playToClose, tileLabels, titleOf } from '../kit/player.ts';
import { type ServerProcess, startProcess } from '../kit/server-process.ts';

const suite = browserSuite();

let place: Awaited<ReturnType<typeof temporaryFolder>>;
const running = new Set<ServerProcess>();
beforeEach(async () => {
  place = await temporaryFolder();
});
afterEach(async () => {
  for (const { child } of running) child.kill('SIGKILL');
  await Promise.all([...running].map(({ ended }) => ended));
  running.clear();
  await place.discard();
});

/** The built server on its SQLite file, at the port it had before. */
function start(port: string): ServerProcess {
  const settings = { STORE: '', DATA_DIR: path.join(place.folder, 'data'), PORT: port, THINK_MS: '0' };
  const server = startProcess(settings, ['dist/server/main.js']);
  running.add(server);
  return server;
}

test('kill −9 after a pass: the same tiles are there when the server is back, and the round goes on to its review', async () => {
  const first = start('0');
  const origin = await first.url;
  const page = await suite.newPage();
  await dealAlone(page, origin);
  await passThree(page);
  expect(await nextHeading(page, 'First right')).toMatch(/^First across/);
  const tiles = await tileLabels(page);

  first.child.kill('SIGKILL');
  await first.ended;
  await page.getByRole('status').getByText('The line is down').waitFor();
  expect(await tileLabels(page)).toEqual(tiles);

  await start(new URL(origin).port).url;
  await page.getByText('The line is down').waitFor({ state: 'detached' });
  expect(await titleOf(page)).toMatch(/^First across/);
  expect(await tileLabels(page)).toEqual(tiles);
  expect((await playToClose(page)).length).toBeGreaterThan(3);
});
