// A narrow page, large text, the keyboard alone, touch and drag.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  closeSheet,
  dealAlone,
  fillTray,
  isClosed,
  nextHeading,
  onward,
  openSheet,
  passButton,
  playToClose,
  rack,
  tileLabels,
  titleOf,
  tray,
} from '../../client/tools/page-actions.ts';
import { horizontalOverflow } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE, TABLET } from '../kit/browser-suite.ts';
import { isInSight } from '../kit/in-sight.ts';

const suite = browserSuite();

function firstTile(page: Page) {
  return rack(page).getByRole('button').first();
}

describe('with large text or a narrow page', () => {
  it('nothing is cut off sideways on a page 320 px wide', async () => {
    const page = await suite.newPage({ viewport: { width: 320, height: 640 } });
    await page.goto(suite.origin());
    expect(await horizontalOverflow(page)).toBe(0);
    await dealAlone(page, suite.origin());
    expect(await horizontalOverflow(page)).toBe(0);
    await playToClose(page);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    expect(await horizontalOverflow(page)).toBe(0);
  });

  it.each([
    ['tablet', TABLET],
    ['phone', PHONE],
  ])('text at 200 %%, chosen in the settings, fits a %s and stays chosen', async (_, viewport) => {
    const page = await suite.newPage({ viewport });
    await page.goto(suite.origin());
    const sheet = await openSheet(page, 'Settings');
    await sheet.getByRole('radio', { name: '200%' }).check({ force: true });
    expect(await horizontalOverflow(page)).toBe(0);
    await closeSheet(page);
    expect(await horizontalOverflow(page)).toBe(0);
    await dealAlone(page, suite.origin());
    const size = await page
      .locator('html')
      .evaluate((html) => Number.parseFloat(getComputedStyle(html).fontSize));
    expect(size).toBeGreaterThanOrEqual(34);
    expect(await horizontalOverflow(page)).toBe(0);
    await fillTray(page);
    await passButton(page).click();
    await nextHeading(page, 'First right');
    await playToClose(page);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    expect(await horizontalOverflow(page)).toBe(0);
  });
});

/** The window, and how large the text is, in percent. */
const LARGER_TEXT = [
  [390, 844, 150],
  [360, 740, 150],
  [390, 844, 125],
  [844, 390, 125],
  [1280, 800, 125],
] as const;

describe('at the table', () => {
  it('the button that passes and the first tiles are in one view where text is larger', async () => {
    const page = await suite.newPage({ viewport: { width: 390, height: 844 } });
    await dealAlone(page, suite.origin());
    const inView = async () => [await isInSight(passButton(page)), await isInSight(firstTile(page))];
    for (const [width, height, text] of LARGER_TEXT) {
      await page.setViewportSize({ width, height });
      await page.locator('html').evaluate((html, size) => html.setAttribute('data-text', size), `${text}`);
      expect([width, text, ...(await inView())]).toEqual([width, text, true, true]);
      expect(await horizontalOverflow(page)).toBe(0);
    }
  });
});

describe('with text at 200 % on a phone', () => {
  it('the button that passes and a whole row of the rack are in one view at each pass, blind tiles asked for or not', async () => {
    const page = await suite.newPage({ viewport: { width: 390, height: 844 } });
    await dealAlone(page, suite.origin());
    await page.locator('html').evaluate((html) => html.setAttribute('data-text', '200'));
    let now = await titleOf(page);
    let passes = 0;
    while (!isClosed(now)) {
      // A courtesy may ask for no tile.
      if ((await passButton(page).count()) > 0) {
        passes++;
        await page.evaluate(() => window.scrollTo(0, 0));
        const seen = [await isInSight(passButton(page)), await isRowInSight(page)];
        expect([now, ...seen]).toEqual([now, true, true]);
      }
      now = await onward(page, now, { ask: 1, go: true });
    }
    expect(passes).toBeGreaterThanOrEqual(3);
    expect(await horizontalOverflow(page)).toBe(0);
  });
});

/** Whether every tile that stands beside the first one is in the window. */
async function isRowInSight(page: Page): Promise<boolean> {
  const tiles = await rack(page).getByRole('button').all();
  const boxes = await Promise.all(tiles.map(async (tile) => ({ tile, box: await tile.boundingBox() })));
  // The tile under the pointer stands a little higher.
  const top = boxes[0]?.box?.y ?? 0;
  const row = boxes.filter(({ box }) => box !== null && Math.abs(box.y - top) < box.height / 2);
  const seen = await Promise.all(row.map(({ tile }) => isInSight(tile)));
  return row.length > 1 && seen.every(Boolean);
}

describe('by keyboard alone', () => {
  it('a round can be played by keyboard alone, from the front page to the review', async () => {
    const page = await suite.newPage();
    await page.goto(suite.origin());
    const { keyboard } = page;
    await tabTo(page, 'Deal me in');
    await keyboard.press('Enter');
    await rack(page).waitFor();
    let now = await titleOf(page);
    while (!isClosed(now)) {
      if (now.startsWith('Second Charleston')) {
        await tabTo(page, 'Continue');
        await hearsPresses(page);
        await keyboard.press('Enter');
      } else if (now.startsWith('Courtesy: how many')) {
        await tabTo(page, '1');
        await hearsPresses(page);
        await keyboard.press('Enter');
      } else {
        await passByKeys(page);
      }
      now = await nextHeading(page, now);
    }
    await tabTo(page, 'Next deal');
    await hearsPresses(page);
    await keyboard.press('Enter');
    await rack(page).waitFor();
  });

  it('keys 1 to 3 take a tile back, and Shift with an arrow moves one', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    await fillTray(page);
    await page.keyboard.press('2');
    expect(await tray(page).getByRole('button').count()).toBe(2);
    const before = await tileLabels(page);
    await rack(page).getByRole('button').last().focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Shift+ArrowRight');
    const after = await tileLabels(page);
    expect(after.slice(0, 2)).toEqual([before[1], before[0]]);
    expect(await page.getByRole('radio', { name: 'My own' }).isChecked()).toBe(true);
  });
});

/** Enter is heard no sooner than a tap on a question or a review that has just come. */
async function hearsPresses(page: Page): Promise<void> {
  await page.locator(':is(.question, .review)[aria-disabled="true"]').waitFor({ state: 'detached' });
}

/** Asked in one go: between two questions what has the focus may be drawn anew. */
function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const focused = document.activeElement;
    return focused?.getAttribute('aria-label') || focused?.textContent || '';
  });
}

/** Presses Tab until the control with this name has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press('Tab');
    if ((await focusedName(page)) === name) return;
  }
  throw new Error(`"${name}" cannot be reached by Tab.`);
}

/** Arrow keys and Enter until the tray is full, then Tab to the pass button. */
async function passByKeys(page: Page): Promise<void> {
  await tabToRack(page);
  await page.keyboard.press('Home');
  const empty = tray(page).getByText('empty place');
  for (let tiles = 0; (await empty.count()) > 0 && tiles < 14; tiles++) {
    if (!(await focusedName(page)).startsWith('joker')) await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowRight');
  }
  await tabTo(page, (await passButton(page).textContent()) ?? '');
  await page.keyboard.press('Enter');
}

async function tabToRack(page: Page): Promise<void> {
  const inRack = rack(page).locator(':focus');
  for (let presses = 0; presses < 60 && (await inRack.count()) === 0; presses++)
    await page.keyboard.press('Tab');
}

describe('by touch and drag', () => {
  it('a tap puts a tile into the tray, a drag too, and a drag along the rack changes the order', async () => {
    const page = await suite.newPage({ viewport: PHONE, hasTouch: true });
    await dealAlone(page, suite.origin());
    await rack(page).locator('button:not([aria-label^="joker"])').first().tap();
    expect(await tray(page).getByRole('button').count()).toBe(1);
    const second = rack(page).locator('button[aria-pressed="false"]:not([aria-label^="joker"])').first();
    await second.dragTo(tray(page));
    expect(await tray(page).getByRole('button').count()).toBe(2);
    const before = await tileLabels(page);
    const tiles = rack(page).getByRole('button');
    await tiles.nth(6).dragTo(tiles.nth(4), { targetPosition: { x: 4, y: 10 } });
    const after = await tileLabels(page);
    expect(after[4]).toBe(before[6]);
    expect(after.toSorted()).toEqual(before.toSorted());
  });
});
