// The editor of the largest card that is allowed, on a slow phone: how soon a key shows, the longest pause, the check.
import type { Page } from 'playwright-core';
import { openChromium } from '../../../client/tools/chromium.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { largestCard } from '../../kit/large-cards.ts';
import { throttle } from '../../kit/slow-phone.ts';
import type { Bench } from '../bench.ts';

/** What is typed: a hand that leaves as much open as one can, with which the card has too many ways, and a usual one. */
const TYPED = ['4a / 3b / 2c 3wind 2f 25', '3a 3a+1 / 2match 4e 2f 30'] as const;

/** So long after a change, in ms, the card is stored and what follows from the change has followed. */
const SETTLED_AFTER = 1_000;
/** Pause between two keys, in ms. */
const KEY_EVERY = 120;

export const bench: Bench = {
  summary:
    'A card of 300 hands with 19,440 ways in the editor of a throttled Chromium: time to open it, to a key on the screen, longest pauses, time to check it.',
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
      await page.evaluate(watch);
      await throttle(page);
      const opening = performance.now();
      await click(page, 'Open: Largest card');
      await page.waitForFunction(() => document.querySelector('.hand-row') !== null);
      const openMs = performance.now() - opening;
      await page.waitForFunction(() => document.querySelectorAll('.hand-row').length === 300);
      await page.waitForTimeout(SETTLED_AFTER);
      const opened = await page.evaluate(taken);
      await edit(page);
      const { keys, pauses } = await page.evaluate(taken);
      return {
        open_ms: Math.round(openMs),
        open_pause_ms_longest: longest(opened.pauses),
        keys: keys.length,
        key_ms: Math.round(middle(keys)),
        key_ms_longest: longest(keys),
        pause_ms_longest: longest(pauses),
        check_s: Math.round((await check(page)) / 100) / 10,
      };
    } finally {
      await browser.close();
      await server.stop();
    }
  },
};

/** Types hands, moves one, steps back and forth, renames the card and gives it another year. */
async function edit(page: Page): Promise<void> {
  // A hand in the middle of the card makes room for those that are typed.
  await click(page, 'Hand 6 of Section 12:');
  await page.waitForTimeout(SETTLED_AFTER);
  for (const text of TYPED) {
    await fill(page, '#typed-hand', '');
    await page.keyboard.type(text, { delay: KEY_EVERY });
    await page.waitForTimeout(SETTLED_AFTER);
  }
  for (const name of ['Hand up', 'Duplicate', 'Undo', 'Undo', 'Redo']) {
    await click(page, name);
    await page.waitForTimeout(KEY_EVERY);
  }
  await page.waitForTimeout(SETTLED_AFTER);
  await fill(page, '#card-year', '2031');
  await fill(page, '#card-name', 'Largest card');
  await page.keyboard.type(' at home', { delay: KEY_EVERY });
  await page.waitForTimeout(SETTLED_AFTER);
}

/** By a script that takes no time of the page's worth measuring, as looking for names does. */
async function click(page: Page, name: string): Promise<void> {
  await page.evaluate((wanted) => {
    const buttons = [...document.querySelectorAll('button')];
    const named = buttons.find((button) => (button.ariaLabel ?? button.textContent ?? '').startsWith(wanted));
    if (!named) throw new Error(`There is no button "${wanted}".`);
    named.click();
  }, name);
}

/** Leaves the field in focus. */
async function fill(page: Page, field: string, text: string): Promise<void> {
  await page.evaluate(
    ([wanted, next]) => {
      const input = document.querySelector<HTMLInputElement>(wanted);
      if (!input) throw new Error(`There is no field ${wanted}.`);
      input.focus();
      input.value = next;
      input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      input.dispatchEvent(new Event('change', { bubbles: true }));
      input.setSelectionRange(next.length, next.length);
    },
    [field, text] as const,
  );
}

/** Without the slower processor, which a worker does not have either. */
async function check(page: Page): Promise<number> {
  await click(page, 'Check the card');
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

/** In the page: what was noted since the last time. */
function taken(): Watched {
  const { keys = [], pauses = [] } = window.watched ?? {};
  return { keys: keys.splice(0), pauses: pauses.splice(0) };
}

function longest(values: readonly number[]): number {
  return Math.round(Math.max(0, ...values));
}

function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
