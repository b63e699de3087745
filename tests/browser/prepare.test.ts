// Preparing a class in a real browser: how rare a deal is, the search for a lesson, a card of one's own, words for pupils.
import { describe, expect, it } from 'vitest';
import { HOUSE_CARD } from '../../shared-engine/index.ts';
import { axeFindings, overflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { rack } from '../../client/tools/page-actions.ts';

const suite = browserSuite();

function cardFile(name: string, card: unknown) {
  return { name, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(card)) };
}

describe('a described deal', () => {
  it('is shown with how rare it is, as the wish is typed; what cannot be is told at once', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await page.goto(`${suite.origin()}/lead`);
    await page.getByRole('button', { name: 'Add a described deal' }).click();
    await page.getByLabel('Jokers', { exact: true }).selectOption('exactly');
    const jokers = page.getByLabel('Jokers: exactly');
    await jokers.fill('3');
    await page.getByText('1 rack of 51 fits.').waitFor();
    await page.getByText('This will be dealt:').waitFor();
    expect(await page.locator('.deal-preview .small-tile').count()).toBe(13);
    await page.getByLabel('In a row in one suit', { exact: true }).selectOption('at-least');
    await page.getByLabel('In a row in one suit: at least').fill('5');
    await page.getByText(/^About 1 rack of [\d,]+ fits \(between 1 of /).waitFor();
    await jokers.fill('9');
    await page.getByText(/no rack of 13 tiles can have/).waitFor();
    expect([await axeFindings(page), await overflow(page), await smallTargets(page)]).toEqual([[], 0, []]);
  });

  it('is looked for with a lesson in it, until it is found or the teacher stops', async () => {
    const page = await suite.newPage();
    await page.addInitScript(sameChance);
    await page.goto(`${suite.origin()}/lead`);
    const search = page.getByRole('button', { name: 'Look for one with a lesson in it' });
    await search.click();
    await page.getByRole('button', { name: 'Stop looking' }).click();
    await search.waitFor();
    await search.click();
    await page.getByText(/^Looked at [1-9]/).waitFor();
    await page.getByText('Clearly better:').waitFor({ timeout: 100_000 });
    await page.getByText(/points ahead/).waitFor();
    await page.getByRole('button', { name: 'Deal another' }).click();
    await page.getByText('Clearly better:').waitFor({ state: 'detached' });
  }, 120_000);
});

/** In the page: the same seeds in every run, so that the same deals are looked at. */
function sameChance(): void {
  let state = 1;
  crypto.getRandomValues = (bytes) => {
    if (!(bytes instanceof Uint8Array)) throw new Error('The page draws bytes.');
    // A generator of Park and Miller (1988), good enough to tell one seed from the next.
    for (let place = 0; place < bytes.length; place++) {
      state = (state * 48271) % 2147483647;
      bytes[place] = state % 256;
    }
    return bytes;
  };
}

describe('what goes with the tiles', () => {
  it('a card that is none is refused and nothing is lost; one of the teacher’s own is played with; pupils read the words', async () => {
    const desk = await suite.newPage();
    await desk.goto(`${suite.origin()}/lead`);
    await desk.getByLabel('What is this drill called?').fill('With a card');
    await desk.getByText('Words that go with this deal').click();
    await desk.getByLabel('What the pupils read above their tiles').fill('Which way do the pairs point?');
    await desk.getByLabel('A note for yourself, shown on your desk alone').fill('Ask Ines.');
    const card = desk.getByLabel('A card file of your own');
    await card.setInputFiles(cardFile('none.json', { format: 'none' }));
    await desk.getByText('That card cannot be used; the house card is.').waitFor();
    expect(await desk.getByLabel('What is this drill called?').inputValue()).toBe('With a card');
    await card.setInputFiles(
      cardFile('evening.json', { ...HOUSE_CARD, id: 'evening', name: 'Evening card' }),
    );
    await desk.getByText('evening.json will be used for this class.').waitFor();
    await desk.getByRole('button', { name: 'Open the class' }).click();
    const code = await desk.locator('.big-code').getAttribute('data-code');

    const pupil = await suite.newPage({ viewport: PHONE });
    await pupil.goto(`${suite.origin()}/c/${code}`);
    await pupil.getByLabel('Your name at the table').fill('Ines');
    await pupil.getByRole('button', { name: 'Join the class' }).click();
    await desk.getByRole('rowheader', { name: 'Ines' }).waitFor();
    await desk.getByRole('button', { name: 'Deal the first deal' }).click();
    await desk.getByText('Ask Ines.').waitFor();
    await rack(pupil).waitFor();
    await pupil.getByText('Which way do the pairs point?').waitFor();
    await pupil.locator('.news').getByText('A teacher prepared this deal.').waitFor();
    expect(await pupil.locator('main').textContent()).not.toContain('Ask Ines.');
    expect(await axeFindings(pupil)).toEqual([]);
    await pupil.getByRole('button', { name: 'Card' }).click();
    await pupil.getByRole('heading', { name: 'Evening card' }).waitFor();
  });
});
