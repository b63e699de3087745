// Somebody plays alone in a real Chromium that analyzes itself: the seconds from the close to the last deep answer.
import type { Browser, Page } from 'playwright-core';
import { openChromium } from '../../../client/tools/chromium.ts';
import { dealAlone, isClosed, onward, rack, titleOf } from '../../../client/tools/page-actions.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';

/** Whoever plays, at a table of the server or at one in the page, which is cut off from it. */
const TABLES = {
  page: (page: Page, origin: string) => dealAlone(page, origin),
  async offline(page: Page, origin: string) {
    await page.goto(`${origin}/#deal=${'4'.repeat(64)}.1.0`);
    await rack(page).waitFor();
    // The worker and what it needs are there before the network goes.
    await page.waitForLoadState('networkidle');
    await page.context().setOffline(true);
  },
} as const;

export interface PageSeconds {
  readonly page: number;
  readonly offline: number;
}

/** By a server that gives first answers alone, so that the page makes all the others. */
export async function secondsInPage(pace: number): Promise<PageSeconds> {
  const server = await startPageServer({ REVIEW_DEPTH: 'quick' });
  const browser = await openChromium();
  try {
    const page = await secondsAt('page', { browser, origin: server.origin, pace });
    return { page, offline: await secondsAt('offline', { browser, origin: server.origin, pace }) };
  } finally {
    await browser.close();
    await server.stop();
  }
}

interface Around {
  readonly browser: Browser;
  readonly origin: string;
  readonly pace: number;
}

async function secondsAt(table: keyof typeof TABLES, { browser, origin, pace }: Around): Promise<number> {
  const context = await browser.newContext();
  // As a device says that has a core to spare, whatever this machine has.
  await context.addInitScript(() => Object.defineProperty(navigator, 'hardwareConcurrency', { value: 4 }));
  const page = await context.newPage();
  page.setDefaultTimeout(240_000);
  await TABLES[table](page, origin);
  for (let now = await titleOf(page); !isClosed(now); ) {
    await page.waitForTimeout(pace);
    now = await onward(page, now, { ask: 1, go: true });
  }
  const closed = performance.now();
  await page.getByRole('heading', { name: 'Your wins in 100 games, step by step' }).waitFor();
  await page.locator('.analysis-progress').waitFor({ state: 'detached' });
  const seconds = (performance.now() - closed) / 1000;
  await context.close();
  return seconds;
}
