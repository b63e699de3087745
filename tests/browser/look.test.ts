// The look of the parts is that of the pictures stored beside this test: a change is seen, and made on purpose.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import pixelmatch from 'pixelmatch';
import type { Browser } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openChromium } from '../../client/tools/chromium.ts';
import { EXPECTED, takeShots } from '../../client/tools/expected-shots.ts';
import { openParts, partNames } from '../../client/tools/parts-page.ts';
import { axeFindings } from '../kit/accessibility-checks.ts';

/** Where a picture that differs is put, with what differs in red. */
const DIFFERING = path.resolve(import.meta.dirname, '../../shots/differing');

/** Edges that another build of the browser smooths otherwise are not counted; this much besides them is let through. */
const SHADE = 0.15;
const SHARE = 0.002;

let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser?.close());

describe('the look of the parts', () => {
  it('each part looks as in its stored picture; on purpose another look is stored by `npm run shots -- expected`', async () => {
    const taken: string[] = [];
    const differing: string[] = [];
    let repainted: number | null = null;
    await takeShots(browser, async ({ name, take }, page) => {
      taken.push(name);
      const expected = readFileSync(path.join(EXPECTED, name));
      const now = await take();
      const difference = differenceOf(expected, now);
      if (difference.share > SHARE) {
        differing.push(`${name}: ${difference.words}`);
        mkdirSync(DIFFERING, { recursive: true });
        writeFileSync(path.join(DIFFERING, name), now);
        if (difference.picture) writeFileSync(path.join(DIFFERING, `red-${name}`), difference.picture);
      }
      if (name !== 'table-full-1366.png') return;
      // The test itself is tested: a space that is two pixels wider is seen.
      await page.addStyleTag({ content: ':root { --space-6: 0.5rem }' });
      repainted = differenceOf(expected, await take()).share;
    });
    expect(differing).toEqual([]);
    expect(repainted).toBeGreaterThan(SHARE);
    expect(taken.toSorted()).toEqual(readdirSync(EXPECTED).toSorted());
  }, 120_000);
});

/** Parts with states that no walk through the screens comes by; the whole card and reviews are looked at there. */
const STATES = [
  ...['controls', 'connection', 'steps', 'seats', 'strip'],
  ...['table-rejected', 'table-blind', 'table-vote', 'table-courtesy', 'lobby-guest', 'review-working'],
];

describe('the page of all parts', () => {
  it('has no serious finding of axe in the states that seldom come up', async () => {
    const page = await openParts(browser, { viewport: { width: 820, height: 1180 } }, STATES);
    expect(await partNames(page)).toEqual(expect.arrayContaining(STATES));
    // Elsewhere each part is alone on its page, so that its places have their names to themselves.
    expect(await axeFindings(page, { leftOut: ['duplicate-id-aria'] })).toEqual([]);
    await page.context().close();
  }, 60_000);
});

describe('a step whose answer is new', () => {
  it.each([360, 390])('is marked in two words on one line, on a page %i px wide', async (width) => {
    const page = await openParts(browser, { viewport: { width, height: 844 } }, ['strip']);
    const marks = page.locator('.new-answer');
    await marks.first().waitFor();
    const lines = await marks.evaluateAll((all) =>
      all.map((mark) => {
        const range = document.createRange();
        range.selectNodeContents(mark);
        const box = mark.closest('button')!.getBoundingClientRect();
        return [range.getClientRects().length, mark.getBoundingClientRect().right <= box.right];
      }),
    );
    expect(lines.length).toBeGreaterThan(4);
    expect(lines.every(([count, isInside]) => count === 1 && isInside)).toBe(true);
    await page.context().close();
  });
});

interface Difference {
  /** Of all pixels; 1 where even the size is another. */
  readonly share: number;
  readonly words: string;
  readonly picture: Buffer | null;
}

function differenceOf(expected: Buffer, now: Buffer): Difference {
  const [one, other] = [PNG.sync.read(expected), PNG.sync.read(now)];
  const { width, height } = one;
  if (other.width !== width || other.height !== height)
    return {
      share: 1,
      words: `${width} × ${height} has become ${other.width} × ${other.height}`,
      picture: null,
    };
  const red = new PNG({ width, height });
  const count = pixelmatch(one.data, other.data, red.data, width, height, { threshold: SHADE });
  return { share: count / (width * height), words: `${count} pixels differ`, picture: PNG.sync.write(red) };
}
