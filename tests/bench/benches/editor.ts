// The editor of the largest card that is allowed, on a slow phone: how soon a key shows, the longest pause, the check.
import type { Browser, Page } from 'playwright-core';
import { z } from 'zod';
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

/** The best of so many rounds is told: other work on the machine only adds. */
const ROUNDS = 3;

interface Round {
  /** The longest pause while the card is opened, and while it is edited, in ms. */
  readonly open: number;
  readonly pause: number;
  /** Milliseconds from each key to the screen. */
  readonly keys: readonly number[];
}

export const bench: Bench = {
  summary:
    'A card of 300 hands with 19,440 ways in the editor of a throttled Chromium: longest pauses, time to a key on the screen, time to check it.',
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
      const pauseOf = pauses(browser, page);
      const rounds: Round[] = [];
      while (rounds.length < ROUNDS) {
        const open = await pauseOf(async () => {
          await click(page, 'Open: Largest card');
          await page.waitForFunction(() => document.querySelectorAll('.hand-row').length === 300);
          await page.waitForTimeout(SETTLED_AFTER);
        });
        const pause = await pauseOf(() => edit(page));
        rounds.push({ open, pause, keys: await page.evaluate(taken) });
        if (rounds.length < ROUNDS) await click(page, 'All my cards');
        await page.waitForTimeout(SETTLED_AFTER);
      }
      const best = (of: (round: Round) => number) => Math.round(Math.min(...rounds.map(of)));
      return {
        open_pause_ms_longest: best(({ open }) => open),
        pause_ms_longest: best(({ pause }) => pause),
        keys: rounds[0]!.keys.length,
        key_ms: best(({ keys }) => middle(keys)),
        key_ms_longest: best(({ keys }) => Math.max(...keys)),
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
  await fill(page, '#card-name', 'Largest card');
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

declare global {
  interface Window {
    /** Milliseconds from each key to the frame after it is drawn. */
    keyTimes?: number[];
  }
}

/** In the page: times each key until the frame after it is drawn. */
function watch(): void {
  const times: number[] = [];
  window.keyTimes = times;
  const channel = new MessageChannel();
  let pressed: number[] = [];
  channel.port1.onmessage = () => {
    for (const at of pressed) times.push(performance.now() - at);
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
}

function taken(): number[] {
  return window.keyTimes?.splice(0) ?? [];
}

const traceSchema = z.object({
  traceEvents: z.array(
    z.object({
      name: z.string(),
      pid: z.number(),
      tid: z.number(),
      /** Processor time in microseconds. */
      tdur: z.number().optional(),
      args: z.object({ name: z.unknown().optional() }).optional(),
    }),
  ),
});

/**
 * The longest that one task kept the page's own thread busy during `run`, in milliseconds of its processor: what
 * somebody waits for on a machine that does nothing else.
 */
function pauses(browser: Browser, page: Page) {
  return async (run: () => Promise<unknown>): Promise<number> => {
    await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline'] });
    await run();
    const { traceEvents } = traceSchema.parse(JSON.parse((await browser.stopTracing()).toString()));
    const threads = traceEvents.filter(
      ({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain',
    );
    const own = new Set(threads.map(({ pid, tid }) => `${pid}/${tid}`));
    const tasks = traceEvents.filter(
      ({ name, pid, tid }) => name.endsWith('RunTask') && own.has(`${pid}/${tid}`),
    );
    return Math.round(tasks.reduce((most, { tdur = 0 }) => Math.max(most, tdur), 0) / 1000);
  };
}

function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
