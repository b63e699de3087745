// Settings, help and the example: what they change on the screen, and that they are stored.
import { describe, expect, it } from 'vitest';
import {
  closeSheet,
  dealAlone,
  heading,
  openLesson,
  openSheet,
  passThree,
  playToClose,
  rack,
  tileLabels,
} from '../../client/tools/page-actions.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';

const suite = browserSuite();

describe('settings at a table', () => {
  it('settings take the marks off the tiles, sort the rack, and leave the table where it was', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    const title = await heading(page).textContent();
    const before = await tileLabels(page);
    const marks = rack(page).locator('.tile-index:visible');
    expect(await marks.count()).toBeGreaterThan(0);
    const sheet = await openSheet(page, 'Settings');
    await sheet.getByRole('checkbox', { name: /corner of each tile/ }).uncheck();
    await sheet.getByRole('radio', { name: 'by number' }).check({ force: true });
    await closeSheet(page);
    expect(await marks.count()).toBe(0);
    expect(await page.getByRole('radio', { name: 'By number' }).isChecked()).toBe(true);
    expect((await tileLabels(page)).toSorted()).toEqual(before.toSorted());
    expect(await heading(page).textContent()).toBe(title);
    await page.reload();
    await rack(page).waitFor();
    expect(await marks.count()).toBe(0);
    expect(await page.getByRole('radio', { name: 'By number' }).isChecked()).toBe(true);
  });

  it('the page shows no motion when asked, although the device allows it', async () => {
    const page = await suite.newPage({ viewport: PHONE, reducedMotion: 'no-preference' });
    await dealAlone(page, suite.origin());
    await passThree(page);
    const fresh = page.getByRole('button', { name: /just arrived/ }).first();
    await fresh.waitFor();
    const animation = () => fresh.evaluate((tile) => getComputedStyle(tile).animationName);
    expect(await animation()).toBe('arrive');
    const sheet = await openSheet(page, 'Settings');
    await sheet.getByRole('checkbox', { name: /^No motion/ }).check();
    await closeSheet(page);
    expect(await animation()).toBe('none');
  });

  it('sounds are off at first, and are made without fetching a file', async () => {
    const page = await suite.newPage();
    await page.addInitScript(countSounds);
    const fetched: string[] = [];
    page.on('request', (request) => fetched.push(request.url()));
    await dealAlone(page, suite.origin());
    const made = () => page.locator('html').getAttribute('data-sounds');
    await passThree(page);
    await page
      .getByRole('button', { name: /just arrived/ })
      .first()
      .waitFor();
    expect(await made()).toBeNull();
    const sheet = await openSheet(page, 'Settings');
    await sheet.getByRole('checkbox', { name: /^Sounds/ }).check();
    await closeSheet(page);
    await rack(page).locator('button:not([aria-label^="joker"])').first().click();
    await page.locator('html[data-sounds]').waitFor({ state: 'attached' });
    expect(fetched.filter((url) => /\.(mp3|ogg|wav|m4a|webm)$/.test(url))).toEqual([]);
  });

  it('a sheet closes by Escape and gives the focus back', async () => {
    const page = await suite.newPage();
    await page.goto(suite.origin());
    await openSheet(page, 'Help');
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await page.locator(':focus').textContent()).toBe('Help');
  });
});

/** In the page: counts on the document how many sounds were started. */
function countSounds(): void {
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function counted(...when: [number?, number?, number?]) {
    const { dataset } = document.documentElement;
    dataset.sounds = String(Number(dataset.sounds ?? 0) + 1);
    start.apply(this, when);
  };
}

describe('the example', () => {
  it('the example explains each step before it is played, without the server, and leads to the front page', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await openLesson(page, suite.origin());
    await page.route('**/api/**', (route) => route.abort());
    const guide = page.getByRole('complementary', { name: 'How to play' });
    await guide.getByText('a pair of 6 bam, a pair of 3 crak').waitFor();
    await passThree(page);
    await guide.getByText('have just come from Dunja').waitFor();
    await playToClose(page);
    await guide.getByText('That was the whole Charleston.').waitFor();
    await guide.getByRole('button', { name: 'Play a deal of your own' }).click();
    await page.getByRole('button', { name: 'Deal me in' }).waitFor();
  });

  it('the example always deals the same tiles, also by its link', async () => {
    const page = await suite.newPage();
    await openLesson(page, suite.origin());
    const tiles = await tileLabels(page);
    const other = await suite.newPage({ viewport: PHONE });
    await other.goto(page.url());
    await rack(other).waitFor();
    expect(await tileLabels(other)).toEqual(tiles);
  });
});

describe('bots and invitations', () => {
  it('a bot is called a bot beside its name, and a person is not', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    expect(
      await page.getByRole('list', { name: 'The others' }).getByText('bot', { exact: true }).count(),
    ).toBe(3);
  });
});
