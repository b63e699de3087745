// The three small pictures of the README, always of the same deal: a table, a phone, a review.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { fillTray, passThree, playToClose, rack, withoutBotPauses } from './page-actions.ts';

const FOLDER = path.resolve(import.meta.dirname, '../../client/pictures');

/** A round in the page, so that nothing but the seed decides what is seen. */
const DEAL = `/#deal=${'e'.repeat(64)}.1.0`;

export async function writePictures(browser: Browser, origin: string): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const open = async (width: number, height: number, scale = 0.7) => {
    // Scaled down, they stay small enough to be stored with the code.
    const context = await browser.newContext({
      viewport: { width, height },
      deviceScaleFactor: scale,
      reducedMotion: 'reduce',
    });
    await withoutBotPauses(context);
    const page = await context.newPage();
    await page.goto(`${origin}${DEAL}`);
    await rack(page).waitFor();
    const picture = async (name: string) => {
      await page.mouse.move(0, 0);
      await page.evaluate(() => window.scrollTo(0, 0));
      await page.screenshot({ path: path.join(FOLDER, `${name}.png`) });
      await context.close();
    };
    return { page, picture };
  };

  const table = await open(1240, 800, 0.6);
  await passThree(table.page);
  await table.page.getByRole('heading', { name: /^First across/ }).waitFor();
  await fillTray(table.page);
  await table.picture('table');

  const phone = await open(360, 740);
  await fillTray(phone.page);
  await phone.picture('phone');

  const review = await open(1080, 1000);
  await playToClose(review.page);
  // Until every choice has been played on, the top of the page says what is still missing.
  await review.page.getByRole('heading', { name: 'Luck and choices' }).waitFor({ timeout: 180_000 });
  await review.picture('review');
}
