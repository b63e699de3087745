// One player and three bots, from the front page to the review, in a real browser.
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import {
  dealAlone,
  fillTray,
  heading,
  isClosed,
  nextHeading,
  onward,
  passableTiles,
  passButton,
  passThree,
  rack,
  titleOf,
  tray,
} from '../../client/tools/page-actions.ts';
import { checkDealFile, dealFileSchema } from '../../shared-engine/protocol/deal-file.ts';
import { giveAnswers, openClosedRound } from '../kit/arriving-answers.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { isInSight } from '../kit/in-sight.ts';
import { screenContradictions } from '../kit/screen-contradictions.ts';

const suite = browserSuite({ REVIEW_DEPTH: 'deep' });

describe('practicing alone', () => {
  it('D3 one tap deals, a whole Charleston ends with a private review of every choice, and East moves on', async () => {
    const page = await suite.newPage({ analyzes: true });
    await dealAlone(page, suite.origin());
    const dealt = await page.locator('.last-event').textContent();
    const met: string[] = [];
    for (let now = await titleOf(page); !isClosed(now); now = await onward(page, now, { ask: 2, go: true })) {
      met.push(now);
      if (now.startsWith('First left'))
        await page
          .getByRole('group', { name: /^Pass blind/ })
          .getByRole('radio', { name: '2' })
          .check();
      if (now.startsWith('Second Charleston')) {
        await page.getByText('What has been passed so far').click();
        await page.locator('.history').getByText('and two blind').waitFor();
      }
      if (now.startsWith('Courtesy')) await page.evaluate(() => window.scrollTo(0, 120));
    }
    // However far down the table was, the review is read from its top.
    await page.locator('h1:focus').waitFor();
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    expect(met.slice(0, 4).map((title) => title.split('.')[0])).toEqual([
      'First right',
      'First across',
      'First left',
      'Second Charleston?',
    ]);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    const steps = page.getByRole('listitem').getByRole('button', { pressed: true });
    expect(await steps.count()).toBe(1);
    const strip = page.locator('.choice-strip button');
    for (const button of await strip.all()) {
      await button.click();
      const name = (await button.locator('.choice-name').textContent()) ?? '';
      await page.getByRole('heading', { level: 3, name }).first().waitFor();
      expect(await page.locator('.choice-detail .verdict').count()).toBeGreaterThanOrEqual(2);
    }

    // Z2: alone with bots all four racks are walked through, from the first pass to the end.
    const walk = page.getByRole('region', { name: 'All four racks, step by step' });
    await walk.getByText('First right').waitFor();
    const racks = () => walk.locator('.tile-row .spoken').allTextContents();
    const atFirst = await racks();
    expect(atFirst).toHaveLength(4);
    while ((await walk.getByText('At the end').count()) === 0)
      await walk.getByRole('button', { name: 'Later' }).click();
    expect(await racks()).not.toEqual(atFirst);

    await page.getByText('Was the deal fixed before the first pass?').click();
    await page.getByText('Yes. All four racks, the wall and every pass come out again').waitFor();
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a file' }).click();
    const saved = await (await downloading).path();
    const file = dealFileSchema.parse(JSON.parse(await readFile(saved, 'utf8')));
    expect(file.kind).toBe('open-round');
    expect(checkDealFile(file)).toEqual({ ok: true });

    // Meanwhile the deep analysis has taken the place of the first answer.
    await strip.first().click();
    await page.getByText('What else you could have done, on one scale').waitFor();
    await page.getByRole('button', { name: 'Next deal' }).click();
    await rack(page).waitFor();
    expect(await titleOf(page)).toMatch(/^First right/);
    const ring = ['You are', 'Tomas is', 'Wilma is', 'Odo is'];
    const east = ring.findIndex((name) => dealt?.includes(`${name} East`));
    await page
      .locator('.last-event')
      .getByText(`${ring[(east + 1) % 4]} East`)
      .waitFor();
  });

  it('headline, strip, open step and charts tell one story at every moment, in whatever order deep answers arrive', async () => {
    for (const name of ['one story', 'another story']) {
      const page = await suite.newPage({ viewport: PHONE, analyzes: true });
      const { found, moments, last, given } = await giveAnswers(page, suite.origin(), name);
      expect([name, found]).toEqual([name, []]);
      expect(moments).toBeGreaterThanOrEqual(given.length);
      // What is looked for would be found: a strip, a headline, a step or a chart that lags behind.
      const [first, ...rest] = last.strip;
      const doctored = [
        { ...last, strip: [{ ...first!, verdict: 'none' }, ...rest] },
        { ...last, headline: 'Well played: each of your choices was as good as the best we found.' },
        { ...last, open: { ...last.open, title: `${first!.name}: none` } },
        { ...last, progress: 'Tiles away: Start 5.' },
      ];
      for (const screen of doctored) expect(screenContradictions(screen, given)).not.toEqual([]);
    }
  });

  it('on a phone the review shows its steps in one row, brings what is tapped into view, and is read out, saved, sent and printed', async () => {
    const page = await suite.newPage({ viewport: PHONE, hasTouch: true, analyzes: true });
    await page.addInitScript(takeAlong);
    await openClosedRound(page, suite.origin(), 'one story');
    const taken = () => page.locator('html').evaluate(({ dataset }) => ({ ...dataset }));
    await page
      .locator('.hand-line')
      .getByText(/^At the beginning: \d+ away$/)
      .waitFor();
    const strip = page.locator('.choice-strip button');
    const rows = await strip.evaluateAll((steps) => steps.map((step) => step.getBoundingClientRect().top));
    expect(new Set(rows).size).toBe(1);
    expect(await page.locator('.choice-name').evaluateAll(brokenWords)).toEqual([]);
    await strip.last().tap();
    await expect.poll(() => isInSight(page.locator('.choice-detail h3'))).toBe(true);
    expect(await page.locator('.choice-detail details, .choices > details').evaluateAll(anyOpen)).toBe(false);
    await page.getByText('What the verdicts mean').tap();
    expect(await page.locator('.verdict-legend dt').allTextContents()).toHaveLength(5);
    const headline = (await page.locator('.lesson-text').textContent()) ?? '';
    await page.getByRole('button', { name: 'Read it to me' }).tap();
    await page.getByRole('button', { name: 'Stop reading' }).waitFor();
    await page.getByRole('button', { name: 'Share', exact: true }).first().tap();
    const downloading = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as text' }).tap();
    const saved = await readFile(await (await downloading).path(), 'utf8');
    expect(saved).toContain(headline);
    // A sheet of paper, as a printer with its usual margins has it, twice.
    await page.setViewportSize({ width: 718, height: 1047 });
    await page.emulateMedia({ media: 'print' });
    await page.getByRole('button', { name: 'Print', includeHidden: true }).dispatchEvent('click');
    await expect.poll(async () => (await taken()).printed).toBeDefined();
    const { spoken, shared, printed, tiles } = await taken();
    expect([spoken?.startsWith(headline), shared]).toEqual([true, saved]);
    expect(Number(printed)).toBeLessThanOrEqual(2 * 1047);
    expect(Number(tiles)).toBeGreaterThan(20);
  });
});

/** In the page: what is spoken, shared and printed is noted on the document. */
function takeAlong(): void {
  const noted = () => document.documentElement.dataset;
  speechSynthesis.speak = ({ text }) => {
    noted().spoken = `${noted().spoken ?? ''}${text} `;
  };
  navigator.share = async ({ text } = {}) => {
    noted().shared = text ?? '';
  };
  window.print = () => {
    noted().printed = String(document.documentElement.scrollHeight);
    noted().tiles = String(document.querySelectorAll('.printed-steps .small-tile').length);
  };
}

/** In the page: the words that do not stand whole in one row. */
function brokenWords(names: Element[]): readonly string[] {
  return names.flatMap(({ firstChild }) => {
    const words = [...(firstChild?.textContent ?? '').matchAll(/\S+/g)];
    return words.flatMap(({ index, 0: word }) => {
      const range = document.createRange();
      range.setStart(firstChild!, index);
      range.setEnd(firstChild!, index + word.length);
      return range.getClientRects().length === 1 ? [] : [word];
    });
  });
}

/** In the page. */
function anyOpen(all: Element[]): boolean {
  return all.some((one) => one.hasAttribute('open'));
}

describe('what is not possible', () => {
  it('C2 a joker does not go into the tray, and the page says why', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    const joker = rack(page).getByRole('button', { name: /^joker/ });
    // About two racks in three hold a joker; every visit to the front page deals another.
    for (let deals = 0; deals === 0 || (await joker.count()) === 0; deals++) {
      expect(deals).toBeLessThan(40);
      await dealAlone(page, suite.origin());
    }
    await joker.first().click();
    const says = page.getByRole('alert').getByText('Jokers can’t be passed');
    await says.waitFor();
    expect(await isInSight(says)).toBe(true);
    expect(await tray(page).getByText('empty place').count()).toBe(3);
  });

  it('C1 a pass of too few tiles stays here, and a fourth tile finds the tray full', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    await passButton(page).press('Enter');
    await page.getByRole('alert').getByText('Choose 3 more tiles.').waitFor();
    await fillTray(page);
    await rack(page).locator('button[aria-pressed="false"]:not([aria-label^="joker"])').last().click();
    await page.getByRole('alert').getByText('The tray is full').waitFor();
    expect(await heading(page).textContent()).toMatch(/^First right/);
  });

  it('the page says that a code leads nowhere or is missing', async () => {
    const page = await suite.newPage();
    await page.goto(suite.origin());
    await page.getByRole('button', { name: 'Go to that table' }).click();
    await page.getByText('Type the code first: eight letters and digits.').waitFor();
    await page.getByLabel('Did somebody give you a code?').fill('zzzz-zzzz');
    await page.getByRole('button', { name: 'Go to that table' }).click();
    await page.getByRole('heading', { name: 'No table here' }).waitFor();
  });

  it('a card file with faults is rejected before the table opens', async () => {
    const page = await suite.newPage();
    await page.goto(suite.origin());
    await page.getByText('How your tables are set up').click();
    const buffer = Buffer.from(JSON.stringify({ format: 'something else' }));
    await page
      .getByLabel('A card file of your own')
      .setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer });
    await page.getByText('mine.json will be used').waitFor();
    await page.getByRole('button', { name: 'Deal me in' }).click();
    await page.getByRole('alert').getByText('card').first().waitFor();
    expect(new URL(page.url()).pathname).toBe('/');
  });
});

describe('the drawn table', () => {
  it('the exchange is seen going and coming, once, and not again after a reload', async () => {
    const page = await suite.newPage({ viewport: PHONE, hasTouch: true, reducedMotion: 'no-preference' });
    await dealAlone(page, suite.origin());
    const backs = page.locator('.opponents .tile-backs.out i');
    await expect.poll(() => backs.count()).toBe(9);
    expect(await page.locator('.packet').count()).toBe(0);
    expect(
      await page
        .locator('.opponents')
        .getByText(/^1[01] tiles on the rack$/)
        .count(),
    ).toBe(3);
    expect(await page.locator('main .east').count()).toBe(1);
    await passThree(page);
    await nextHeading(page, 'First right');
    await page.locator('.packet').first().waitFor({ state: 'attached' });
    // While tiles slide, whatever lies under them takes the tap.
    const takers = await page.locator('.packet').evaluateAll((packets) =>
      packets.map((packet) => {
        const { x, y, width, height } = packet.getBoundingClientRect();
        return document.elementFromPoint(x + width / 2, y + height / 2)?.closest('main, .passing-tiles')
          ?.tagName;
      }),
    );
    expect(takers).toEqual(['MAIN', 'MAIN', 'MAIN', 'MAIN']);
    await passableTiles(page).first().tap();
    expect(await tray(page).getByRole('button').count()).toBe(1);
    const names = await page.locator('.packet.to-below .turning').count();
    expect([await page.locator('.packet').count(), names]).toEqual([4, 3]);
    expect(await page.locator('.passing-tiles').evaluate((drawn) => getComputedStyle(drawn).display)).toBe(
      'block',
    );
    await page.reload();
    await rack(page).waitFor();
    expect(await page.locator('.packet').count()).toBe(0);
  });

  it('with reduced motion nothing slides', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    await passThree(page);
    await nextHeading(page, 'First right');
    expect(await page.locator('.passing-tiles').evaluate((drawn) => getComputedStyle(drawn).display)).toBe(
      'none',
    );
  });

  it('on a phone held across, rack, tray and button are all on the screen', async () => {
    const page = await suite.newPage({
      viewport: { width: PHONE.height, height: PHONE.width },
      hasTouch: true,
    });
    await dealAlone(page, suite.origin());
    await fillTray(page);
    for (const part of [tray(page), passButton(page), rack(page).getByRole('button').last()])
      expect(await isInSight(part)).toBe(true);
    // What stands above the rack is one row, and no word in it is broken.
    const head = await page.locator('.rack-head').boundingBox();
    expect(head?.height).toBeLessThan(64);
  });
});
