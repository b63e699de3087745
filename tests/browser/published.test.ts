// A drill without an appointment in real browsers: published, played by ten at different times, one of them offline, taken back.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import {
  closeSheet,
  heading,
  openSheet,
  passThree,
  playToClose,
  rack,
} from '../../client/tools/page-actions.ts';
import { axeFindings, horizontalOverflow } from '../kit/accessibility-checks.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import {
  device,
  openDrill,
  playAtRandom,
  playDeal,
  publish,
  quickDrill,
  sendRound,
} from '../kit/published.ts';

const TITLE = 'Club drill for the first evening in December: looking at pairs';
const WAYS = { blindPasses: true, cardHelp: 'printed', passLog: false };

const suite = browserSuite();

/** Three passes and nothing else, so that ten play it quickly; the teacher has said something about the first. */
function shortDrill() {
  const { deals, ...drill } = quickDrill();
  const ways = { ...WAYS, secondCharleston: 'none', courtesy: 'none' };
  const comments = { 'first-right': { words: 'I kept the pair.' } };
  return { ...drill, ways, card: 'house', deals: deals.map((deal) => ({ ...deal, comments })) };
}

async function publishDrill(page: Page): Promise<string> {
  await page.goto(`${suite.origin()}/lead`);
  const file = {
    name: 'drill.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(shortDrill())),
  };
  await page.locator('input[type=file]').first().setInputFiles(file);
  await page.getByLabel('What is this drill called?').fill(TITLE);
  const day = page.getByLabel('Last day');
  const usual = await day.inputValue();
  await day.fill('2020-01-01');
  await page.getByRole('button', { name: 'Publish the drill' }).click();
  await page.locator('.field', { has: day }).getByText('Choose a last day that is still to come').waitFor();
  await day.fill(usual);
  await page.getByRole('button', { name: 'Publish the drill' }).click();
  return page.getByRole('textbox', { name: 'Link for your players' }).inputValue();
}

const playButton = (page: Page) => page.getByRole('button', { name: /^Play: Deal 1/ });

it('ten play a published drill when they like, one of them offline; the teacher reads how, and makes a class of it', async () => {
  const teacher = await suite.newPage();
  const link = await publishDrill(teacher);
  const code = new URL(link).pathname.split('/').at(-1)!;

  const first = await suite.newPage({ viewport: PHONE });
  await first.goto(link);
  await first.getByText('Nobody learns what you chose.').waitFor();
  await playButton(first).click();
  await rack(first).waitFor();
  const title = first.locator('.room-code');
  expect(
    await title.evaluate((box) => box.clientHeight / Number.parseFloat(getComputedStyle(box).lineHeight)),
  ).toBeLessThan(2.1);
  await first.getByText('Leave a question').click();
  await first.getByLabel('Your question at first right').fill('?'.repeat(280));
  await first.getByText('280 of 280 characters. No more fits.').waitFor();
  await first.getByLabel('Your question at first right').fill('Why <b>not</b> the pair?');
  await first.getByRole('button', { name: 'Leave this question' }).click();
  await first.getByText('You left 1 question.').waitFor();
  expect(await horizontalOverflow(first)).toBe(0);
  await playToClose(first);
  await first.getByText('What your teacher says, and how others chose').click();
  await first.getByText('You will see how others chose').waitFor();
  await first.getByRole('button', { name: 'Back to the list of deals' }).click();
  await first.getByText('Played and counted').waitFor();

  const own = await openSheet(first, 'Settings');
  await own.getByRole('button', { name: 'Show my data' }).click();
  await own.getByText(/a round was counted, .*First right: .*asked “Why <b>not<\/b> the pair\?”/).waitFor();
  expect([await horizontalOverflow(first), await axeFindings(first)]).toEqual([0, []]);
  await closeSheet(first);

  const second = await suite.newPage({ viewport: PHONE });
  await second.goto(link);
  await playButton(second).click();
  await rack(second).waitFor();
  await second.context().setOffline(true);
  await playToClose(second);
  await second.getByRole('button', { name: 'All deals' }).click();
  await second.getByText('Played, waits to be sent').waitFor();
  await second.context().setOffline(false);
  await second.getByText('Played and counted').waitFor();

  const at = { url: suite.origin() };
  for (let n = 0; n < 8; n++) {
    const secret = device(`player ${n}`);
    const drill = await openDrill(at, code, secret);
    // Two kinds of players, so that something can be told: equal choices have equal consequences.
    const { choices } = playDeal(drill, 0, playAtRandom(`club ${n % 2}`));
    const round = { id: `club-round-${n}`, deal: drill.deals[0]!.id, choices, questions: [] };
    expect((await sendRound(at, code, secret, round)).status).toBe(200);
  }

  await first.reload();
  await first.getByRole('button', { name: /^Play again for practice/ }).click();
  await passThree(first);
  await first.getByText('First right: what your teacher says, and how others chose').click();
  await first.getByText('10 players have played this deal.').waitFor();
  await first.getByText('I kept the pair.').waitFor();
  await first
    .getByText(/^[3-9] of 10$/)
    .first()
    .waitFor();

  await teacher.getByRole('button', { name: 'Look again' }).click();
  await teacher.getByText('10 players have played it').waitFor();
  await teacher.getByText('Why <b>not</b> the pair?').waitFor();
  const teachers = await openSheet(teacher, 'Settings');
  await teachers.getByRole('button', { name: 'Show my data' }).click();
  await teachers.getByRole('button', { name: 'Delete this drill' }).waitFor();
  await closeSheet(teacher);
  await teacher.getByRole('button', { name: 'Take the drill back' }).click();
  await teacher.getByRole('button', { name: 'Yes, take it back' }).click();
  await teacher.getByText('You have taken this drill back').waitFor();
  expect(await teacher.getByRole('button', { name: /Copy the link|Look again|last day/ }).count()).toBe(0);
  await teacher.getByRole('button', { name: 'Make a class of these deals' }).click();
  await heading(teacher).filter({ hasText: 'Prepare a class' }).waitFor();
  expect(await teacher.getByLabel('What is this drill called?').inputValue()).toMatch(
    /^Club drill.*: talk about it$/,
  );

  await second.reload();
  await second.getByText('Your teacher has taken this drill back.').waitFor();
}, 120_000);

it('a club’s page shows a drill, and a table that its host puts there, also when the server is out of reach', async () => {
  const { code } = await publish({ url: suite.origin(), clock: Date }, quickDrill());
  const page = await suite.newPage({ viewport: PHONE });
  await page.goto(`${suite.origin()}/#my-classes`);
  await page.getByLabel('What is your club called?').fill('Tuesday club');
  await page.getByRole('button', { name: 'Make a club’s page' }).click();
  await page.getByLabel('Code or link of a drill').fill(`${suite.origin()}/d/${code}`);
  await page.getByRole('button', { name: 'Show this drill' }).click();
  await page.getByRole('link', { name: 'Pairs before runs' }).waitFor();
  const link = await page.getByRole('textbox', { name: 'Link of this page' }).inputValue();
  expect([await axeFindings(page), await horizontalOverflow(page)]).toEqual([[], 0]);

  const host = await suite.newPage({ viewport: PHONE });
  await host.goto(link);
  await host.getByRole('link', { name: 'To the front page' }).click();
  await host.getByLabel('Your name at the table').fill('Ines');
  await host.getByRole('button', { name: 'Open a table', exact: true }).click();
  await host.getByText('Show on a club’s page').click();
  await host.getByRole('button', { name: 'Show this table' }).click();
  await host.getByText('You have put this table on the club’s page (Tuesday').waitFor();
  // The device knows it in another tab too, whatever became of the first.
  const table = host.url();
  const again = await host.context().newPage();
  await host.close();
  await again.goto(table);
  await again.getByText('Show on a club’s page').click();
  await again.getByRole('button', { name: 'Take it off' }).waitFor();
  expect([await axeFindings(again), await horizontalOverflow(again)]).toEqual([[], 0]);

  await page.reload();
  await page.getByText('3 free seats, House card').waitFor();
  expect(await page.locator('main').textContent()).not.toContain('Ines');
  await page.context().setOffline(true);
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await page.getByText('This is what stood here last').waitFor();
  await page.getByText('3 free seats, House card').waitFor();
});
