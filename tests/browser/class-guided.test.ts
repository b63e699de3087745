// A guided deal in real browsers: the teacher's pick, what each player is told about it, and the big screen.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { passThree, rack, tileLabels } from '../../client/tools/page-actions.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';

const suite = browserSuite();

async function openGuidedClass(): Promise<{ dashboard: Page; code: string }> {
  const dashboard = await suite.newPage({ viewport: PHONE });
  await dashboard.goto(`${suite.origin()}/lead`);
  await dashboard.getByRole('radio', { name: /in guided deals/ }).check();
  await dashboard.getByRole('checkbox', { name: /without seeing the card/ }).check();
  await dashboard.getByRole('checkbox', { name: /report names each player/ }).check();
  await dashboard.getByRole('button', { name: 'Open the class' }).click();
  const code = await dashboard.locator('.big-code').getAttribute('data-code');
  return { dashboard, code: code ?? '' };
}

async function join(code: string, name: string): Promise<Page> {
  const page = await suite.newPage();
  await page.goto(`${suite.origin()}/c/${code}`);
  await page.getByLabel('Your name at the table').fill(name);
  await page.getByRole('button', { name: 'Join the class' }).click();
  return page;
}

describe('a class with guided deals', () => {
  it('continues from the teacher’s pick and tells each player whether that was the player’s own choice', async () => {
    const { dashboard, code } = await openGuidedClass();
    const players = [await join(code, 'Ines'), await join(code, 'Tomas')];
    await dashboard.getByRole('button', { name: 'Start deal 1' }).click();
    await Promise.all(players.map((page) => rack(page).waitFor()));
    expect(await players[0]!.getByRole('button', { name: 'Card' }).count()).toBe(0);
    await players[0]!.getByText('This table plays without the card.').waitFor();
    await passThree(players[0]!);
    await players[0]!.getByText('Your teacher picks the choice that everybody continues from').waitFor();
    await dashboard.getByText('First right: waiting for Tomas.').waitFor();
    await passThree(players[1]!);
    await dashboard.getByText('(2 players)').waitFor();
    expect(await dashboard.getByRole('radio', { name: '(2 players)' }).isChecked()).toBe(true);
    expect(await axeFindings(dashboard)).toEqual([]);
    expect(await horizontalOverflow(dashboard)).toBe(0);
    expect(await smallTargets(dashboard)).toEqual([]);

    await dashboard.getByRole('radio', { name: 'A pass you pick yourself' }).check();
    const tiles = dashboard.locator('.guided .pool button:not([aria-label^="joker"])');
    for (const place of [-1, -2]) await tiles.nth(place).click();
    await dashboard.getByRole('button', { name: 'Continue from this choice' }).click();
    await dashboard.getByText('Choose 1 more tile.').waitFor();
    expect(await dashboard.locator('.guided .pool button[aria-pressed="true"]').count()).toBe(2);
    await tiles.nth(-3).click();
    await dashboard.getByRole('button', { name: 'Continue from this choice' }).click();

    for (const page of players) {
      await page.getByText(/^The class continued from: .* Your own choice \(.*\) is kept/).waitFor();
    }
    expect(await tileLabels(players[1]!)).toEqual(await tileLabels(players[0]!));
    await dashboard.getByText('First across: waiting for Ines and Tomas.').waitFor();
    await dashboard.getByLabel('Step', { exact: true }).selectOption({ label: 'First right' });
    await dashboard.getByRole('button', { name: 'Show on the big screen' }).click();
    await dashboard.getByRole('button', { name: 'Reveal the choices' }).click();
    const bigScreen = await dashboard.context().newPage();
    await bigScreen.goto(`${suite.origin()}/c/${code}/big-screen`);
    await bigScreen.getByText('The class continued with').waitFor();
    await bigScreen.getByText('2 of 2', { exact: true }).waitFor();

    const late = await join(code, 'Odo');
    await late.getByText('You have joined in the middle of this deal.').waitFor();
    expect(await tileLabels(late)).toEqual(await tileLabels(players[0]!));
    await dashboard.getByRole('button', { name: 'End the class' }).click();
    await dashboard.getByRole('button', { name: 'Yes, end it for everybody' }).click();
    await dashboard.getByText('This class has ended.').waitFor();
  }, 120_000);
});
