// Without the server: a pass prepared, the same deal again, a deal that a friend sends, a round without any network.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  dealAlone,
  passThree,
  playToClose,
  rack,
  tileLabels,
  titleOf,
} from '../../client/tools/page-actions.ts';
import type { CardFile } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { findsAndExercisesHabit } from '../kit/habit-history.ts';
import { isInSight } from '../kit/in-sight.ts';
import { layExchange } from '../kit/lay-exchange.ts';
import { writesLessonOfTable } from '../kit/lesson-walk.ts';
import { findsRoundOnPrivateCard, playWithPrivateCard } from '../kit/private-card.ts';

const suite = browserSuite();

describe('before a pass', () => {
  it('an aim is chosen, the coach asked, and both survive a reload and come back in the review', async () => {
    const page = await suite.newPage({ viewport: PHONE, analyzes: true });
    await dealAlone(page, suite.origin());
    await page.getByText('What are you aiming for?').click();
    await page.getByRole('checkbox', { name: 'Bookends' }).check();
    await page.getByRole('checkbox', { name: 'Stairs' }).check();
    const third = page.locator('.aim').getByRole('checkbox', { checked: false }).first();
    await third.click();
    await page.getByRole('status').getByText('Two are enough.').waitFor();
    expect(await page.locator('.aim').getByRole('checkbox', { checked: true }).count()).toBe(2);
    await page.getByText('Ask the coach').click();
    // What it costs is said before it is asked.
    await page.getByText('A choice with a hint is marked as helped').waitFor();
    expect(await page.getByRole('heading', { name: 'What stands out' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Give me a hint' }).click();
    await page.getByRole('heading', { name: 'What stands out' }).waitFor();
    expect(await page.getByRole('heading', { name: 'Where it leads' }).count()).toBe(0);
    for (const more of ['Where does it lead?', 'Which tiles serve it?', 'What would you choose?']) {
      await page.getByRole('button', { name: more }).click();
    }
    await page.getByText(/^We would pass /).waitFor();
    await page.reload();
    await page.getByText(/^You are aiming for: /).click();
    await page.getByRole('checkbox', { name: 'Stairs', checked: true }).waitFor();
    await page.getByRole('checkbox', { name: 'Bookends', checked: true }).waitFor();
    await playToClose(page);
    await page.getByRole('button', { name: /^First right/ }).click();
    const aims = page.locator('.choice-detail').getByText('Your aim:');
    await aims.first().waitFor();
    expect(await aims.count()).toBe(2);
    await page.locator('.choice-detail').getByText('The coach helped you with this choice.').waitFor();
    await page.getByRole('button', { name: /^First across/ }).click();
    expect(await page.getByText('The coach helped you with this choice.').count()).toBe(0);
  });
});

describe('the same deal again', () => {
  it('playing again deals the same tiles in the page and shows both reviews side by side', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    const tiles = await tileLabels(page);
    const names = () => page.locator('.opponents b').allTextContents();
    const before = await names();
    await playToClose(page, 0);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    // From here on the page is on its own.
    await page.route('**/api/rooms/**', (route) => route.abort());
    await page.getByRole('button', { name: 'Play it again' }).click();
    await rack(page).waitFor();
    expect([await tileLabels(page), await names()]).toEqual([tiles, before]);
    await playToClose(page, 3);
    await page.getByRole('heading', { name: 'Both times side by side' }).waitFor();
    expect(await page.getByRole('row').filter({ hasText: 'At the end' }).getByRole('cell').count()).toBe(2);
  });

  it('a deal link gives a friend the same tiles', async () => {
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

  it('a round in the page survives reload and closing, and front page and My rounds lead back to it', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await page.goto(`${suite.origin()}/#deal=${'7'.repeat(64)}.1.0`);
    await rack(page).waitFor();
    await passThree(page);
    await page.getByRole('heading', { name: /^First across/ }).waitFor();
    const tiles = await tileLabels(page);
    await page.reload();
    await page.getByRole('heading', { name: /^First across/ }).waitFor();
    expect(await tileLabels(page)).toEqual(tiles);
    const later = await page.context().newPage();
    await later.goto(suite.origin());
    await later.getByRole('link', { name: 'Back to your deal in this page' }).click();
    await later.getByRole('heading', { name: /^First across/ }).waitFor();
    // Another tab has not seen the tiles arrive in their order; they are the same tiles.
    expect((await tileLabels(later)).toSorted()).toEqual(tiles.toSorted());
    await later.goto(`${suite.origin()}/#my-rounds`);
    const unfinished = later.getByRole('region', { name: 'Unfinished' });
    await unfinished.getByRole('link', { name: /^Alone, without the server.*Go on with this round/ }).click();
    await later.getByRole('heading', { name: /^First across/ }).waitFor();
    expect((await tileLabels(later)).toSorted()).toEqual(tiles.toSorted());
    await later.goto(`${suite.origin()}/#my-rounds`);
    await unfinished.getByRole('button', { name: /^Remove/ }).click();
    await unfinished.waitFor({ state: 'detached' });
  });

  it('the page opens without any network once it has been there, deals a round and stores it, names a habit and exercises it, takes in and judges a rack from real tiles by a private card, and makes a lesson of it (T5)', async () => {
    const page = await suite.newPage({ viewport: PHONE, serviceWorkers: 'allow', analyzes: true });
    await page.goto(suite.origin());
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.context().setOffline(true);
    await page.reload();
    await page.getByRole('button', { name: 'Deal me in' }).click();
    await page.getByRole('button', { name: 'Play alone, without the server' }).click();
    await rack(page).waitFor();
    await passThree(page);
    await page.getByRole('heading', { name: /^First across/ }).waitFor();
    await page.reload();
    await page.getByRole('heading', { name: /^First across/ }).waitFor();
    await playToClose(page);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    // The round is stored here, and its review opens again.
    await page.goto(`${suite.origin()}/#my-rounds`);
    await page.getByRole('link', { name: /^Alone, without the server/ }).click();
    await page.getByText('A round of').waitFor();
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    await findsAndExercisesHabit(page, suite.origin());
    await chooseOwnCard(page, { ...HOUSE_CARD, id: 'club', name: 'Tuesday club', patterns: FEW_HANDS });
    await page.goto(suite.origin());
    expect(await layExchange(page)).toBeLessThanOrEqual(60);
    await page.getByText('Tuesday club').first().waitFor();
    await page.getByRole('link', { name: 'Open its review' }).click();
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    await page.goto(`${suite.origin()}/#my-rounds`);
    await page.getByRole('link', { name: /^With real tiles.*Tuesday club/ }).waitFor();
    const lesson = await writesLessonOfTable(page, suite.origin());
    expect(lesson).toMatchObject({
      wordTiles: 1,
      words: 'Keep the 1 bam, pass <b>winds</b> first.',
      printed: 8,
      isPagePrinted: false,
      torn: expect.stringMatching(/^Part of this lesson link is missing/),
    });
    expect(lesson.link).toBeLessThan(8 * 1024);
  }, 180_000);

  it('a round alone on a card of one’s own can be played when the server cannot be reached, and its review keeps that card', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await playWithPrivateCard(page, suite.origin());
    await page.goto(suite.origin());
    await page.route('**/api/**', (route) => route.abort());
    await page.getByRole('button', { name: 'Deal me in' }).click();
    await page.getByText('The server cannot be reached').waitFor();
    const here = page.getByRole('button', { name: 'Play alone, without the server' });
    await expect.poll(() => isInSight(here)).toBe(true);
    await here.click();
    await rack(page).waitFor();
    const address = page.url();
    await playToClose(page);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    // On another device the card is missing, and nobody is judged by the house card without a word.
    const friend = await suite.newPage({ viewport: PHONE });
    await friend.goto(address);
    await friend.getByText('The card of this deal is not on this device').waitFor();
    expect(await findsRoundOnPrivateCard(page, suite.origin())).toBe(true);
  });
});

const FEW_HANDS = HOUSE_CARD.patterns.slice(0, 8);

/** As My cards stores a card and chooses it for new tables. */
async function chooseOwnCard(page: Page, card: CardFile): Promise<void> {
  await page.evaluate((stored) => {
    const entry = { key: 'club', name: stored.name, sections: 1, patterns: 1, used: null, archived: false };
    localStorage.setItem('quadrille.own-cards', JSON.stringify([entry]));
    localStorage.setItem('quadrille.own-card.club', JSON.stringify({ revision: '1', card: stored }));
    localStorage.setItem('quadrille.chosen-card', 'club');
  }, card);
}
