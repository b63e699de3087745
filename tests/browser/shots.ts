// Writes a picture of every screen at three widths into shots/, so that a person can look.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { openChromium } from '../kit/chromium.ts';
import { startPageServer } from '../kit/page-server.ts';
import { dealAlone, fillTray, isClosed, nextHeading, passThree, rack, titleOf } from '../kit/player.ts';

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
  const page = await context.newPage();
  const picture = (name: string, whole = false) =>
    page.screenshot({ path: path.join(FOLDER, `${name}-${look}.png`), fullPage: whole });

  await page.goto(origin);
  await picture('front');
  await page.getByText('How the tables you open are set up').click();
  await picture('front-settings', true);
  await friends(page, origin, picture);

  await dealAlone(page, origin);
  await picture('first-right');
  await fillTray(page);
  await picture('first-right-full');
  await page.getByRole('button', { name: 'Card' }).click();
  await page.getByRole('heading', { name: 'House card' }).waitFor();
  await picture('card', true);
  await page.getByRole('button', { name: 'Card' }).click();
  await playOn(page, picture);
  await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
  await picture('review');
  await picture('review-whole', true);
  await context.close();
}

type Picture = (name: string, whole?: boolean) => Promise<Buffer>;

async function friends(page: Page, origin: string, picture: Picture): Promise<void> {
  await page.goto(origin);
  await page.getByLabel('Your name at the table').fill('Ines');
  await page.getByRole('button', { name: 'Open a table' }).click();
  await page.getByRole('button', { name: 'I am ready' }).waitFor();
  await picture('lobby', true);
  await page.getByRole('button', { name: 'I am ready' }).click();
  await rack(page).waitFor();
}

async function playOn(page: Page, picture: Picture): Promise<void> {
  let now = await titleOf(page);
  while (!isClosed(now)) {
    if (now.includes(' for ')) await passThree(page);
    else if (now.startsWith('Go on')) {
      await picture('vote');
      await page.getByRole('button', { name: 'Go on', exact: true }).click();
    } else if (now.startsWith('How many')) {
      await picture('courtesy');
      await page.getByRole('button', { name: '2', exact: true }).click();
    }
    now = await nextHeading(page, now);
    if (now.startsWith('First across')) await picture('arrived');
    if (now.startsWith('First left')) {
      await page.getByRole('radio', { name: '2' }).check({ force: true });
      await picture('blind');
    }
  }
}

mkdirSync(FOLDER, { recursive: true });
const wanted = process.argv.slice(2);
const server = await startPageServer();
const browser = await openChromium();
try {
  for (const look of Object.keys(LOOKS)) {
    if (wanted.length === 0 || wanted.includes(look)) await shoot(browser, server.origin, look);
  }
} finally {
  await browser.close();
  await server.stop();
}
