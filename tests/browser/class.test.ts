// A teacher and six pupils in real browsers: three deals, a hold, the wall, a late joiner, a lost line, the report.
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, overflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { heading, passThree, playToClose, rack, tileLabels } from '../../client/tools/page-actions.ts';

const suite = browserSuite();

const NAMES = ['Ines', 'Tomas', 'Wilma', 'Odo', 'Runa'] as const;

async function prepare(page: Page): Promise<void> {
  await page.goto(suite.origin());
  await page.getByRole('button', { name: 'Prepare a class' }).click();
  await page.getByLabel('What is this drill called?').fill('Evening drill');
}

async function openedCode(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Open the class' }).click();
  return (await page.locator('.big-code').getAttribute('data-code')) ?? '';
}

/** Joins with the code on the front page, as a pupil does who was told it. */
async function join(page: Page, code: string, name: string): Promise<Page> {
  await page.goto(suite.origin());
  await page.getByLabel('Somebody gave you a code?').fill(code.toLowerCase());
  await page.getByRole('button', { name: 'Go to that table' }).click();
  // The front page asks for a name too; it has to be gone first.
  await page.getByRole('heading', { name: 'Come in: Evening drill' }).waitFor();
  await page.getByLabel('Your name at the table').fill(name);
  await page.getByRole('button', { name: 'Join the class' }).click();
  await heading(page)
    .filter({ hasText: /You are in|First right/ })
    .waitFor();
  return page;
}

function row(desk: Page, name: string) {
  return desk.getByRole('row').filter({ has: desk.getByRole('rowheader', { name, exact: true }) });
}

async function wallOf(desk: Page): Promise<Page> {
  const opening = desk.context().waitForEvent('page');
  await desk.getByRole('link', { name: 'Open the wall page' }).click();
  const wall = await opening;
  await wall.setViewportSize({ width: 1920, height: 1080 });
  return wall;
}

describe('a class', () => {
  it('is led through three deals, talked about on the wall and reported', async () => {
    const desk = await suite.newPage();
    await prepare(desk);
    await desk.getByRole('button', { name: 'Add a described deal' }).click();
    await desk.getByLabel('Jokers').selectOption('exactly');
    await desk.getByRole('button', { name: 'Add a deal by chance' }).click();
    const code = await openedCode(desk);
    const pupils: Page[] = [];
    for (const name of NAMES) pupils.push(await join(await suite.newPage(), code, name));
    await row(desk, 'Runa').getByText('before the first deal').waitFor();

    await desk.getByLabel('Hold before a step').selectOption('first-across');
    await desk.getByText('0 pupils wait before First across.').waitFor();
    await desk.getByRole('button', { name: 'Deal the first deal' }).click();
    await Promise.all(pupils.map((page) => rack(page).waitFor()));
    const dealt = await Promise.all(pupils.map(tileLabels));
    expect(new Set(dealt.map((tiles) => tiles.join())).size).toBe(1);

    for (const page of pupils) await passThree(page);
    await desk.getByText('5 pupils wait before First across.').waitFor();
    await pupils[0]!.getByText('Your teacher holds the tables here').waitFor();

    const wall = await wallOf(desk);
    await wall.getByText('Join with the code').waitFor();
    await desk.getByRole('button', { name: 'Put it on the wall' }).click();
    await wall.getByText('5 of 5 have chosen.').waitFor();
    expect(await axeFindings(wall)).toEqual([]);
    await desk.getByRole('button', { name: 'Reveal the choices' }).click();
    await wall.getByRole('heading', { name: 'What the class chose' }).waitFor();
    await wall.getByText('100 % (5)').waitFor();
    expect(await axeFindings(wall)).toEqual([]);
    const shown = await wall.locator('main').textContent();
    for (const name of NAMES) expect(shown).not.toContain(name);

    const late = await join(await suite.newPage(), code, 'Late Pia');
    await rack(late).waitFor();
    expect(await tileLabels(late)).toEqual(dealt[0]);
    await passThree(late);
    await desk.getByText('6 pupils wait before First across.').waitFor();

    const tiles = await tileLabels(pupils[1]!);
    const address = pupils[1]!.url();
    const lost = pupils[1]!.context();
    await pupils[1]!.close();
    await row(desk, 'Tomas').getByText('away').waitFor();
    const back = await lost.newPage();
    await back.goto(address);
    await rack(back).waitFor();
    expect(await tileLabels(back)).toEqual(tiles);
    expect(await axeFindings(desk)).toEqual([]);

    await desk.getByRole('button', { name: 'Let them go on', exact: true }).click();
    await playToClose(pupils[0]!);
    await pupils[0]!.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    for (const name of [...NAMES.slice(1), 'Late Pia']) {
      await desk.getByRole('button', { name: `Let a bot play on for ${name}` }).click();
      await row(desk, name).getByText('deal 1, closed').waitFor();
    }
    await desk.getByRole('button', { name: 'Deal the next one' }).click();
    await row(desk, 'Odo').getByText('deal 2, closed').waitFor();
    await heading(pupils[0]!).filter({ hasText: 'First right' }).waitFor();
    expect((await tileLabels(pupils[0]!)).filter((name) => name?.startsWith('joker'))).toHaveLength(1);
    await desk.getByRole('button', { name: 'Let a bot play on for Ines' }).click();
    await row(desk, 'Ines').getByText('deal 2, closed').waitFor();
    await desk.getByRole('button', { name: 'Deal the next one' }).click();
    await row(desk, 'Ines').getByText('deal 3, closed').waitFor();
    await desk.getByText('That was the last deal.').waitFor();

    await desk.getByRole('link', { name: 'Report of this class' }).click();
    await desk.getByRole('heading', { name: 'Report: Evening drill' }).waitFor();
    expect(await desk.getByRole('heading', { level: 2 }).count()).toBe(3);
    expect(await axeFindings(desk)).toEqual([]);
    const report = await desk.locator('main').textContent();
    for (const name of NAMES) expect(report).not.toContain(name);
    const downloading = desk.waitForEvent('download');
    await desk.getByRole('button', { name: 'Save as tables (CSV)' }).click();
    const csv = await readFile(await (await downloading).path(), 'utf8');
    expect(csv.split('\r\n')[0]).toMatch(/^deal,seat,step,kind,choice,pupils,share/);
    await desk.emulateMedia({ media: 'print' });
    expect(await desk.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
  }, 240_000);
});

describe('preparing', () => {
  it('tells in words what cannot be dealt, and keeps everything that was set', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await prepare(page);
    await page.getByRole('button', { name: 'Add a deal set by hand' }).click();
    for (let copies = 0; copies < 5; copies++) {
      await page.getByRole('button', { name: '3 bam', exact: true }).click();
    }
    await page.getByRole('button', { name: 'Open the class' }).click();
    await page.getByText('3 bam 5 times and the set has 4 of it; take 1 away').waitFor();
    expect(await page.getByRole('button', { name: 'Take 3 bam out' }).count()).toBe(5);
    expect(await page.getByLabel('What is this drill called?').inputValue()).toBe('Evening drill');
    expect(await axeFindings(page)).toEqual([]);
    expect(await overflow(page)).toBe(0);
    expect(await smallTargets(page)).toEqual([]);

    await page.getByRole('button', { name: 'Take 3 bam out' }).first().click();
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the drill as a file' }).click();
    const file = await readFile(await (await downloading).path());
    await page.getByLabel('What is this drill called?').fill('Another');
    const input = page.getByLabel('Use a drill file');
    await input.setInputFiles({
      name: 'broken.json',
      mimeType: 'application/json',
      buffer: file.subarray(9),
    });
    await page.getByText('the file is not JSON or not whole').waitFor();
    expect(await page.getByLabel('What is this drill called?').inputValue()).toBe('Another');
    await input.setInputFiles({ name: 'drill.json', mimeType: 'application/json', buffer: file });
    await page.getByText('the file is not JSON or not whole').waitFor({ state: 'detached' });
    expect(await page.getByLabel('What is this drill called?').inputValue()).toBe('Evening drill');
    expect(await page.getByRole('button', { name: 'Take 3 bam out' }).count()).toBe(4);
    await openedCode(page);
    expect(await overflow(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);
  });
});
