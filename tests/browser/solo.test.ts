// One player and three bots, from the front page to the review, in a real browser.
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import {
  dealAlone,
  fillTray,
  heading,
  nextHeading,
  passButton,
  passThree,
  playToClose,
  rack,
  titleOf,
  tray,
} from '../../client/tools/page-actions.ts';
import { checkDealFile, dealFileSchema } from '../../shared-engine/protocol/deal-file.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';

const suite = browserSuite();

describe('practicing alone', () => {
  it('D3 one tap deals, a whole Charleston ends with a private review, and East moves on', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    const dealt = await page.locator('.last-event').textContent();
    const met = await playToClose(page, 2);
    expect(met.slice(0, 4).map((title) => title.split('.')[0])).toEqual([
      'First right',
      'First across',
      'First left',
      'Second Charleston?',
    ]);
    await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    const steps = page.getByRole('listitem').getByRole('button', { pressed: true });
    expect(await steps.count()).toBe(1);

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

  it('the review shows every choice with its sentences, and the deep analysis takes the place of the first answer', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    await playToClose(page);
    const strip = page.locator('.choice-strip button');
    await strip.first().waitFor();
    for (const button of await strip.all()) {
      await button.click();
      const name = (await button.locator('.choice-name').textContent()) ?? '';
      await page.getByRole('heading', { level: 3, name }).first().waitFor();
      expect(await page.locator('.choice-detail .verdict').count()).toBeGreaterThanOrEqual(2);
    }
    await strip.first().click();
    await page.getByText('What else you could have done, on one scale').waitFor();
  });

  it('C4 a submitted pass can be taken back while others still choose', async () => {
    const host = await suite.newPage();
    await host.goto(suite.origin());
    await host.getByLabel('Your name at the table').fill('Runa');
    await host.getByRole('button', { name: 'Open a table' }).click();
    await host.getByText('Ask your friends in').waitFor();
    const guest = await suite.newPage();
    await guest.goto(host.url());
    await guest.getByLabel('Your name at the table').fill('Malte');
    await guest.getByRole('button', { name: 'Sit here' }).first().click();
    await guest.getByRole('button', { name: 'I am ready' }).click();
    await host.getByRole('button', { name: 'I am ready' }).click();
    await passThree(host);
    await host.getByText('Your pass is face down.').waitFor();
    await host.getByRole('button', { name: 'Take it back' }).click();
    await passButton(host).waitFor();
    expect(await tray(host).getByRole('button').count()).toBe(3);
  });
});

describe('what is not possible', () => {
  it('C2 a joker does not go into the tray, and the page says why', async () => {
    const page = await suite.newPage();
    const joker = rack(page).getByRole('button', { name: /^joker/ });
    // About two racks in three hold a joker; every visit to the front page deals another.
    for (let deals = 0; deals === 0 || (await joker.count()) === 0; deals++) {
      expect(deals).toBeLessThan(40);
      await dealAlone(page, suite.origin());
    }
    await joker.first().click();
    await page.getByRole('alert').getByText('Jokers can’t be passed').waitFor();
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
    const page = await suite.newPage({ viewport: PHONE, reducedMotion: 'no-preference' });
    await dealAlone(page, suite.origin());
    const backs = page.locator('.opponents .tile-backs.out i');
    await expect.poll(() => backs.count()).toBe(9);
    expect(await page.locator('.packet').count()).toBe(0);
    await passThree(page);
    await nextHeading(page, 'First right');
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
    for (const part of [tray(page), passButton(page), rack(page).getByRole('button').last()]) {
      const box = await part.boundingBox();
      expect(box && box.y >= 0 && box.y + box.height <= PHONE.width).toBe(true);
    }
  });
});
