// The data stored about a person, in real browsers: seen, saved as a file, deleted; at a table and in a class.
import { readFile } from 'node:fs/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { dealAlone, openSheet, passThree, rack } from '../../client/tools/page-actions.ts';
import { BUILT_PAGE } from '../../server/http/pages.ts';
import { POLL_MS } from '../../server/registry/version-watch.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { startTwoServers } from '../kit/two-servers.ts';

const suite = browserSuite();

describe('your data', () => {
  it('data stored at a table is shown, saved and deleted; what this browser stores is deleted apart from it', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await page.goto(suite.origin());
    await page.getByLabel('Your name at the table').fill('Wilma of the long, long name');
    await page.getByText('That is 24 characters; no more fits.').waitFor();
    await page.getByLabel('Your name at the table').fill('Wilma');
    await dealAlone(page, suite.origin());
    const table = page.url();
    await passThree(page);
    const sheet = await openSheet(page, 'Settings');
    await sheet.getByRole('button', { name: 'Show my data' }).click();
    await sheet.getByText(/: passed, /).waitFor();
    await sheet.getByText(/sat down, .*Wilma/).waitFor();
    expect([await axeFindings(page), await horizontalOverflow(page), await smallTargets(page)]).toEqual([
      [],
      0,
      [],
    ]);
    const downloading = page.waitForEvent('download');
    await sheet.getByRole('button', { name: 'Save as a file' }).click();
    const file: unknown = JSON.parse(await readFile(await (await downloading).path(), 'utf8'));
    expect(file).toMatchObject({
      entries: expect.arrayContaining([expect.objectContaining({ name: 'Wilma' })]),
    });
    // A quick second tap on the same spot cancels the question.
    await sheet.getByRole('button', { name: 'Delete my data' }).dblclick();
    await sheet.getByRole('button', { name: 'Delete my data' }).click();
    await sheet.getByText('You give up your seat, and your name is deleted at once.').waitFor();
    // Nor does a further tap delete anything twice, while it is being deleted.
    let deletions = 0;
    let letGo = () => {};
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    await page.route('**/personal-data*', async (route) => {
      if (route.request().method() === 'DELETE') {
        deletions++;
        await held;
      }
      await route.continue();
    });
    const yes = sheet.getByRole('button', { name: 'Yes, give up my seat and delete my name' });
    await yes.click();
    await sheet.locator('button[aria-disabled="true"]', { hasText: 'Yes, give up my seat' }).waitFor();
    await yes.dispatchEvent('click');
    letGo();
    await page.getByRole('button', { name: 'Deal me in' }).waitFor();
    expect(deletions).toBe(1);
    expect(await page.getByLabel('Your name at the table').inputValue()).toBe('Wilma');
    const front = await openSheet(page, 'Settings');
    await front.getByRole('button', { name: 'Delete what this browser stores' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByLabel('Your name at the table').inputValue()).toBe('');
    await page.goto(table);
    await page.getByRole('heading', { name: 'You are watching' }).waitFor();
  });

  it('CH4 a class on two servers is deleted at one, and at the other its pages say so at once and show nothing of it', async () => {
    const { here, there, rooms, clock } = await startTwoServers({}, { pageFolder: BUILT_PAGE });
    onTestFinished(async () => void (await Promise.all([here.stop(), there.stop()])));
    const dashboard = await suite.newPage();
    await dashboard.goto(`${here.url}/lead`);
    await dashboard.getByRole('button', { name: 'Open the class' }).click();
    const code = (await dashboard.locator('.big-code').getAttribute('data-code')) ?? '';
    const link = `${there.url}/c/${code}`;
    // One browser's cookies are good at both: they are of the host and know no port.
    const [second, bigScreen] = [await dashboard.context().newPage(), await dashboard.context().newPage()];
    const players = [
      await suite.newPage({ viewport: PHONE }),
      await suite.newPage({ viewport: PHONE }),
    ] as const;
    for (const [n, player] of players.entries()) {
      await player.goto(link);
      await player.getByLabel('Your name at the table').fill(['Odo', 'Runa'][n]!);
      await player.getByRole('button', { name: 'Join the class' }).click();
      await player.getByRole('heading', { name: 'You are in' }).waitFor();
    }
    const [odo, runa] = players;
    const row = dashboard.getByRole('rowheader', { name: 'Odo' });
    await row.waitFor();
    const own = await openSheet(odo, 'Settings');
    await own.getByRole('button', { name: 'Show my data' }).click();
    await own.getByText(/joined the class, name Odo/).waitFor();
    await own.getByRole('button', { name: 'Delete my data' }).click();
    await own.getByRole('button', { name: 'Yes, give up my seat and delete my name' }).click();
    await odo.getByRole('button', { name: 'Deal me in' }).waitFor();
    await row.waitFor({ state: 'detached' });

    await second.goto(link);
    await second.getByRole('rowheader', { name: 'Runa' }).waitFor();
    await bigScreen.goto(`${link}/big-screen`);
    await bigScreen.getByText('Join with this code').waitFor();
    await second.getByRole('button', { name: 'Start deal 1' }).click();
    await rack(runa).waitFor();

    const teachers = await openSheet(dashboard, 'Settings');
    await teachers.getByRole('button', { name: 'Show my data' }).click();
    await teachers.getByRole('button', { name: 'Delete this class' }).click();
    await teachers.getByRole('button', { name: 'Yes, delete the class and all its tables' }).click();
    await dashboard.getByRole('button', { name: 'Prepare a class' }).waitFor();
    for (const page of [second, bigScreen, runa]) {
      await expect
        .poll(() => {
          clock.advance(POLL_MS);
          return page.locator('main').textContent();
        })
        .toMatch(/^This class was deleted/);
    }
    expect(await rooms.count()).toBe(0);
    await odo.goto(link);
    await odo.getByRole('heading', { name: 'There is no class with this code.' }).waitFor();
    // The browser that deleted it has forgotten the class as well.
    await dashboard.goto(`${here.url}/#my-classes`);
    await dashboard.getByText('None yet. Each class that you open is listed here.').waitFor();
  });
});
