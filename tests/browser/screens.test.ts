// Every screen on every size and in every look: it fits, its targets are large, and axe finds no serious problem.
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  closeSheet,
  dealAlone,
  fillTray,
  isClosed,
  nextHeading,
  onward,
  openFor,
  openLesson,
  openSheet,
  passThree,
  rack,
} from '../../client/tools/page-actions.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, DESKTOP, PHONE, TABLET } from '../kit/browser-suite.ts';

const suite = browserSuite();

/** The quickest way through a round. */
const SHORT = { ask: 0, go: false } as const;

const LOOKS: readonly (readonly [string, BrowserContextOptions, boolean])[] = [
  ['a phone', { viewport: PHONE, hasTouch: true }, true],
  ['a tablet in the dark', { viewport: TABLET, colorScheme: 'dark' }, true],
  // The same marks and colors as the phone's; axe has looked at those.
  ['a desktop', { viewport: DESKTOP }, false],
];

async function look(page: Page, screen: string, axe: boolean): Promise<void> {
  const found = axe ? await axeFindings(page) : [];
  expect([screen, await horizontalOverflow(page), await smallTargets(page), found]).toEqual([
    screen,
    0,
    [],
    [],
  ]);
}

/** From the first tiles of the example to a review of which the first choice has been looked at closely. */
async function exampleToDeepReview(page: Page, axe: boolean): Promise<void> {
  await openLesson(page, suite.origin());
  await look(page, 'example', axe);
  await passThree(page);
  for (let now = await nextHeading(page, 'First right'); !isClosed(now); )
    now = await onward(page, now, SHORT);
  await page.getByRole('button', { name: /^First right/ }).click();
  await page.getByText('What else you could have done, on one scale').waitFor();
  await page.getByText('The numbers').first().click();
  await page.getByText('Our first answer', { exact: true }).click();
  await look(page, 'deep review', axe);
}

describe.each(LOOKS)('on %s', (_, options, axe) => {
  it('the front page, the sheets, the lobby and a table from deal to review fit and are accessible', async () => {
    const page = await suite.newPage(options);
    await page.goto(suite.origin());
    await page.getByText('How your tables are set up').click();
    await look(page, 'front', axe);
    for (const sheet of ['Help', 'Settings'] as const) {
      await openSheet(page, sheet);
      await look(page, sheet, axe);
      await closeSheet(page);
    }
    await openFor(page, suite.origin(), 'Ines');
    await page.getByRole('img', { name: /square code for a camera/ }).waitFor();
    await look(page, 'lobby', axe);
    await dealAlone(page, suite.origin());
    await fillTray(page);
    await look(page, 'table', axe);
    await page.getByRole('button', { name: 'Card' }).click();
    await page.getByRole('heading', { name: 'House card' }).waitFor();
    await page.getByText('What are you aiming for?').click();
    await page.getByRole('checkbox', { name: 'Runs' }).waitFor();
    await look(page, 'table with card and aim', axe);
    await page.getByRole('button', { name: 'Card' }).click();
    await passThree(page);
    for (let now = await nextHeading(page, 'First right'); !isClosed(now); ) {
      if (/^First left|^Second Charleston|^Courtesy: how many/.test(now)) await look(page, now, axe);
      now = await onward(page, now, SHORT);
    }
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    await page.getByText('The numbers').first().click();
    await page.getByText('Was the deal fixed before the first pass?').click();
    await look(page, 'review', axe);
  });

  it('the spectator’s screen and a table that does not exist fit and are accessible', async () => {
    const [host, spectator] = [await suite.newPage(options), await suite.newPage(options)];
    const link = await openFor(host, suite.origin(), 'Ines');
    await host.getByRole('button', { name: 'I am ready' }).click();
    await rack(host).waitFor();
    await spectator.goto(link);
    await spectator.getByRole('heading', { name: 'You are watching' }).waitFor();
    await look(spectator, 'spectator', axe);
    await spectator.goto(`${suite.origin()}/t/ZZZZZZZZ`);
    await spectator.getByRole('heading', { name: 'No table here' }).waitFor();
    await look(spectator, 'no table', axe);
  });

  it('the example and its deep review fit and are accessible', async () => {
    await exampleToDeepReview(await suite.newPage(options), axe);
  });
});

describe('in forced colors', () => {
  it('the example and its deep review fit and are accessible', async () => {
    await exampleToDeepReview(await suite.newPage({ viewport: PHONE, forcedColors: 'active' }), true);
  });
});
