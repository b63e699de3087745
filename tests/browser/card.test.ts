// The card beside the rack, and a card of one's own: laid, typed, sent, kept.
import { describe, expect, it } from 'vitest';
import { dealAlone, openSheet, passThree, rack } from '../../client/tools/page-actions.ts';
import { meanSameHands } from '../../shared-engine/card/compare.ts';
import type { CardFile } from '../../shared-engine/card/format.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { writeShorthand } from '../../shared-engine/card/shorthand/write.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, DESKTOP, PHONE, TABLET } from '../kit/browser-suite.ts';
import { layHand } from '../kit/card-laying.ts';
import { openNewCard, storedCard, typeCard } from '../kit/card-typing.ts';
import { isInSight } from '../kit/in-sight.ts';

const suite = browserSuite();

describe('the card beside the rack', () => {
  it('the card shows the tiles on the rack bright, follows the rack, and stays open for the next time', async () => {
    const page = await suite.newPage({ analyzes: true });
    await dealAlone(page, suite.origin());
    await page.getByRole('button', { name: 'Card' }).click();
    await page.getByRole('heading', { name: 'House card' }).waitFor();
    await page.locator('.card-matches > li').first().waitFor();
    expect(await page.locator('.card-matches > li').count()).toBe(8);
    await page
      .locator('.match-summary')
      .getByText(/^\D+ \d+ away · ((one|two|three|four|five|six) by joker · )?\d+ points/)
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

describe('a card of one’s own', () => {
  const drawnHands = drawn(HOUSE_CARD.patterns, 2, stream('a card of one’s own', 'hands'));

  it('is laid by touch on a narrow phone, with everything named and large enough, and plays at a table', async () => {
    const page = await suite.newPage({
      viewport: { width: 320, height: 640 },
      hasTouch: true,
      isMobile: true,
      analyzes: true,
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
