// Every size, keyboard only, touch, large text, and an automatic look for barriers on each screen.
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserSuite, DESKTOP, PHONE, TABLET } from '../kit/browser-suite.ts';
import {
  dealAlone,
  fillTray,
  isClosed,
  nextHeading,
  openFor,
  passButton,
  passThree,
  playToClose,
  rack,
  tileLabels,
  titleOf,
  tray,
} from '../kit/player.ts';

const suite = browserSuite();

/** Serious and critical findings, as rule and place. */
async function barriers(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
}

/** How far the page can be scrolled sideways, in pixels. */
function overflow(page: Page): Promise<number> {
  return page.locator('html').evaluate((html) => html.scrollWidth - html.clientWidth);
}

/** Names of visible buttons and tiles smaller than 44 × 44 px. */
function smallTargets(page: Page): Promise<string[]> {
  return page
    .locator('button, a, summary, select, input:not([type=radio], [type=checkbox]), .choice')
    .evaluateAll((all) =>
      all.flatMap((element) => {
        const { width, height } = element.getBoundingClientRect();
        const visible = width > 0 && height > 0;
        // Half a pixel of rounding is no smaller target.
        return visible && (width < 43.5 || height < 43.5)
          ? [`${element.tagName} ${element.textContent} ${width} × ${height}`]
          : [];
      }),
    );
}

describe.each([
  ['phone', PHONE],
  ['tablet', TABLET],
  ['desktop', DESKTOP],
])('on a %s', (name, viewport) => {
  it('every screen fits, has large targets, and shows axe no serious barrier', async () => {
    const page = await suite.newPage({ viewport, colorScheme: name === 'tablet' ? 'dark' : 'light' });
    const look = async (screen: string) => {
      // The desktop shows the same marks and colours as the phone; axe looks at light and dark once each.
      const found = name === 'desktop' ? [] : await barriers(page);
      expect([screen, await overflow(page), await smallTargets(page), found]).toEqual([screen, 0, [], []]);
    };
    await page.goto(suite.origin());
    await page.getByText('How the tables you open are set up').click();
    await look('front');
    await openFor(page, suite.origin(), 'Ines');
    await look('lobby');
    await dealAlone(page, suite.origin());
    await fillTray(page);
    await look('table');
    await passThree(page);
    for (let now = await nextHeading(page, 'First right'); !isClosed(now); ) {
      if (/^First left|^Go on|^How many/.test(now)) await look(now);
      now = await onward(page, now);
    }
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    await page.getByText('The numbers').first().click();
    await page.getByText('Was the deal fair?').click();
    await look('review');
  });
});

async function onward(page: Page, now: string): Promise<string> {
  if (now.startsWith('Go on')) await page.getByRole('button', { name: 'Stop here' }).click();
  else if (now.startsWith('How many')) await page.getByRole('button', { name: '0', exact: true }).click();
  else await passThree(page);
  return nextHeading(page, now);
}

describe('with large text or a narrow page', () => {
  it('nothing is cut off sideways at 320 px', async () => {
    const page = await suite.newPage({ viewport: { width: 320, height: 640 } });
    await page.goto(suite.origin());
    expect(await overflow(page)).toBe(0);
    await dealAlone(page, suite.origin());
    expect(await overflow(page)).toBe(0);
    await playToClose(page);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    expect(await overflow(page)).toBe(0);
  });

  it('text at 200 % still fits a tablet', async () => {
    const page = await suite.newPage({ viewport: TABLET });
    await dealAlone(page, suite.origin());
    await page.locator('html').evaluate((html) => {
      html.style.fontSize = '36px';
    });
    expect(await overflow(page)).toBe(0);
    await fillTray(page);
    await passButton(page).click();
    await nextHeading(page, 'First right');
  });
});

describe('by keyboard alone', () => {
  it('plays from the front page to the review', async () => {
    const page = await suite.newPage();
    await page.goto(suite.origin());
    const { keyboard } = page;
    await tabTo(page, 'Deal me in');
    await keyboard.press('Enter');
    await rack(page).waitFor();
    let now = await titleOf(page);
    while (!isClosed(now)) {
      if (now.startsWith('Go on')) {
        await tabTo(page, 'Go on');
        await keyboard.press('Enter');
      } else if (now.startsWith('How many')) {
        await tabTo(page, '1');
        await keyboard.press('Enter');
      } else {
        await passByKeys(page);
      }
      now = await nextHeading(page, now);
    }
    await tabTo(page, 'Next deal');
    await keyboard.press('Enter');
    await rack(page).waitFor();
  });

  it('keys 1 to 3 take a tile back, Shift and an arrow move one', async () => {
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

/** Presses Tab until the control with this name has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  const focused = page.locator(':focus');
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press('Tab');
    const words = (await focused.count()) > 0 ? await focused.textContent() : '';
    const label = (await focused.count()) > 0 ? await focused.getAttribute('aria-label') : '';
    if ((label || words) === name) return;
  }
  throw new Error(`"${name}" cannot be reached by Tab.`);
}

/** Arrow keys and Enter until the tray is full, then Tab to the pass button. */
async function passByKeys(page: Page): Promise<void> {
  await tabToRack(page);
  await page.keyboard.press('Home');
  const empty = tray(page).getByText('empty place');
  for (let tiles = 0; (await empty.count()) > 0 && tiles < 14; tiles++) {
    const label = await page.locator(':focus').getAttribute('aria-label');
    if (!label?.startsWith('joker')) await page.keyboard.press('Enter');
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
