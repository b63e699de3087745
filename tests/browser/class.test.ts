// A teacher and six players in real browsers: three deals, a stop, the big screen, a late player, a lost page, the report.
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { heading, passThree, playToClose, rack, tileLabels } from '../../client/tools/page-actions.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { seedRandomBytes } from '../kit/seeded-page.ts';

// The big screen and the report tell costs.
const suite = browserSuite({ REVIEW_DEPTH: 'deep' });

const NAMES = ['Ines', 'Tomas', 'Wilma', 'Odo', 'Runa'] as const;

async function prepare(page: Page): Promise<void> {
  await page.goto(suite.origin());
  await page.getByRole('button', { name: 'Prepare a class' }).click();
  await page.getByLabel('What is this drill called?').fill('Evening drill');
}

async function openedCode(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Open the class' }).click();
  return (await page.locator('[data-code]').getAttribute('data-code')) ?? '';
}

/** Joins with the code on the front page, as a player would who was told it. */
async function join(page: Page, code: string, name: string): Promise<Page> {
  await page.goto(suite.origin());
  await page.getByLabel('Did somebody give you a code?').fill(code.toLowerCase());
  await page.getByRole('button', { name: 'Go to that table' }).click();
  // The front page asks for a name too; it has to be gone first.
  await page.getByRole('heading', { name: 'Join “Evening drill”' }).waitFor();
  await page.getByLabel('Your name at the table').fill(name);
  await page.getByRole('button', { name: 'Join the class' }).click();
  await heading(page)
    .filter({ hasText: /You are in|First right/ })
    .waitFor();
  return page;
}

function row(dashboard: Page, name: string) {
  return dashboard.getByRole('row').filter({ has: dashboard.getByRole('rowheader', { name, exact: true }) });
}

const textFile = (name: string, buffer: Buffer) => ({ name, mimeType: 'application/json', buffer });

/** The smallest text that must be read from the back row, in percent of the height of the big screen. */
function smallestText(bigScreen: Page): Promise<number> {
  return bigScreen
    .locator('.big-screen :is(h1, p, .spread-choice, .spread-share > span, .spread-cost > span):visible')
    .evaluateAll((parts) =>
      Math.min(
        ...parts
          .filter((part) => part.textContent?.trim() && !part.classList.contains('spoken'))
          .map((part) => (Number.parseFloat(getComputedStyle(part).fontSize) / innerHeight) * 100),
      ),
    );
}

/** A bot plays a whole deal beside the analyses of the class, which takes its time on busy cores. */
function finished(dashboard: Page, name: string, deal: number): Promise<void> {
  return row(dashboard, name).getByText(`deal ${deal}, finished`).waitFor({ timeout: 60_000 });
}

async function openBigScreen(dashboard: Page): Promise<Page> {
  const opening = dashboard.context().waitForEvent('page');
  await dashboard.getByRole('link', { name: 'Open the big screen' }).click();
  const bigScreen = await opening;
  await bigScreen.setViewportSize({ width: 1920, height: 1080 });
  return bigScreen;
}

describe('a class', () => {
  it('is led through three deals, discussed at the big screen, and reported', async () => {
    const dashboard = await suite.newPage();
    // Not every deal has a step that divides a class, or a mistake to make a drill of.
    await dashboard.addInitScript(seedRandomBytes);
    await prepare(dashboard);
    await dashboard.getByRole('button', { name: 'Add a deal that fits a description' }).click();
    await dashboard.getByLabel('Jokers').selectOption('exactly');
    await dashboard.getByRole('button', { name: 'Add a random deal' }).click();
    await dashboard.getByText('With fewer than six players there will be no numbers.').waitFor();
    await dashboard.getByRole('radio', { name: 'Four players at each table.' }).check();
    await dashboard.getByText('with fewer than 24 players, six a seat, there will be no numbers').waitFor();
    await dashboard.getByRole('radio', { name: 'Everybody alone, with the same three bots.' }).check();
    await dashboard.getByRole('checkbox', { name: /racks while they choose/ }).check();
    const code = await openedCode(dashboard);
    const players: Page[] = [];
    for (const name of NAMES) players.push(await join(await suite.newPage(), code, name));
    await row(dashboard, 'Runa').getByText('before the first deal').waitFor();

    await dashboard.getByLabel('Stop before a step').selectOption('first-across');
    await dashboard.getByText('0 players are waiting before first across.').waitFor();
    await dashboard.getByRole('button', { name: 'Start deal 1' }).click();
    await Promise.all(players.map((page) => rack(page).waitFor()));
    const dealt = await Promise.all(players.map(tileLabels));
    expect(new Set(dealt.map((tiles) => tiles.join())).size).toBe(1);

    for (const page of players) await passThree(page);
    await dashboard.getByText('5 players are waiting before first across.').waitFor();
    await players[0]!.getByText('Your teacher has stopped the tables here').waitFor();

    const bigScreen = await openBigScreen(dashboard);
    await bigScreen.getByText('Join with this code').waitFor();
    await bigScreen.getByText('Phones cannot open this page').waitFor();
    expect(await smallestText(bigScreen)).toBeGreaterThanOrEqual(4.5);
    await dashboard.getByRole('button', { name: 'Show on the big screen' }).click();
    await bigScreen.getByText('5 of 5 have chosen.').waitFor();
    expect(await axeFindings(bigScreen)).toEqual([]);
    await dashboard.getByRole('button', { name: 'Reveal the choices' }).click();
    await bigScreen.getByRole('region', { name: 'What the class chose' }).waitFor();
    await bigScreen.getByText('5 of 5', { exact: true }).waitFor();
    await bigScreen.getByText('Best:').waitFor();
    expect(await axeFindings(bigScreen)).toEqual([]);
    expect(await smallestText(bigScreen)).toBeGreaterThanOrEqual(4.5);
    expect(await bigScreen.evaluate(() => document.documentElement.scrollHeight <= innerHeight)).toBe(true);
    await bigScreen.getByRole('button', { name: 'Larger text' }).click();
    expect(await smallestText(bigScreen)).toBeGreaterThanOrEqual(5.6);
    // The teacher sees beside the buttons what the class sees.
    const mirror = dashboard.getByRole('region', { name: 'On the big screen now' });
    await mirror.getByText('5 of 5', { exact: true }).waitFor();
    const shown = await bigScreen.locator('main').textContent();
    for (const name of NAMES) expect(shown).not.toContain(name);

    // A second teacher comes with a key, and the computer at the wall with the code of the big screen alone.
    await dashboard.getByRole('button', { name: 'Make a key' }).click();
    const savingKey = dashboard.waitForEvent('download');
    await dashboard.getByRole('button', { name: 'Save the key as a file' }).click();
    const keyFile = await readFile(await (await savingKey).path());
    const second = await suite.newPage({ viewport: PHONE });
    await second.goto(`${suite.origin()}/#my-classes`);
    const opening = second.getByLabel('Open a class with a key file');
    await opening.setInputFiles(textFile('other.json', Buffer.from('{}')));
    await second.getByText('There is no teacher’s key in that file.').waitFor();
    await opening.setInputFiles(textFile('key.json', keyFile));
    await second.getByRole('region', { name: 'On the big screen now' }).waitFor();
    expect(second.url()).toBe(`${suite.origin()}/c/${code}`);
    // It has the drill of the class as well, which another computer prepared.
    await second.getByRole('button', { name: 'Save the drill as a file' }).waitFor();
    await dashboard.getByRole('button', { name: 'Make a code' }).click();
    const wallCode = await dashboard.locator('[data-screen-code]').getAttribute('data-screen-code');
    const wall = await suite.newPage();
    await wall.goto(`${suite.origin()}/c/${code}/big-screen`);
    await wall.getByLabel('Code for the big screen').fill(wallCode ?? '');
    await wall.getByRole('button', { name: 'Show the big screen' }).click();
    await wall.getByText('5 of 5', { exact: true }).waitFor();
    await dashboard.getByRole('button', { name: /^Take back the key/ }).click();
    await dashboard.getByRole('button', { name: 'Yes, take it back' }).click();
    await second.getByText('A key that was taken back opens it no more.').waitFor();

    const late = await join(await suite.newPage(), code, 'Late Pia');
    await rack(late).waitFor();
    expect(await tileLabels(late)).toEqual(dealt[0]);
    const lateRow = row(dashboard, 'Late Pia');
    await lateRow.locator('summary').click();
    await lateRow.getByLabel('Name of Late Pia').fill('Pia');
    await lateRow.getByRole('button', { name: 'Rename' }).click();
    await row(dashboard, 'Pia').waitFor();
    await late.getByText('Your teacher calls you Pia now.').waitFor();
    await passThree(late);
    await dashboard.getByText('6 players are waiting before first across.').waitFor();

    const tiles = await tileLabels(players[1]!);
    const address = players[1]!.url();
    const lost = players[1]!.context();
    await players[1]!.close();
    await row(dashboard, 'Tomas').getByText('away').waitFor();
    const back = await lost.newPage();
    await back.goto(address);
    await rack(back).waitFor();
    expect(await tileLabels(back)).toEqual(tiles);
    expect(await axeFindings(dashboard)).toEqual([]);

    await dashboard.getByRole('button', { name: 'Continue without stopping' }).click();
    await playToClose(players[0]!);
    await players[0]!.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    for (const name of [...NAMES.slice(1), 'Pia']) {
      await dashboard.getByRole('button', { name: `Let a bot play for ${name}` }).click();
      await finished(dashboard, name, 1);
    }
    await dashboard.getByRole('button', { name: 'Start deal 2' }).click();
    await finished(dashboard, 'Odo', 2);
    await heading(players[0]!).filter({ hasText: 'First right' }).waitFor();
    expect((await tileLabels(players[0]!)).filter((name) => name?.startsWith('joker'))).toHaveLength(1);
    await dashboard.getByRole('button', { name: 'Let a bot play for Ines' }).click();
    await finished(dashboard, 'Ines', 2);
    await dashboard.getByRole('button', { name: 'Start deal 3' }).click();
    await finished(dashboard, 'Ines', 3);
    await dashboard.getByText('This is the last deal.').waitFor();

    await dashboard.getByRole('link', { name: 'Class report' }).click();
    await dashboard.getByRole('heading', { name: 'Report of “Evening drill”' }).waitFor();
    expect(await dashboard.getByRole('heading', { level: 2, name: /^Deal \d/ }).count()).toBe(3);
    await dashboard.getByRole('heading', { name: 'Teach this next' }).waitFor();
    expect(await axeFindings(dashboard)).toEqual([]);
    const report = await dashboard.locator('main').textContent();
    for (const name of NAMES) expect(report).not.toContain(name);
    await dashboard.getByLabel('Tables for a spreadsheet (CSV) that writes').selectOption('1,5');
    const downloading = dashboard.waitForEvent('download');
    await dashboard.getByRole('button', { name: 'Choices', exact: true }).click();
    const csv = await readFile(await (await downloading).path(), 'utf8');
    expect(csv.split('\r\n')[0]).toMatch(/^\uFEFFclass;date;deal number;deal title;seat;step;/);
    const pdf = (await dashboard.pdf({ preferCSSPageSize: true })).toString('latin1');
    // A first page for the class, and two at most for each of the three deals.
    expect(pdf.match(/\/Type\s*\/Page\b/g)!.length).toBeLessThanOrEqual(7);
    await dashboard.getByRole('button', { name: 'Make a drill of it' }).first().click({ timeout: 60_000 });
    await dashboard.getByRole('heading', { name: 'Prepare a class' }).waitFor();
    expect(await dashboard.getByLabel('What is this drill called?').inputValue()).not.toBe('');
  }, 300_000);
});

describe('preparing', () => {
  it('says why a deal cannot be dealt, and keeps everything that was entered, also where the page is loaded anew', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await prepare(page);
    await page.getByRole('button', { name: 'Add a deal with tiles you pick' }).click();
    for (const left of ['4 left', '3 left', '2 left', '1 left', 'none left']) {
      const tile = page.getByRole('button', { name: `3 bam, ${left}`, exact: true });
      // The fifth is off, and says why it is when it is tapped all the same.
      await tile.click({ force: left === 'none left' });
    }
    await page.getByText('There are 4 of this tile in the set, and here are 5.').waitFor();
    await page.getByText('4 of 13').waitFor();
    await page.getByRole('button', { name: 'Add a deal that fits a description' }).click();
    await page.getByLabel('Title of the deal').fill('Nine jokers '.repeat(7));
    await page.getByText('That is 80 characters; no more fits.').waitFor();
    await page.getByLabel('Title of the deal').fill('Nine jokers');
    await page.getByLabel('Jokers', { exact: true }).selectOption('exactly');
    await page.getByLabel('Jokers: exactly').fill('9');
    await page.getByRole('button', { name: 'Open the class' }).click();
    await page.getByText('Deal 3 (Nine jokers): no rack of 13 tiles can have').waitFor();
    expect([await axeFindings(page), await horizontalOverflow(page), await smallTargets(page)]).toEqual([
      [],
      0,
      [],
    ]);
    await page.getByText('Kept on this device.').waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'Deals (3)' }).waitFor();
    expect(await page.getByLabel('What is this drill called?').inputValue()).toBe('Evening drill');

    await page.getByRole('button', { name: 'Move deal 3 up' }).click();
    await page.getByRole('button', { name: 'Deal 2: Nine jokers' }).click();
    await page.getByRole('button', { name: 'Copy this deal' }).click();
    await page.getByRole('heading', { name: 'Deals (4)' }).waitFor();
    await page.getByRole('button', { name: 'Remove deal' }).click();
    await page.getByText('Deal 3 is removed.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Deal 3: Nine jokers' }).waitFor();
    await page.getByRole('button', { name: 'Remove deal' }).click();
    await page.getByRole('button', { name: 'Deal 2: Nine jokers' }).click();
    await page.getByRole('button', { name: 'Remove deal' }).click();

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
    await page.getByText('the file cannot be read as JSON. In line 1, column').waitFor();
    expect(await page.getByLabel('What is this drill called?').inputValue()).toBe('Another');
    await page.getByText('Kept on this device.').waitFor();
    await input.setInputFiles({ name: 'drill.json', mimeType: 'application/json', buffer: file });
    await page.getByText('the file cannot be read as JSON').waitFor({ state: 'detached' });
    expect(await page.getByLabel('What is this drill called?').inputValue()).toBe('Evening drill');
    await page.getByRole('button', { name: 'Deal 2: tiles you pick' }).click();
    expect(await page.getByRole('button', { name: '3 bam', exact: true }).count()).toBe(4);
    await page.getByText('Kept on this device.').waitFor();
    await openedCode(page);
    expect(await horizontalOverflow(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);

    // What was prepared here, and the class, are found again; what is removed can be put back.
    await page.getByRole('link', { name: 'My classes and drills' }).click();
    const drills = page.getByRole('region', { name: 'Drills' });
    await drills.getByRole('link', { name: 'Another' }).waitFor();
    await page
      .getByRole('region', { name: 'Classes' })
      .getByRole('link', { name: 'Evening drill' })
      .waitFor();
    await drills.getByRole('group', { name: 'Another' }).getByRole('button', { name: 'Remove' }).click();
    await drills.getByRole('link', { name: 'Another' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await drills.getByRole('group', { name: 'Another' }).getByRole('button', { name: 'Copy' }).click();
    await drills.getByRole('link', { name: 'Another (copy)' }).waitFor();
    expect([await axeFindings(page), await horizontalOverflow(page), await smallTargets(page)]).toEqual([
      [],
      0,
      [],
    ]);
    await drills.getByRole('link', { name: 'Evening drill' }).click();
    await page.getByRole('button', { name: 'Deal 2: tiles you pick' }).waitFor();
  }, 60_000);
});
