// Every screen on every size and in every look: it fits, its targets are large, and axe finds no serious problem.
import type { Page, ViewportSize } from 'playwright-core';
import { expect, it } from 'vitest';
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
import { axeFindings, COLOR_RULES, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, DESKTOP, type PageOptions, PHONE, TABLET } from '../kit/browser-suite.ts';

const suite = browserSuite();

// The nearest hands of the card and the habits of the rounds rest on what a page analyzes.
const FINGER: PageOptions = { viewport: PHONE, hasTouch: true, analyzes: true };

/** The quickest way through a round. */
const SHORT = { ask: 0, go: false } as const;

/** The window and colors a screen is looked at in, and what axe looks at. */
interface Look {
  readonly name: string;
  readonly viewport: ViewportSize;
  readonly media: { readonly colorScheme: 'light' | 'dark'; readonly forcedColors: 'active' | 'none' };
  readonly axe: 'all' | 'colors' | 'none';
}

const ACROSS = { width: PHONE.height, height: PHONE.width };
const LIGHT = { colorScheme: 'light', forcedColors: 'none' } as const;
const LOOKS: readonly Look[] = [
  { name: 'a tablet in the dark', viewport: TABLET, media: { ...LIGHT, colorScheme: 'dark' }, axe: 'colors' },
  // The same marks and colors as the phone's; axe looks at those.
  { name: 'a desktop', viewport: DESKTOP, media: LIGHT, axe: 'none' },
  { name: 'a phone held across', viewport: ACROSS, media: LIGHT, axe: 'none' },
  { name: 'a phone', viewport: PHONE, media: LIGHT, axe: 'all' },
];
const FORCED_COLORS: Look = {
  name: 'a phone in forced colors',
  viewport: PHONE,
  media: { ...LIGHT, forcedColors: 'active' },
  axe: 'colors',
};

/** Looks at one screen in every look, the phone last, so that the walk goes on with a finger. */
async function look(page: Page, screen: string, looks: readonly Look[] = LOOKS): Promise<void> {
  for (const { name, viewport, media, axe } of looks) {
    await page.setViewportSize(viewport);
    await page.emulateMedia(media);
    const found =
      axe === 'none' ? [] : await axeFindings(page, axe === 'colors' ? { only: COLOR_RULES } : {});
    expect([screen, name, await horizontalOverflow(page), await smallTargets(page), found]).toEqual([
      screen,
      name,
      0,
      [],
      [],
    ]);
  }
}

it('the front page, the sheets, the lobby and a table from deal to review fit and are accessible', async () => {
  const page = await suite.newPage(FINGER);
  await page.goto(`${suite.origin()}/nobody-lives-here`);
  await page.getByRole('heading', { name: 'Nothing here' }).waitFor();
  await look(page, 'missing');
  await page.goto(`${suite.origin()}/#deal=cut-off`);
  await page.getByRole('heading', { name: 'This deal link is not whole' }).waitFor();
  await page.getByRole('link', { name: 'Quadrille, front page' }).click();
  await page.getByText('How your tables are set up').click();
  await look(page, 'front');
  const name = page.getByLabel('Your name at the table');
  await name.fill('É'.repeat(30));
  expect(await name.inputValue()).toBe('É'.repeat(24));
  await page.setViewportSize(TABLET);
  const tops = (doors: Element[]) => doors.map((door) => door.getBoundingClientRect().top);
  expect(new Set(await page.locator('.mode').evaluateAll(tops)).size).toBe(1);
  await page.setViewportSize(PHONE);
  for (const sheet of ['Help', 'Settings'] as const) {
    await openSheet(page, sheet);
    await look(page, sheet);
    await closeSheet(page);
  }
  await openFor(page, suite.origin(), 'Ines');
  await page.getByRole('img', { name: /square code for a camera/ }).waitFor();
  await look(page, 'lobby');
  await dealAlone(page, suite.origin());
  await fillTray(page);
  await look(page, 'table');
  await page.getByRole('button', { name: 'Card' }).click();
  await page.getByRole('heading', { name: 'House card' }).waitFor();
  await page.getByText('What are you aiming for?').click();
  await page.getByRole('checkbox', { name: 'Stairs' }).waitFor();
  await look(page, 'table with card and aim');
  await page.getByRole('button', { name: 'Card' }).click();
  await passThree(page);
  for (let now = await nextHeading(page, 'First right'); !isClosed(now); ) {
    if (/^First left|^Second Charleston|^Courtesy: how many/.test(now)) await look(page, now);
    now = await onward(page, now, SHORT);
  }
  await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
  await page.getByText('The numbers').first().click();
  await page.getByText('Was the deal fixed before the first pass?').click();
  await look(page, 'review');
  await page.goto(`${suite.origin()}/#my-rounds`);
  await page.getByRole('link', { name: /^Alone at table/ }).waitFor();
  await look(page, 'my rounds');
  await page.getByRole('link', { name: 'What keeps costing me' }).click();
  await page.getByRole('heading', { name: 'By step' }).waitFor();
  await look(page, 'habits');
}, 180_000);

it('the deals of the days, ten racks and ten minutes fit and are accessible', async () => {
  const page = await suite.newPage(FINGER);
  await page.goto(`${suite.origin()}/#deal-of-the-day`);
  await page.getByRole('heading', { name: 'The days before' }).waitFor();
  await look(page, 'days');
  await page.goto(`${suite.origin()}/#ten-racks`);
  await page.getByRole('button', { name: 'Deal the first rack' }).click();
  for (const nth of [0, 1, 2]) await page.locator('.pick-rack [aria-disabled="false"]').nth(nth).click();
  await page.getByRole('button', { name: 'That is my answer' }).click();
  await page.getByRole('button', { name: 'Next rack' }).waitFor();
  await look(page, 'ten racks');
  await page.getByRole('button', { name: 'Stop here' }).click();
  await page.getByRole('heading', { name: 'One rack done' }).waitFor();
  await page.locator('details', { hasText: 'Rack 1: ' }).locator('summary').click();
  await look(page, 'the sum of ten racks');
  await page.goto(`${suite.origin()}/#ten-minutes`);
  await page.getByText('No habit of yours stands out so far, so this deal comes by chance.').waitFor();
  await look(page, 'ten minutes');
});

it('the spectator’s screen and a table that does not exist fit and are accessible', async () => {
  const [host, spectator] = [await suite.newPage(FINGER), await suite.newPage(FINGER)];
  const link = await openFor(host, suite.origin(), 'Ines');
  await host.getByRole('button', { name: 'I am ready' }).click();
  await rack(host).waitFor();
  await spectator.goto(link);
  await spectator.getByRole('heading', { name: 'You are watching' }).waitFor();
  await look(spectator, 'spectator');
  await spectator.goto(`${suite.origin()}/t/ZZZZZZZZ`);
  await spectator.getByRole('heading', { name: 'No table here' }).waitFor();
  await look(spectator, 'no table');
});

it('the example and its deep review fit and are accessible, in forced colors too', async () => {
  const page = await suite.newPage(FINGER);
  await openLesson(page, suite.origin());
  await look(page, 'example', [FORCED_COLORS, ...LOOKS]);
  await passThree(page);
  for (let now = await nextHeading(page, 'First right'); !isClosed(now); )
    now = await onward(page, now, SHORT);
  await page.getByRole('button', { name: /^First right/ }).click();
  await page.getByText('What else you could have done, on one scale').waitFor();
  await page.getByText('The numbers').first().click();
  await look(page, 'deep review', [FORCED_COLORS, ...LOOKS]);
}, 180_000);
