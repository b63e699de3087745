// The data stored about a person, in real browsers: seen, saved as a file, deleted; at a table and in a class.
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { dealAlone, openSheet, passThree } from '../../client/tools/page-actions.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';

const suite = browserSuite();

describe('your data', () => {
  it('data stored at a table is shown, saved and deleted; what this browser stores is deleted apart from it', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await page.goto(suite.origin());
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
    await sheet.getByRole('button', { name: 'Yes, give up my seat and delete my name' }).click();
    await page.getByRole('button', { name: 'Deal me in' }).waitFor();
    expect(await page.getByLabel('Your name at the table').inputValue()).toBe('Wilma');
    const front = await openSheet(page, 'Settings');
    await front.getByRole('button', { name: 'Delete what this browser stores' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByLabel('Your name at the table').inputValue()).toBe('');
    await page.goto(table);
    await page.getByRole('heading', { name: 'You are watching' }).waitFor();
  });

  it('a player deletes their own data in a class, and the teacher deletes the class as a whole', async () => {
    const dashboard = await suite.newPage();
    await dashboard.goto(`${suite.origin()}/lead`);
    await dashboard.getByRole('button', { name: 'Open the class' }).click();
    const code = await dashboard.locator('.big-code').getAttribute('data-code');
    const player = await suite.newPage({ viewport: PHONE });
    await player.goto(`${suite.origin()}/c/${code}`);
    await player.getByLabel('Your name at the table').fill('Odo');
    await player.getByRole('button', { name: 'Join the class' }).click();
    const row = dashboard.getByRole('rowheader', { name: 'Odo' });
    await row.waitFor();
    await player.getByRole('heading', { name: 'You are in' }).waitFor();
    const own = await openSheet(player, 'Settings');
    await own.getByRole('button', { name: 'Show my data' }).click();
    await own.getByText(/joined the class, name Odo/).waitFor();
    await own.getByRole('button', { name: 'Delete my data' }).click();
    await own.getByRole('button', { name: 'Yes, give up my seat and delete my name' }).click();
    await player.getByRole('button', { name: 'Deal me in' }).waitFor();
    await row.waitFor({ state: 'detached' });

    const teachers = await openSheet(dashboard, 'Settings');
    await teachers.getByRole('button', { name: 'Show my data' }).click();
    await teachers.getByRole('button', { name: 'Delete this class' }).click();
    await teachers.getByRole('button', { name: 'Yes, delete the class and all its tables' }).click();
    await dashboard.getByRole('button', { name: 'Prepare a class' }).waitFor();
    await player.goto(`${suite.origin()}/c/${code}`);
    await player.getByRole('heading', { name: 'There is no class with this code.' }).waitFor();
  });
});
