// The page on a slow phone: what it loads first, when it can be used, how soon a tap shows.
import { openChromium } from '../../../client/tools/chromium.ts';
import { dealAlone, rack } from '../../../client/tools/page-actions.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { firstLoadBytes } from '../../kit/first-load.ts';
import { throttle } from '../../kit/slow-phone.ts';
import type { Bench } from '../bench.ts';

const LOADS = 5;
const TAPS = 20;

export const bench: Bench = {
  summary:
    'Script up to a rack on the screen, time to a usable front page and to a tapped tile on a throttled Chromium.',
  async run() {
    const server = await startPageServer();
    const browser = await openChromium();
    try {
      const interactive: number[] = [];
      for (let load = 0; load < LOADS; load++) {
        const context = await browser.newContext({ viewport: { width: 360, height: 740 } });
        const page = await context.newPage();
        await throttle(page);
        const started = performance.now();
        await page.goto(server.origin, { waitUntil: 'commit' });
        // A trial click waits until the button is there, still, and takes the pointer.
        await page.getByRole('button', { name: 'Deal me in' }).click({ trial: true });
        interactive.push(performance.now() - started);
        await context.close();
      }
      const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
      await dealAlone(page, server.origin);
      await throttle(page);
      const tile = rack(page).locator('button:not([aria-label^="joker"])').first();
      const taps: number[] = [];
      for (let tap = 0; tap < TAPS; tap++) taps.push(await tile.evaluate(timeToShow));
      const load = firstLoadBytes();
      return {
        first_load_gzip_kb: kilobytes(load.all),
        front_page_gzip_kb: kilobytes(load.front),
        interactive_ms: Math.round(middle(interactive)),
        tap_ms: Math.round(middle(taps) * 10) / 10,
        tap_ms_longest: Math.round(Math.max(...taps) * 10) / 10,
      };
    } finally {
      await browser.close();
      await server.stop();
    }
  },
};

/** In the page: from the tap until the frame after the tile has changed. */
function timeToShow(tile: Element): Promise<number> {
  const started = performance.now();
  return new Promise((resolve) => {
    const seen = new MutationObserver(() => {
      seen.disconnect();
      requestAnimationFrame(() => resolve(performance.now() - started));
    });
    seen.observe(tile, { attributes: true });
    if (tile instanceof HTMLElement) tile.click();
  });
}

/** Kilobytes of 1,024 bytes, to the tenth. */
function kilobytes(bytes: number): number {
  return Math.round(bytes / 102.4) / 10;
}

function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
