// One line of play in real browsers: the teacher's pick, what each pupil is told of it, the wall.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings, overflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { passThree, rack, tileLabels } from '../../client/tools/page-actions.ts';

const suite = browserSuite();

async function openLine(): Promise<{ desk: Page; code: string }> {
  const desk = await suite.newPage({ viewport: PHONE });
  await desk.goto(`${suite.origin()}/lead`);
  await desk.getByRole('radio', { name: /in one line of play/ }).check();
  await desk.getByRole('checkbox', { name: /Nobody has the card/ }).check();
  await desk.getByRole('button', { name: 'Open the class' }).click();
  const code = await desk.locator('.big-code').getAttribute('data-code');
  return { desk, code: code ?? '' };
}

async function join(code: string, name: string): Promise<Page> {
  const page = await suite.newPage();
  await page.goto(`${suite.origin()}/c/${code}`);
  await page.getByLabel('Your name at the table').fill(name);
  await page.getByRole('button', { name: 'Join the class' }).click();
  return page;
}

describe('a class that plays one line', () => {
  it('goes on from the teacher’s pick; each pupil is told of it and of the own choice that is kept', async () => {
    const { desk, code } = await openLine();
    const pupils = [await join(code, 'Ines'), await join(code, 'Tomas')];
    await desk.getByRole('button', { name: 'Deal the first deal' }).click();
    await Promise.all(pupils.map((page) => rack(page).waitFor()));
    expect(await pupils[0]!.getByRole('button', { name: 'Card' }).count()).toBe(0);
    await pupils[0]!.getByText('Your class plays without the card.').waitFor();
    await passThree(pupils[0]!);
    await pupils[0]!.getByText('When all have, your teacher says').waitFor();
    await desk.getByText('First right: Tomas still to choose.').waitFor();
    await passThree(pupils[1]!);
    await desk.getByText('(2 pupils)').waitFor();
    expect(await desk.getByRole('radio', { name: '(2 pupils)' }).isChecked()).toBe(true);
    expect([await axeFindings(desk), await overflow(desk), await smallTargets(desk)]).toEqual([[], 0, []]);

    await desk.getByRole('radio', { name: 'A pass of your own choice' }).check();
    const tiles = desk.locator('.line .pool button:not([aria-label^="joker"])');
    for (const place of [-1, -2]) await tiles.nth(place).click();
    await desk.getByRole('button', { name: 'Go on from this' }).click();
    await desk.getByText('A pass takes 3 tiles here').waitFor();
    expect(await desk.locator('.line .pool button[aria-pressed="true"]').count()).toBe(2);
    await tiles.nth(-3).click();
    await desk.getByRole('button', { name: 'Go on from this' }).click();

    for (const page of pupils) {
      await page.getByText(/^The class went on from .* You chose .*; that is kept/).waitFor();
    }
    expect(await tileLabels(pupils[1]!)).toEqual(await tileLabels(pupils[0]!));
    await desk.getByText('First across: Ines and Tomas still to choose.').waitFor();
    await desk.getByLabel('Step', { exact: true }).selectOption({ label: 'First right' });
    await desk.getByRole('button', { name: 'Put it on the wall' }).click();
    await desk.getByRole('button', { name: 'Reveal the choices' }).click();
    const wall = await desk.context().newPage();
    await wall.goto(`${suite.origin()}/c/${code}/wall`);
    await wall.getByText('The class went on from').waitFor();
    await wall.getByText('100 % (2)').waitFor();

    const late = await join(code, 'Odo');
    await late.getByText('You came in where the class is now.').waitFor();
    expect(await tileLabels(late)).toEqual(await tileLabels(pupils[0]!));
    await desk.getByRole('button', { name: 'End the class' }).click();
    await desk.getByRole('button', { name: 'Yes, end it for everybody' }).click();
    await desk.getByText('The class has ended.').waitFor();
  });
});
