// The server is killed in the middle of a round: the page waits, finds it again, and the round goes on.
import { expect, test } from 'vitest';
import {
  dealAlone,
  nextHeading,
  passThree,
  playToClose,
  tileLabels,
  titleOf,
} from '../../client/tools/page-actions.ts';
import { browserSuite } from '../kit/browser-suite.ts';
import { processSuite } from '../kit/process-suite.ts';
import type { ServerProcess } from '../kit/server-process.ts';

const suite = browserSuite();

const processes = processSuite();

/** The built server on its SQLite file, at the port it had before. */
function start(port: string): ServerProcess {
  const settings = { DATA_DIR: processes.dataFolder(), PORT: port, BOT_DELAY_MS: '0' };
  return processes.start(settings);
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
  await page.getByRole('status').getByText('No connection.').waitFor();
  expect(await tileLabels(page)).toEqual(tiles);

  await start(new URL(origin).port).url;
  await page.getByText('No connection.').waitFor({ state: 'detached' });
  expect(await titleOf(page)).toMatch(/^First across/);
  expect(await tileLabels(page)).toEqual(tiles);
  expect((await playToClose(page)).length).toBeGreaterThan(3);
});
