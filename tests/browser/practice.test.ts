// Without the server: the card beside the rack, the same deal again, a deal that a friend sends, a card of one's own.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  dealAlone,
  openSheet,
  passThree,
  playToClose,
  rack,
  tileLabels,
  titleOf,
} from '../../client/tools/page-actions.ts';
import { meanSameHands } from '../../shared-engine/card/compare.ts';
import type { CardFile } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { writeShorthand } from '../../shared-engine/card/shorthand/write.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, DESKTOP, PHONE, TABLET } from '../kit/browser-suite.ts';
import { layHand } from '../kit/card-laying.ts';
import { openNewCard, storedCard, typeCard } from '../kit/card-typing.ts';
import { findsAndExercisesHabit } from '../kit/habit-history.ts';
import { isInSight } from '../kit/in-sight.ts';
import { layExchange } from '../kit/lay-exchange.ts';
import { writesLessonOfTable } from '../kit/lesson-walk.ts';
import { findsRoundOnPrivateCard, playWithPrivateCard } from '../kit/private-card.ts';

const suite = browserSuite();

describe('the card beside the rack', () => {
  it('the card shows the tiles on the rack bright, follows the rack, and stays open for the next time', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    await page.getByRole('button', { name: 'Card' }).click();
    await page.getByRole('heading', { name: 'House card' }).waitFor();
    await page.locator('.card-matches > li').first().waitFor();
    expect(await page.locator('.card-matches > li').count()).toBe(8);
    await page
      .locator('.match-summary')
      .getByText(/^\D+ \d away · (none|one|two|three|four) by joker · \d+ points/)
      .first()
      .waitFor();
    const spoken = async () => (await page.locator('.card-matches .spoken').allTextContents()).join();
    const before = await spoken();
    await passThree(page);
    await page
      .getByRole('button', { name: /just arrived/ })
      .first()
      .waitFor();
    await expect.poll(spoken).not.toBe(before);
    await page.getByRole('radio', { name: 'In its own order' }).check();
    await page.getByRole('heading', { name: 'Matching dragons' }).waitFor();
    await page.getByLabel('Section').selectOption('Stairs');
    expect(await page.locator('.card-panel h3').allTextContents()).toEqual(['Stairs']);
    // Beside the table where there is room, and over it where there is not, the rack in sight.
    for (const viewport of [DESKTOP, TABLET, PHONE]) {
      await page.setViewportSize(viewport);
      expect([viewport, await isInSight(page.locator('.card-head')), await isInSight(rack(page))]).toEqual([
        viewport,
        true,
        true,
      ]);
    }
    await page.setViewportSize(DESKTOP);
    await page.reload();
    await page.getByRole('heading', { name: 'House card' }).waitFor();
    // Going back closes what lies over the table, and only the next step back leaves it.
    await page.getByRole('button', { name: 'Card' }).click();
    await page.getByRole('button', { name: 'Card' }).click();
    await page.getByRole('heading', { name: 'House card' }).waitFor();
    await page.goBack();
    await page.getByRole('heading', { name: 'House card' }).waitFor({ state: 'detached' });
    await openSheet(page, 'Settings');
    await page.goBack();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await rack(page).waitFor();
    await page.setViewportSize(PHONE);
    await page.goBack();
    await page.getByText('You have left the table for now. Your seat is kept.').waitFor();
    expect(await isInSight(page.getByRole('link', { name: /^Back to table [0-9A-Z]{8}$/ }))).toBe(true);
  });
});

describe('before a pass', () => {
  it('an aim is chosen, the coach asked, and both survive a reload and come back in the review', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await dealAlone(page, suite.origin());
    await page.getByText('What are you aiming for?').click();
    await page.getByRole('checkbox', { name: 'Bookends' }).check();
    await page.getByRole('checkbox', { name: 'Stairs' }).check();
    const third = page.locator('.aim').getByRole('checkbox', { checked: false }).first();
    await third.click();
    await page.getByRole('status').getByText('Two are enough.').waitFor();
    expect(await page.locator('.aim').getByRole('checkbox', { checked: true }).count()).toBe(2);
    await page.getByText('Ask the coach').click();
    await page.getByRole('heading', { name: 'What stands out' }).waitFor();
    expect(await page.getByRole('heading', { name: 'Where it leads' }).count()).toBe(0);
    for (const more of ['Where does it lead?', 'Which tiles serve it?', 'What would you pass?']) {
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

  it('a round in the page survives reload and closing, and the front page leads back to it', async () => {
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
  });

  it('the page opens without any network once it has been there, deals a round and stores it, names a habit and exercises it, takes in and judges a rack from real tiles by a private card, and makes a lesson of it (T5)', async () => {
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
    const here = page.getByRole('button', { name: 'Play in this page, without the server' });
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

describe('a card of one’s own', () => {
  const drawnHands = drawn(HOUSE_CARD.patterns, 2, stream('a card of one’s own', 'hands'));

  it('is laid by touch on a narrow phone, with everything named and large enough, and plays at a table', async () => {
    const page = await suite.newPage({
      viewport: { width: 320, height: 640 },
      hasTouch: true,
      isMobile: true,
    });
    await page.goto(suite.origin());
    await page.getByRole('link', { name: 'My cards' }).tap();
    await page.getByRole('button', { name: 'New card' }).tap();
    await page.getByLabel('Name of the card').fill('Tuesday club');
    await page.getByRole('button', { name: 'Add a hand' }).tap();
    for (const pattern of drawnHands) expect(await layHand(page, pattern)).toBeLessThanOrEqual(25);
    await page.getByRole('button', { name: '2 bam', exact: true }).tap();
    await page.getByText('3 of 14 tiles').waitFor();
    await page.getByText('2 of 3 hands in').waitFor();
    const found = [await axeFindings(page), await horizontalOverflow(page), await smallTargets(page)];
    expect(found).toEqual([[], 0, []]);
    const { patterns } = await storedCard(page);
    expect(patterns.slice(0, 2).map((pattern) => writeShorthand(pattern).split(' ').length)).toEqual(
      drawnHands.map((pattern) => writeShorthand(pattern).split(' ').length),
    );
    await page.getByRole('button', { name: 'Play with it: Tuesday club' }).tap();
    await page.getByRole('link', { name: 'Quadrille, front page' }).tap();
    await page.getByText('Your new tables play with Tuesday club.').waitFor();
    await page.getByRole('button', { name: 'Deal me in' }).tap();
    await page.getByRole('button', { name: 'Card', exact: true }).tap();
    await page.getByRole('heading', { name: 'Tuesday club' }).waitFor();
    await page.locator('.card-matches > li').first().waitFor();
    expect(await page.locator('.card-matches > li').count()).toBe(2);
  });

  it('is typed, undone, sent as a link, and not overwritten by another tab or lost when deleted', async () => {
    const page = await suite.newPage();
    await openNewCard(page, suite.origin());
    const part: CardFile = {
      ...HOUSE_CARD,
      sections: HOUSE_CARD.sections.slice(0, 2),
      patterns: HOUSE_CARD.patterns.filter(({ id }) => /^(one|twin)-suits?-[17]$/.test(id)),
    };
    const keys = await typeCard(page, part);
    expect(keys.reduce((sum, count) => sum + count, 0) / keys.length).toBeLessThanOrEqual(30);
    await page.keyboard.type('2q');
    await page.getByText('Group 1: "2q": "q" is none of').waitFor();
    await page.getByLabel('The hand in one line').fill('');
    await page.getByRole('button', { name: 'Undo' }).click();
    const address = page.url();
    expect(meanSameHands(await storedCard(page), part)).toBe(true);

    const other = await page.context().newPage();
    await Promise.all([page.goto(address), other.goto(address)]);
    await other.getByLabel('Name of the card').fill('Changed there');
    await other.getByText('Kept on this device.').waitFor();
    await page.getByText('This card has been changed in another tab.').waitFor();
    await page.getByRole('button', { name: 'Go on with the other version' }).click();
    const nameField = page.getByLabel('Name of the card');
    expect(await nameField.inputValue()).toBe('Changed there');
    // Nobody could tell it from the house card at a table.
    await nameField.fill('house  CARD');
    await page.getByText('Another card is called so').waitFor();
    await nameField.blur();
    expect(await nameField.inputValue()).toBe('Changed there');
    await page.getByRole('button', { name: 'All my cards' }).click();

    await page.getByText('More: Changed there').click();
    await page.getByRole('button', { name: 'Share: Changed there' }).click();
    // Asked once for each card.
    await page.getByText('Did you type Changed there from a printed card?').waitFor();
    await page.getByRole('button', { name: 'I may pass it on' }).click();
    const link = await page.getByLabel('The card as a link').inputValue();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Share: Changed there' }).click();
    await page.getByLabel('The card as a link').waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    const friend = await suite.newPage();
    await friend.goto(link);
    await friend.getByRole('button', { name: 'Keep it in My cards' }).click();
    await friend.getByLabel('Name of the card').waitFor();
    expect(meanSameHands(await storedCard(friend), part)).toBe(true);

    await page.getByRole('button', { name: 'Delete: Changed there' }).click();
    await page.getByText('Changed there is deleted.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Open: Changed there' }).waitFor();
  });
});
