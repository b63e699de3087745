// What is kept of a person, in real browsers: seen, taken along as a file, forgotten; at a table and in a class.
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { axeFindings, overflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { dealAlone, openSheet, passThree } from '../../client/tools/page-actions.ts';

const suite = browserSuite();

describe('what is kept', () => {
  it('at a table is shown, saved and forgotten; this browser’s notes are cleared by themselves', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await page.goto(suite.origin());
    await page.getByLabel('Your name at the table').fill('Wilma');
    await dealAlone(page, suite.origin());
    const table = page.url();
    await passThree(page);
    const sheet = await openSheet(page, 'Settings');
    await sheet.getByRole('button', { name: 'Show what is kept' }).click();
    await sheet.getByText(/: passed, /).waitFor();
    await sheet.getByText(/sat down, .*Wilma/).waitFor();
    expect([await axeFindings(page), await overflow(page), await smallTargets(page)]).toEqual([[], 0, []]);
    const downloading = page.waitForEvent('download');
    await sheet.getByRole('button', { name: 'Save it as a file' }).click();
    const file: unknown = JSON.parse(await readFile(await (await downloading).path(), 'utf8'));
    expect(file).toMatchObject({
      kept: expect.arrayContaining([expect.objectContaining({ name: 'Wilma' })]),
    });
    // A hasty second tap on the same spot takes the question back.
    await sheet.getByRole('button', { name: 'Have it forgotten' }).dblclick();
    await sheet.getByRole('button', { name: 'Have it forgotten' }).click();
    await sheet.getByText('You give up your seat.').waitFor();
    await sheet.getByRole('button', { name: 'Yes, give up my seat and forget my name' }).click();
    await page.getByRole('button', { name: 'Deal me in' }).waitFor();
    expect(await page.getByLabel('Your name at the table').inputValue()).toBe('Wilma');
    const front = await openSheet(page, 'Settings');
    await front.getByRole('button', { name: 'Clear this browser’s notes' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByLabel('Your name at the table').inputValue()).toBe('');
    await page.goto(table);
    await page.getByRole('heading', { name: 'You are watching' }).waitFor();
  });

  it('in a class is the pupil’s to have forgotten, and the class as a whole the teacher’s', async () => {
    const desk = await suite.newPage();
    await desk.goto(`${suite.origin()}/lead`);
    await desk.getByRole('button', { name: 'Open the class' }).click();
    const code = await desk.locator('.big-code').getAttribute('data-code');
    const pupil = await suite.newPage({ viewport: PHONE });
    await pupil.goto(`${suite.origin()}/c/${code}`);
    await pupil.getByLabel('Your name at the table').fill('Odo');
    await pupil.getByRole('button', { name: 'Join the class' }).click();
    const row = desk.getByRole('rowheader', { name: 'Odo' });
    await row.waitFor();
    await pupil.getByRole('heading', { name: 'You are in' }).waitFor();
    const own = await openSheet(pupil, 'Settings');
    await own.getByRole('button', { name: 'Show what is kept' }).click();
    await own.getByText(/joined the class, name Odo/).waitFor();
    await own.getByRole('button', { name: 'Have it forgotten' }).click();
    await own.getByRole('button', { name: 'Yes, give up my seat and forget my name' }).click();
    await pupil.getByRole('button', { name: 'Deal me in' }).waitFor();
    await row.waitFor({ state: 'detached' });

    const teachers = await openSheet(desk, 'Settings');
    await teachers.getByRole('button', { name: 'Show what is kept' }).click();
    await teachers.getByRole('button', { name: 'Have this class forgotten' }).click();
    await teachers.getByRole('button', { name: 'Yes, forget the class and all its tables' }).click();
    await desk.getByRole('button', { name: 'Prepare a class' }).waitFor();
    await pupil.goto(`${suite.origin()}/c/${code}`);
    await pupil.getByRole('heading', { name: 'There is no class with that code.' }).waitFor();
  });
});
