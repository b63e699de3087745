// The page on a slow phone: what it loads first, when it can be used, how soon a tap shows, how smoothly tiles slide.
import type { Browser, Page } from 'playwright-core';
import { openChromium } from '../../../client/tools/chromium.ts';
import {
  dealAlone,
  fillTray,
  nextHeading,
  passButton,
  rack,
  titleOf,
} from '../../../client/tools/page-actions.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { firstLoadBytes } from '../../kit/first-load.ts';
import { throttle } from '../../kit/slow-phone.ts';
import type { Bench } from '../bench.ts';

const PHONE = { width: 360, height: 740 } as const;
const LOADS = 5;
const TAPS = 20;
const PASSES = 3;
/** From the tap on the button until the arrivals stand on the rack. */
const SLIDE_MS = 1600;

const MOVING_BOX = `<style>
  @keyframes slide { to { transform: translateX(300px) } }
  div { width: 40px; height: 60px; background: green; animation: slide 1s infinite }
</style><div></div>`;

export const bench: Bench = {
  summary:
    'Script up to a rack, requests of a first visit, time to a usable front page and to a tapped tile, the longest frame while a pass slides and on an empty page, on a throttled Chromium.',
  async run() {
    const server = await startPageServer();
    const browser = await openChromium();
    try {
      const interactive: number[] = [];
      for (let load = 0; load < LOADS; load++) {
        const context = await browser.newContext({ viewport: PHONE });
        const page = await context.newPage();
        await throttle(page);
        const started = performance.now();
        await page.goto(server.origin, { waitUntil: 'commit' });
        // A trial click waits until the button is there, still, and takes the pointer.
        await page.getByRole('button', { name: 'Deal me in' }).click({ trial: true });
        interactive.push(performance.now() - started);
        await context.close();
      }
      const page = await browser.newPage({ viewport: PHONE });
      await dealAlone(page, server.origin);
      await throttle(page);
      const tile = rack(page).locator('button:not([aria-label^="joker"])').first();
      const taps: number[] = [];
      for (let tap = 0; tap < TAPS; tap++) taps.push(await tile.evaluate(timeToShow));
      const frames: number[] = [];
      for (let pass = 0; pass < PASSES; pass++) frames.push(await longestFrameOfPass(page));
      const idle: number[] = [];
      for (let time = 0; time < PASSES; time++) idle.push(await longestFrameOfNothing(browser));
      const load = firstLoadBytes();
      return {
        first_load_gzip_kb: kilobytes(load.all),
        front_page_gzip_kb: kilobytes(load.front),
        requests: await requestsOfFirstVisit(browser, server.origin),
        interactive_ms: Math.round(middle(interactive)),
        tap_ms: Math.round(middle(taps) * 10) / 10,
        tap_ms_longest: Math.round(Math.max(...taps) * 10) / 10,
        longest_frame_ms: Math.round(middle(frames) * 10) / 10,
        longest_frame_of_empty_page_ms: Math.round(middle(idle) * 10) / 10,
      };
    } finally {
      await browser.close();
      await server.stop();
    }
  },
};

/** Everything that a first visit fetches, with what is stored for times without a network. */
async function requestsOfFirstVisit(browser: Browser, origin: string): Promise<number> {
  const context = await browser.newContext({ viewport: PHONE });
  const asked = new Set<string>();
  context.on('request', (request) => {
    if (!request.url().includes('/api/')) asked.add(request.url());
  });
  const page = await context.newPage();
  await page.goto(origin);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.waitForLoadState('networkidle');
  await context.close();
  return asked.size;
}

/**
 * The longest time between two frames from the tap that passes until the tiles that came stand on the rack. Nothing is
 * looked for in the page meanwhile: that would be work of the bench in the page's own frames.
 */
async function longestFrameOfPass(page: Page): Promise<number> {
  await fillTray(page);
  const before = await titleOf(page);
  await passButton(page).scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await passButton(page).boundingBox())!;
  const measured = page.evaluate(framesFor, SLIDE_MS);
  await page.mouse.click(x + width / 2, y + height / 2);
  const longest = await measured;
  await nextHeading(page, before);
  return longest;
}

/** What this browser, drawing without a graphics card, needs for a page of its own with one moving box and no script. */
async function longestFrameOfNothing(browser: Browser): Promise<number> {
  const page = await browser.newPage({ viewport: PHONE });
  await page.setContent(MOVING_BOX);
  await throttle(page);
  const longest = await page.evaluate(framesFor, SLIDE_MS);
  await page.close();
  return longest;
}

/** In the page. */
async function framesFor(ms: number): Promise<number> {
  const started = performance.now();
  let [last, longest] = [started, 0];
  while (last - started < ms) {
    const now = await new Promise<number>(requestAnimationFrame);
    longest = Math.max(longest, now - last);
    last = now;
  }
  return longest;
}

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
