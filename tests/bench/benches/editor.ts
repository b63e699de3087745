// The editor of the largest card that is allowed, on a slow phone: how soon a key shows, the longest pause, the check.
import type { Page } from 'playwright-core';
import { openChromium } from '../../../client/tools/chromium.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { largestCard } from '../../kit/large-cards.ts';
import { throttle } from '../../kit/slow-phone.ts';
import type { Bench } from '../bench.ts';

/** What is typed: a hand that leaves as much open as one can, with which the card has too many ways, and a usual one. */
const TYPED = ['4a / 3b / 2c 3wind 2f 25', '3a 3a+1 / 2match 4e 2f 30'] as const;

/** The editor stores the card so long after the last change, in ms; then a pause would show. */
const STORED_AFTER = 800;

export const bench: Bench = {
  summary:
    'A card of 300 hands with 19,440 ways in the editor of a throttled Chromium: time to a key on the screen, longest pause, time to open it and to check it.',
  async run() {
    const server = await startPageServer();
    const browser = await openChromium();
    try {
      const page = await browser.newPage({ viewport: { width: 360, height: 740 }, serviceWorkers: 'block' });
      await page.goto(`${server.origin}/#my-cards`);
      await page.getByLabel('Get a card from a file').setInputFiles({
        name: 'largest.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify(largestCard('Largest card'))),
      });
      await page.getByRole('button', { name: 'Open: Largest card' }).waitFor();
      await throttle(page);
      await page.evaluate(watch);
      const opening = performance.now();
      await page.getByRole('button', { name: 'Open: Largest card' }).click();
      await page.getByText('300 hands in').waitFor();
      const openMs = performance.now() - opening;
      await page.evaluate(forget);
      await edit(page);
      const { keys, pauses } = await page.evaluate(found);
      const checkMs = await check(page);
      return {
        open_ms: Math.round(openMs),
        keys: keys.length,
        key_ms: Math.round(middle(keys)),
        key_ms_longest: Math.round(Math.max(...keys)),
        pause_ms_longest: Math.round(Math.max(0, ...pauses)),
        check_s: Math.round(checkMs / 100) / 10,
      };
    } finally {
      await browser.close();
      await server.stop();
    }
  },
};

/** Types hands, steps back and forth, moves and duplicates, renames the card and gives it another year. */
async function edit(page: Page): Promise<void> {
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  // A hand in the middle of the card makes room for those that are typed.
  await page.getByRole('button', { name: /^Hand 6 of Section 12:/ }).click();
  for (const text of TYPED) {
    await page.getByLabel('The hand in one line').fill('');
    await page.getByLabel('The hand in one line').focus();
    await page.keyboard.type(text, { delay: 60 });
    await page.waitForTimeout(STORED_AFTER);
  }
  await button('Hand up').click();
  for (const name of ['Undo', 'Undo', 'Redo']) await button(name).click();
  await page.waitForTimeout(STORED_AFTER);
  await page.getByLabel('Name of the card').focus();
  await page.keyboard.type(' at home', { delay: 60 });
  await page.waitForTimeout(STORED_AFTER);
}

/** Without the slower processor, which a worker does not have either. */
async function check(page: Page): Promise<number> {
  await page.getByRole('button', { name: 'Check the card' }).click();
  const started = performance.now();
  await page.getByText('From a dealt rack the closest hand is').waitFor({ timeout: 120_000 });
  return performance.now() - started;
}

interface Watched {
  readonly keys: number[];
  readonly pauses: number[];
}

declare global {
  interface Window {
    watched?: Watched;
  }
}

/** In the page: times each key until the frame after it is drawn, and notes tasks longer than a twentieth of a second. */
function watch(): void {
  const watched: Watched = { keys: [], pauses: [] };
  window.watched = watched;
  const channel = new MessageChannel();
  let pressed: number[] = [];
  channel.port1.onmessage = () => {
    for (const at of pressed) watched.keys.push(performance.now() - at);
    pressed = [];
  };
  document.addEventListener(
    'keydown',
    ({ timeStamp }) => {
      pressed.push(timeStamp);
      requestAnimationFrame(() => channel.port2.postMessage(null));
    },
    { capture: true },
  );
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) watched.pauses.push(duration);
  }).observe({ type: 'longtask' });
}

function forget(): void {
  window.watched?.keys.splice(0);
  window.watched?.pauses.splice(0);
}

function found(): Watched {
  return window.watched ?? { keys: [], pauses: [] };
}

function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
