// Without the server: the card beside the rack, the same deal again, and a deal that a friend sends.
import { describe, expect, it } from 'vitest';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { dealAlone, passThree, playToClose, rack, tileLabels, titleOf } from '../../client/tools/page-actions.ts';

const suite = browserSuite();

describe('the card beside the rack', () => {
  it('lights the tiles at hand, follows the rack, and stays open for the next time', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    await page.getByRole('button', { name: 'Card' }).click();
    await page.getByRole('heading', { name: 'House card' }).waitFor();
    expect(await page.locator('.card-lines > li').count()).toBe(8);
    const lit = async () => (await page.locator('.card-lines .spoken').allTextContents()).join();
    const before = await lit();
    await passThree(page);
    await page
      .getByRole('button', { name: /just arrived/ })
      .first()
      .waitFor();
    expect(await lit()).not.toBe(before);
    await page.getByRole('radio', { name: 'By family' }).check();
    await page.getByRole('heading', { name: 'Winds and dragons' }).waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'House card' }).waitFor();
  });
});

describe('the aim', () => {
  it('is said before a pass, survives a reload, and comes back in the review', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await dealAlone(page, suite.origin());
    await page.getByText('Say your aim first').click();
    await page.getByRole('checkbox', { name: 'Evens' }).check();
    await page.getByRole('checkbox', { name: 'Runs' }).check();
    await page.reload();
    await page.getByText('Say your aim first').click();
    await page.getByRole('checkbox', { name: 'Runs', checked: true }).waitFor();
    await page.getByRole('checkbox', { name: 'Evens', checked: true }).waitFor();
    await playToClose(page);
    await page.getByRole('button', { name: /^First right/ }).click();
    const aims = page.locator('.choice-detail').getByText('Your aim:');
    await aims.first().waitFor();
    expect(await aims.count()).toBe(2);
  });
});

describe('the same deal again', () => {
  it('deals the same tiles in the page and lays both reviews side by side', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    const tiles = await tileLabels(page);
    await playToClose(page, 0);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    // From here on the page is on its own.
    await page.route('**/api/rooms/**', (route) => route.abort());
    await page.getByRole('button', { name: 'Play it again' }).click();
    await rack(page).waitFor();
    expect(await tileLabels(page)).toEqual(tiles);
    await playToClose(page, 3);
    await page.getByRole('heading', { name: 'Both times side by side' }).waitFor();
    expect(await page.getByRole('row').filter({ hasText: 'At the close' }).getByRole('cell').count()).toBe(2);
  });

  it('a deal link seats a friend before the same tiles', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    const tiles = await tileLabels(page);
    await playToClose(page);
    await page.getByRole('button', { name: 'Play it again' }).click();
    await rack(page).waitFor();
    const friend = await suite.newPage({ viewport: PHONE });
    await friend.goto(page.url());
    await rack(friend).waitFor();
    expect(await tileLabels(friend)).toEqual(tiles);
    expect(await titleOf(friend)).toMatch(/^First right/);
  });

  it('the page opens without any network once it has been there, and deals a round', async () => {
    const page = await suite.newPage({ viewport: PHONE, serviceWorkers: 'allow' });
    await page.goto(suite.origin());
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.context().setOffline(true);
    await page.reload();
    await page.getByRole('button', { name: 'Deal me in' }).click();
    await page.getByRole('button', { name: 'Play in this page, without the server' }).click();
    await rack(page).waitFor();
    await playToClose(page);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
  });

  it('a round alone can be played when the server cannot be reached', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await page.goto(suite.origin());
    await page.route('**/api/**', (route) => route.abort());
    await page.getByRole('button', { name: 'Deal me in' }).click();
    await page.getByText('The server cannot be reached').waitFor();
    await page.getByRole('button', { name: 'Play in this page, without the server' }).click();
    await rack(page).waitFor();
    await playToClose(page);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
  });
});
