// Writes a picture of every screen and every part at three widths into shots/, so that a person can look; `pictures` writes
// the README's, `expected` those that a test compares with.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { openChromium } from './chromium.ts';
import { type Picture, shootClass } from './class-shots.ts';
import { writeExpected } from './expected-shots.ts';
import {
  closeSheet,
  dealAlone,
  fillTray,
  isClosed,
  joinAt,
  nextHeading,
  openFor,
  openLesson,
  openSheet,
  passThree,
  titleOf,
  withoutBotPauses,
} from './page-actions.ts';
import { startPageServer } from './page-server.ts';
import { openParts, partNames } from './parts-page.ts';
import { writePictures } from './pictures.ts';

const FOLDER = path.resolve(import.meta.dirname, '../../shots');

const LOOKS: Readonly<Record<string, BrowserContextOptions>> = {
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true },
  desktop: { viewport: { width: 1366, height: 850 } },
  'phone-dark': { viewport: { width: 360, height: 740 }, colorScheme: 'dark' },
  'desktop-dark': { viewport: { width: 1366, height: 850 }, colorScheme: 'dark' },
  'phone-forced': { viewport: { width: 360, height: 740 }, forcedColors: 'active' },
};

async function shoot(browser: Browser, origin: string, look: string): Promise<void> {
  const context = await browser.newContext(LOOKS[look]!);
  await withoutBotPauses(context);
  const page = await context.newPage();
  const picture: Picture = (name, of, whole = false) =>
    of.screenshot({ path: path.join(FOLDER, `${name}-${look}.png`), fullPage: whole });

  await page.goto(origin);
  await picture('front', page);
  await page.getByText('How your tables are set up').click();
  await picture('front-settings', page, true);
  for (const sheet of ['Help', 'Settings'] as const) {
    await openSheet(page, sheet);
    await picture(sheet.toLowerCase(), page);
    await closeSheet(page);
  }
  await friends(browser, origin, look, picture);
  await shootClass(browser, origin, LOOKS[look]!, picture);

  await dealAlone(page, origin);
  await picture('first-right', page);
  await fillTray(page);
  await picture('first-right-full', page);
  await page.getByRole('button', { name: 'Card' }).click();
  await page.getByRole('heading', { name: 'House card' }).waitFor();
  await picture('card', page, true);
  await page.getByRole('button', { name: 'Card' }).click();
  await playOn(page, picture);
  await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
  await picture('review', page);
  await picture('review-whole', page, true);
  await page.getByRole('button', { name: 'Play it again' }).click();
  await playOn(page, async (_, of) => of.screenshot());
  await page.getByRole('heading', { name: 'Both times side by side' }).waitFor();
  await picture('again-whole', page, true);
  await openLesson(page, origin);
  await picture('example', page);
  await playOn(page, async (_, of) => of.screenshot());
  await page.getByRole('button', { name: /^First right/ }).click();
  await page.getByText('What else you could have done, on one scale').waitFor();
  await picture('deep-review-whole', page, true);
  await context.close();
}

/** Every part in all its states, part by part. */
async function shootParts(browser: Browser, look: string): Promise<void> {
  const page = await openParts(browser, LOOKS[look]!);
  for (const name of await partNames(page))
    await page.locator(`#${name}`).screenshot({ path: path.join(FOLDER, `part-${name}-${look}.png`) });
  await page.context().close();
  for (const name of ['sheet', 'sheet-long'] as const) {
    const sheet = await openParts(browser, LOOKS[look]!, [name]);
    await sheet.screenshot({ path: path.join(FOLDER, `part-${name}-${look}.png`) });
    await sheet.context().close();
  }
}

/** Two friends and a spectator on the same kind of device. */
async function friends(browser: Browser, origin: string, look: string, picture: Picture): Promise<void> {
  const [host, guest, spectator] = await Promise.all(
    ['host', 'guest', 'spectator'].map(async () => (await browser.newContext(LOOKS[look]!)).newPage()),
  );
  if (!host || !guest || !spectator) return;
  const link = await openFor(host, origin, 'Ines');
  await picture('lobby', host, true);
  await guest.goto(link);
  await guest.getByRole('button', { name: 'Sit here' }).first().waitFor();
  await picture('lobby-guest', guest, true);
  await joinAt(guest, link, 'Tomas');
  await guest.getByRole('button', { name: 'I am ready' }).click();
  await host.getByText('Tomas').first().waitFor();
  await picture('lobby-full', host, true);
  await host.getByRole('button', { name: 'I am ready' }).click();
  await passThree(host);
  await host.getByText('Your pass is face down.').waitFor();
  await picture('submitted', host);
  await spectator.goto(link);
  await spectator.getByRole('heading', { name: 'You are watching' }).waitFor();
  await passThree(guest);
  await spectator.getByText('First right: the tiles have moved.').waitFor();
  await picture('spectator', spectator);
  await Promise.all([host, guest, spectator].map((page) => page.context().close()));
}

async function playOn(page: Page, picture: Picture): Promise<void> {
  let now = await titleOf(page);
  while (!isClosed(now)) {
    if (now.includes(' for ')) await passThree(page);
    else if (now.startsWith('Second Charleston')) {
      await picture('vote', page);
      await page.getByRole('button', { name: 'Continue', exact: true }).click();
    } else if (now.startsWith('Courtesy: how many')) {
      await picture('courtesy', page);
      await page.getByRole('button', { name: '2', exact: true }).click();
    }
    now = await nextHeading(page, now);
    if (now.startsWith('First across')) await picture('arrived', page);
    if (now.startsWith('First left')) {
      await page.getByRole('radio', { name: '2' }).check({ force: true });
      await picture('blind', page);
    }
  }
}

mkdirSync(FOLDER, { recursive: true });
const wanted = process.argv.slice(2);
const server = await startPageServer();
const browser = await openChromium();
try {
  if (wanted.includes('pictures')) await writePictures(browser, server.origin);
  if (wanted.includes('expected')) await writeExpected(browser);
  for (const look of Object.keys(LOOKS)) {
    const all = wanted.length === 0 || wanted.includes(look);
    if (all || wanted.includes('parts')) await shootParts(browser, look);
    if (all) await shoot(browser, server.origin, look);
  }
} finally {
  await browser.close();
  await server.stop();
}
