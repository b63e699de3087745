// A few pictures of parts that are stored with the code: a test draws them again, so that every change of the look is noticed.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { blockFont } from './block-font.ts';
import { openParts } from './parts-page.ts';

export const EXPECTED = path.resolve(import.meta.dirname, '../../tests/browser/expected');

/** The width that each is drawn at, in pixels, and the part. */
const PARTS = [
  [360, 'tiles'],
  [360, 'steps'],
  [360, 'table-full'],
  [360, 'strip'],
  [820, 'seats'],
  [1366, 'table-full'],
] as const;

/**
 * What a machine draws in its own way is left out: letters are boxes of one size, measured without rounding to pixels (as
 * one build of the browser does and another does not), and the browser's own marks are hidden.
 * What is left is the page's: places, spaces, corners, colors, drawings.
 */
const SAME_EVERYWHERE = `
  @font-face { font-family: blocks; src: url(${blockFont()}); font-weight: 100 900 }
  *, *::before, *::after { font-family: blocks !important; font-synthesis: none !important; text-rendering: geometricPrecision !important; caret-color: transparent !important }
  select, input, summary::marker { visibility: hidden }
`;

export interface Shot {
  readonly name: string;
  readonly take: () => Promise<Buffer>;
}

/** Each picture as it looks now. */
export async function takeShots(
  browser: Browser,
  use: (shot: Shot, page: Page) => Promise<void>,
): Promise<void> {
  const names = [...new Set(PARTS.map(([, name]) => name))];
  const page = await openParts(browser, {}, names);
  await page.addStyleTag({ content: SAME_EVERYWHERE });
  for (const [width, name] of PARTS) {
    await page.setViewportSize({ width, height: 900 });
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    const take = () => page.locator(`#${name}`).screenshot({ animations: 'disabled' });
    await use({ name: `${name}-${width}.png`, take }, page);
  }
  await page.context().close();
}

export async function writeExpected(browser: Browser): Promise<void> {
  mkdirSync(EXPECTED, { recursive: true });
  for (const file of readdirSync(EXPECTED)) rmSync(path.join(EXPECTED, file));
  await takeShots(browser, async ({ name, take }) => writeFileSync(path.join(EXPECTED, name), await take()));
}
