// Preparing a class in a real browser: how rare a deal is, the search for a lesson, a card of one's own, texts for players.
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { rack, tileLabels } from '../../client/tools/page-actions.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { findsRoundOnPrivateCard, PRIVATE_CARD } from '../kit/private-card.ts';
import { seedRandomBytes } from '../kit/seeded-page.ts';

const suite = browserSuite();

function cardFile(name: string, card: unknown) {
  return { name, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(card)) };
}

describe('a deal that fits a description', () => {
  it('is previewed with its rarity while the description is typed; an impossible one is named at once', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    await page.goto(`${suite.origin()}/lead`);
    await page.getByRole('button', { name: 'Add a deal that fits a description' }).click();
    await page.getByLabel('Jokers', { exact: true }).selectOption('exactly');
    const jokers = page.getByLabel('Jokers: exactly');
    await jokers.fill('3');
    await page.getByText('1 rack of 51 fits.').waitFor();
    await page.getByText('The players will hold:').waitFor();
    expect(await page.locator('.deal-preview-result .small-tile').count()).toBe(13);
    await page.getByLabel('Numbers in a row in one suit', { exact: true }).selectOption('at-least');
    await page.getByLabel('Numbers in a row in one suit: at least').fill('5');
    await page.getByText(/^About 1 rack of [\d,]+ fits \(between 1 of /).waitFor();
    await jokers.fill('9');
    await page.getByText(/No rack of 13 tiles can have/).waitFor();
    expect([await axeFindings(page), await horizontalOverflow(page), await smallTargets(page)]).toEqual([
      [],
      0,
      [],
    ]);
  });

  it('is searched for a lesson until one is found or the teacher stops the search', async () => {
    const page = await suite.newPage();
    await page.addInitScript(seedRandomBytes);
    await page.goto(`${suite.origin()}/lead`);
    const search = page.getByRole('button', { name: 'Find a deal with a lesson' });
    await search.click();
    await page.getByRole('button', { name: 'Stop searching' }).click();
    await search.waitFor();
    await search.click();
    await page.getByText(/^Checked [1-9]/).waitFor();
    await page.getByText('Clearly better:').waitFor({ timeout: 100_000 });
    await page.getByText(/more wins in 100 games/).waitFor();
    await page.getByRole('button', { name: 'Deal other tiles' }).click();
    await page.getByText('Clearly better:').waitFor({ state: 'detached' });
  }, 120_000);
});

describe('TH1 the card, the texts and the rounds of a class', () => {
  it('a file that is no card is rejected, the teacher’s own card is played with, players read the text for them, and take round and deal home', async () => {
    const author = await suite.newPage();
    await author.goto(`${suite.origin()}/lead`);
    await author.getByLabel('What is this drill called?').fill('With a card');
    await author.getByText('Texts for this deal').click();
    await author.getByLabel('For the players, shown above their tiles').fill('Which way do the pairs point?');
    await author.getByLabel('For yourself, shown only on your dashboard').fill('Ask Ines.');
    const card = author.getByLabel('A card file of your own');
    await card.setInputFiles(cardFile('none.json', { format: 'none' }));
    await author.getByText('This card cannot be used; the house card is used instead.').waitFor();
    expect(await author.getByLabel('What is this drill called?').inputValue()).toBe('With a card');
    await card.setInputFiles(cardFile('harbor.json', PRIVATE_CARD));
    await author.getByText('harbor.json will be used for this class.').waitFor();
    await author.getByText('How the tables play').click();
    await author.getByLabel('Courtesy pass').selectOption('none');
    await author.getByText('one thing is different').waitFor();
    await author.getByLabel('Time for each step').selectOption({ label: '5 minutes' });
    await author.getByRole('button', { name: 'Save the drill as a file' }).click();
    await author.getByText('Did you type Harbor card from a printed card?').waitFor();
    const downloading = author.waitForEvent('download');
    await author.getByRole('button', { name: 'I may pass it on: save with the card' }).click();
    const drill = await readFile(await (await downloading).path());
    // What may be passed on to who owns the card too may not be published for that alone.
    await author.getByRole('button', { name: 'Publish the drill' }).click();
    await author.getByText('Tick that you may publish Harbor card').waitFor();
    await author.getByLabel('I may publish this card').check();
    await author.getByRole('button', { name: 'Publish the drill' }).click();
    await author.getByRole('textbox', { name: 'Link for your players' }).waitFor();
    // Another teacher has neither the card nor the drill.
    const dashboard = await suite.newPage({ viewport: PHONE });
    await dashboard.goto(`${suite.origin()}/lead`);
    await dashboard
      .getByLabel('Use a drill file')
      .setInputFiles({ name: 'drill.json', mimeType: 'application/json', buffer: drill });
    await dashboard.getByText('Harbor card came with the drill and will be used for this class.').waitFor();
    expect(await dashboard.getByLabel('The card', { exact: true }).inputValue()).toBe('from a file');
    expect([await horizontalOverflow(dashboard), await smallTargets(dashboard)]).toEqual([0, []]);
    await dashboard.getByRole('button', { name: 'Open the class' }).click();
    const code = await dashboard.locator('.big-code').getAttribute('data-code');

    const player = await suite.newPage({ viewport: PHONE });
    await player.goto(`${suite.origin()}/c/${code}`);
    await player.getByText('How this table plays').click();
    await player.getByText('There is no courtesy pass.').waitFor();
    await player.getByLabel('Your name at the table').fill('Ines');
    await player.getByRole('button', { name: 'Join the class' }).click();
    await dashboard.getByRole('rowheader', { name: 'Ines' }).waitFor();
    await dashboard.getByRole('button', { name: 'Start deal 1' }).click();
    await dashboard.getByText('Ask Ines.').waitFor();
    await rack(player).waitFor();
    const dealt = await tileLabels(player);
    await player.getByText('Which way do the pairs point?').waitFor();
    await player.locator('.last-event').getByText('A teacher prepared this deal.').waitFor();
    expect(await player.locator('main').textContent()).not.toContain('Ask Ines.');
    expect(await axeFindings(player)).toEqual([]);
    await player.getByRole('button', { name: 'Card' }).click();
    await player.getByRole('heading', { name: 'Harbor card' }).waitFor();
    await dashboard.getByRole('button', { name: 'Let a bot play for Ines' }).click();
    await player.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
    expect(await findsRoundOnPrivateCard(player, suite.origin())).toBe(true);

    await dashboard.getByLabel('Players may play the deals again at home').check();
    await dashboard.getByRole('button', { name: 'End the class' }).click();
    await dashboard.getByRole('button', { name: 'Yes, end it for everybody' }).click();
    await player.getByRole('link', { name: 'Play this deal again' }).click();
    await player.getByText('A deal of your class, played again by yourself').waitFor();
    await rack(player).waitFor();
    expect(await tileLabels(player)).toEqual(dealt);
    expect([await axeFindings(player), await horizontalOverflow(player)]).toEqual([[], 0]);
    // The round of the class leads there too, also where the server is out of reach.
    await player.getByRole('link', { name: 'All my rounds' }).click();
    await player.context().setOffline(true);
    await player
      .getByRole('listitem')
      .filter({ hasText: PRIVATE_CARD.name })
      .getByRole('link')
      .first()
      .click();
    await player.getByRole('link', { name: 'Play this deal again' }).click();
    await rack(player).waitFor();
    expect(await tileLabels(player)).toEqual(dealt);
  }, 120_000);
});
