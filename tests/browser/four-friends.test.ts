// Four people on four devices play one round through every step, and nobody sees another's tiles.
import type { Page, WebSocket } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  fillTray,
  heading,
  joinAt,
  nextHeading,
  openFor,
  passButton,
  passThree,
  rack,
  tileLabels,
  titleOf,
  tray,
} from '../../client/tools/page-actions.ts';
import { botsPath } from '../../shared-engine/protocol/paths.ts';
import { axeFindings, horizontalOverflow, smallTargets } from '../kit/accessibility-checks.ts';
import { browserSuite, DESKTOP, type PageOptions, PHONE, TABLET } from '../kit/browser-suite.ts';
import { post } from '../kit/http-client.ts';
import { isInSight } from '../kit/in-sight.ts';
import { findsRoundOnPrivateCard, playWithPrivateCard } from '../kit/private-card.ts';

// As it ships: one walk has pages of today's phones, which analyze their own seats beside it.
const suite = browserSuite({ REVIEW_DEPTH: 'deep' });
const OWN_ANALYSES: PageOptions = { analyzes: true, cores: 8 };

async function fourSeated(
  prepare: (host: Page) => Promise<void> = async () => {},
  options: PageOptions = {},
  onPage: (page: Page) => void = () => {},
): Promise<Page[]> {
  const sizes = [DESKTOP, TABLET, PHONE, PHONE];
  const pages = await Promise.all(sizes.map((viewport) => suite.newPage({ viewport, ...options })));
  pages.forEach(onPage);
  const [host, ...guests] = pages as [Page, Page, Page, Page];
  await prepare(host);
  const link = await openFor(host, suite.origin(), 'Ines');
  // One after the other, so that everybody's place at the table is known.
  for (const [index, guest] of guests.entries()) await joinAt(guest, link, ['Tomas', 'Wilma', 'Odo'][index]!);
  return pages;
}

/** Who is said to analyze the choices of this page's seat, each time it is said (rule WK9); looked at from now on. */
function analyzedBy(page: Page): string[] {
  const said: string[] = [];
  page.on('websocket', listen);
  return said;

  function listen(socket: WebSocket): void {
    socket.on('framesent', ({ payload }) => {
      const message: { kind: string; by?: string } = JSON.parse(String(payload));
      if (message.kind === 'analyzed-by' && message.by !== undefined) said.push(message.by);
    });
  }
}

/** Every page does the same and waits until the question is another. */
async function allOnward(pages: readonly Page[], act: (page: Page) => Promise<void>): Promise<string> {
  const before = await Promise.all(pages.map(titleOf));
  for (const page of pages) await act(page);
  const after = await Promise.all(pages.map((page, index) => nextHeading(page, before[index]!)));
  return after[0]!;
}

describe('a table of four friends', () => {
  it('four friends play right, across, left, the vote, left, across, right and the courtesy pass, on the card of one of them', async () => {
    const said: string[][] = [];
    const pages = await fourSeated(
      (host) => playWithPrivateCard(host, suite.origin()),
      OWN_ANALYSES,
      (page) => said.push(analyzedBy(page)),
    );
    const [ines, tomas] = pages as [Page, Page];
    await tomas.getByText('Card: Harbor card.').waitFor();
    await allOnward(pages, (page) => page.getByRole('button', { name: 'I am ready' }).click());

    const words = await Promise.all(pages.map(sixWords));
    expect(words[0]?.split(' ')).toHaveLength(6);
    expect(new Set(words).size).toBe(1);

    await tomas.getByRole('button', { name: 'Card', exact: true }).click();
    await tomas.getByRole('heading', { name: 'Lanterns' }).waitFor();
    await tomas.getByRole('button', { name: 'Card', exact: true }).click();
    expect(await passButton(ines).textContent()).toBe('Pass right to Tomas');
    const given = await fillTrayNamed(ines);
    await passButton(ines).click();
    for (const page of pages.slice(1)) await passThree(page);
    await nextHeading(tomas, 'First right');
    const came = await rack(tomas)
      .getByRole('button', { name: /just arrived/ })
      .all();
    const names = await Promise.all(came.map((tile) => tile.getAttribute('aria-label')));
    expect(names.map((name) => name?.replace(', just arrived', '')).toSorted()).toEqual(given);

    expect(await titleOf(ines)).toBe('First across. Three tiles for Wilma');
    expect(await allOnward(pages, passThree)).toBe('First left. Three tiles for Odo');
    // Rule B1, and all four at once for rule B4: one own tile each, two blind.
    expect(await allOnward(pages, (page) => passBlind(page, '2'))).toBe('Second Charleston?');
    expect(
      await allOnward(pages, (page) => page.getByRole('button', { name: 'Continue', exact: true }).click()),
    ).toBe('Second left. Three tiles for Odo');
    expect(await allOnward(pages, passThree)).toBe('Second across. Three tiles for Wilma');
    expect(await allOnward(pages, passThree)).toBe('Second right. Three tiles for Tomas');
    expect(await allOnward(pages, (page) => passBlind(page, '1'))).toBe(
      'Courtesy: how many tiles would you like to swap with Wilma?',
    );
    const asks = new Map(pages.map((page, seat) => [page, seat % 2 === 0 ? '3' : '1']));
    await allOnward(pages, (page) =>
      page.getByRole('button', { name: asks.get(page)!, exact: true }).click(),
    );
    // The numbers are turned over at the seats: left, across, right.
    expect(await ines.locator('.said').allTextContents()).toEqual([
      'asked for 1',
      'asked for 3',
      'asked for 1',
    ]);
    expect(await Promise.all(pages.map(titleOf))).toEqual([
      'Courtesy pass. Three tiles for Wilma',
      'Courtesy pass. One tile for Odo',
      'Courtesy pass. Three tiles for Ines',
      'Courtesy pass. One tile for Tomas',
    ]);
    expect(await allOnward(pages, passThree)).toBe('What this deal can teach you');
    const lessons = await Promise.all(pages.map((page) => page.locator('.lesson-text').textContent()));
    expect(lessons.every((lesson) => lesson && lesson.length > 20)).toBe(true);

    // D4, Z2: racks stay private, so each checks its own, and nobody is offered the deal again.
    for (const page of pages) {
      await page.getByText('Was the deal fixed before the first pass?').click();
      await page.getByText(/^Yes\. Your 1[34] first tiles are the ones fixed/).waitFor();
      expect(await page.locator('.six-words').textContent()).toBe(words[0]);
      await page.getByText('Racks stay private at this table').waitFor();
      expect(await page.getByRole('button', { name: 'Play it again' }).count()).toBe(0);
      // Luck and choices are told once every choice has been played on.
      await page.getByText(/^Your first tiles were worth about/).waitFor({ timeout: 120_000 });
    }
    // It is said anew over each connection.
    expect(said.map((all) => [...new Set(all)])).toEqual(pages.map(() => ['page']));
    expect(await findsRoundOnPrivateCard(tomas, suite.origin())).toBe(true);
  }, 300_000);

  it('C4 O1 a pass can be taken back, though not by a second tap on it; one player who stops ends the first Charleston', async () => {
    const pages = await fourSeated();
    await allOnward(pages, (page) => page.getByRole('button', { name: 'I am ready' }).click());
    await passAndTakeBack(pages[0]!);
    for (let step = 0; step < 3; step++) await allOnward(pages, passThree);
    const [ines, ...others] = pages as [Page, Page, Page, Page];
    await ines.getByRole('button', { name: 'I’d stop' }).click();
    await ines.getByText('You said stop. Waiting for Tomas, Wilma and Odo.').waitFor();
    for (const page of others) await page.getByRole('button', { name: 'Continue', exact: true }).click();
    for (const page of others) await page.locator('.last-event').getByText('Ines stopped').waitFor();
    expect(await titleOf(ines)).toBe('Courtesy: how many tiles would you like to swap with Wilma?');
    const turned = await others[0]!.locator('.said').allTextContents();
    expect(turned.toSorted()).toEqual(['voted to continue', 'voted to continue', 'voted to stop']);
  });

  it('V2 a spectator sees who is ready and no tile', async () => {
    const host = await suite.newPage();
    const link = await openFor(host, suite.origin(), 'Ines');
    await host.getByRole('button', { name: 'I am ready' }).click();
    await rack(host).waitFor();
    const spectator = await suite.newPage({ viewport: PHONE });
    // A link at the end of a sentence leads there too.
    await spectator.goto(`${link}.`);
    await spectator.getByRole('heading', { name: 'You are watching' }).waitFor();
    expect(await spectator.locator('.ring .drawn-seat').count()).toBe(4);
    await spectator.getByText('ready', { exact: true }).nth(2).waitFor();
    expect(await spectator.getByText('choosing').count()).toBe(1);
    expect(await spectator.locator('.tile-art').count()).toBe(0);
    await passThree(host);
    await spectator.getByText('First right: the tiles have moved.').waitFor();
    await host.getByRole('heading', { name: /^First across/ }).waitFor();
    await passThree(host);
    // A table without a log has none for those who watch either (rule W6).
    await spectator.getByText('First across: the tiles have moved.').waitFor();
    expect(await spectator.locator('.public-steps li').count()).toBe(1);
  });

  it('BT2 a host on a phone invites a bot of one’s own by keyboard, sees whose it is, and takes an invitation back', async () => {
    const host = await suite.newPage({ viewport: PHONE, hasTouch: true });
    const code = new URL(await openFor(host, suite.origin(), 'Ines')).pathname.split('/').at(-1)!;
    expect(await isInSight(host.getByRole('button', { name: 'I am ready' }))).toBe(true);
    const openPanel = () => host.getByText('Invite a bot of your own').press('Enter');
    const make = host.getByRole('button', { name: 'Make a link for it' });
    await openPanel();
    await make.press('Enter');
    const field = host.getByLabel('Link for your bot');
    await field.waitFor();
    expect([await horizontalOverflow(host), await smallTargets(host), await axeFindings(host)]).toEqual([
      0,
      [],
      [],
    ]);
    const [link, secret] = /^(?:.*)#bot=([\w-]{43})$/.exec(await field.inputValue()) ?? [];
    expect(link).toBe(`${suite.origin()}/t/${code}#bot=${secret}`);
    await host.reload();
    await host.getByText('a link for a bot is out').waitFor();
    await openPanel();
    expect(await field.count()).toBe(0);
    const claimed = await post(`${suite.origin()}${botsPath(code)}`, { name: 'Rote' }, secret);
    expect(claimed.status).toBe(201);
    await host.getByText('bot by Ines').waitFor();
    await host.getByText('not connected, another bot stands in').waitFor();
    await make.press('Enter');
    await field.waitFor();
    await host.getByRole('button', { name: 'Take the invitation back' }).press('Enter');
    await field.waitFor({ state: 'detached' });
    await host.getByRole('button', { name: 'Remove Rote' }).press('Enter');
    await host.getByText('bot by Ines').waitFor({ state: 'detached' });
  });

  it('SD1 friends are dealt the same tiles and see each other’s pass once they have passed themselves', async () => {
    const [ines, tomas] = [await suite.newPage(), await suite.newPage({ viewport: PHONE })];
    await ines.goto(suite.origin());
    await ines.getByRole('button', { name: 'The same deal for each' }).click();
    await ines.getByLabel('Your name at the table').fill('Ines');
    await ines.getByRole('button', { name: 'Deal me in' }).click();
    await rack(ines).waitFor();
    await ines.getByText('What the others chose').click();
    const link = await ines.getByLabel('Ask your friends in').inputValue();
    await tomas.goto(`${link}/`.toLowerCase());
    await tomas.getByLabel('Your name at the table').fill('Tomas');
    await tomas.getByText('Nobody sees your rack or your review.').waitFor();
    await tomas.getByRole('button', { name: 'Deal me in' }).click();
    await rack(tomas).waitFor();
    expect(await tileLabels(tomas)).toEqual(await tileLabels(ines));
    await tomas.getByText('What the others chose').click();
    await tomas.getByText('Here with you: Ines.').waitFor();
    await passThree(ines);
    await ines.getByText('Nobody else has come this far yet.').waitFor();
    expect(await tomas.locator('.friend-choices dl').count()).toBe(0);
    await passThree(tomas);
    await tomas.locator('.friend-choices dt').getByText('Ines').waitFor();
    expect([await axeFindings(tomas), await horizontalOverflow(tomas)]).toEqual([[], 0]);
  });

  it('the table says that a friend is away, and the friend returns to the same tiles', async () => {
    const host = await suite.newPage();
    const guest = await suite.newPage({ viewport: PHONE });
    const link = await openFor(host, suite.origin(), 'Ines');
    await joinAt(guest, link, 'Tomas');
    // With friends the card is in its own order and there is no log (rule W6); whoever is waited for learns it.
    await host.getByText('This table plays as usual.').waitFor();
    await host.getByText('How this table plays').click();
    await host.getByText('The card lies there in its own order.').waitFor();
    await host.getByText('What has passed is not listed.').waitFor();
    // W2, W3: one change on the heels of the other, and everybody reads both.
    await host.getByText('Play another way').click();
    await host.getByLabel('Second Charleston').selectOption('never');
    await host.getByLabel('Blind passes').selectOption('not allowed');
    for (const says of ['There is no second Charleston.', 'Nobody passes blind.'])
      await guest.getByText(says).first().waitFor();
    // TG1: to a free place, and back beside the host, whose place it was.
    await guest.getByRole('button', { name: 'Sit here instead' }).first().click();
    await host.getByText('here, across from you').waitFor();
    await host.getByRole('button', { name: 'Swap places with Tomas' }).click();
    await guest.getByText('a bot may take it, on your right').waitFor();
    // TG2: a word reaches the other page, and a reminder whom the table waits for.
    await guest.getByRole('button', { name: 'Ready?' }).click();
    await host.locator('.talk-said').getByText('Tomas: Ready?').waitFor();
    await guest.getByRole('button', { name: 'Remind Ines' }).click();
    await host.locator('.talk-said').getByText('Tomas: Your turn').waitFor();
    await guest.getByRole('button', { name: 'I am ready' }).click();
    await host.getByText(/ is ready and waits for you\.$/).waitFor();
    await host.getByRole('button', { name: 'I am ready' }).click();
    await rack(guest).waitFor();
    const before = await tileLabels(guest);
    await guest.getByRole('button', { name: 'Well passed' }).click();
    await host.locator('.bubble').getByText('Well passed').waitFor();
    await guest.goto('about:blank');
    await host.getByText(/^away; a bot chooses from \d+:\d\d/).waitFor();
    await guest.goto(link);
    await rack(guest).waitFor();
    expect(await tileLabels(guest)).toEqual(before);
    await host.getByText(/^away/).waitFor({ state: 'detached' });
    expect(await heading(guest).textContent()).toMatch(/^First right/);
  });
});

async function sixWords(page: Page): Promise<string | null> {
  await page.getByText('This deal in six words').click();
  return page.locator('.six-words').textContent();
}

/** Fills the tray and answers the names of its tiles, sorted. */
async function fillTrayNamed(page: Page): Promise<string[]> {
  await fillTray(page);
  const labels = await Promise.all(
    (await tray(page).getByRole('button').all()).map((slot) => slot.getAttribute('aria-label')),
  );
  return labels.map((label) => /^Take (.*) back/.exec(label ?? '')?.[1] ?? '').toSorted();
}

async function passBlind(page: Page, count: string): Promise<void> {
  await page
    .getByRole('group', { name: 'Pass blind? How many, without looking?' })
    .getByRole('radio', { name: count })
    .check();
  await passThree(page);
}

/** While the others still choose. The second of two quick taps lands on what has come to the place of the first. */
async function passAndTakeBack(page: Page): Promise<void> {
  await page.evaluate(tapAgain);
  await passThree(page);
  await page.locator('html[data-tapped]').waitFor();
  await page.getByRole('button', { name: 'Take it back' }).click();
  await passButton(page).waitFor();
  expect(await tray(page).getByRole('button').count()).toBe(3);
}

/** In the page: taps the button that takes a pass back in the very moment in which it appears. */
function tapAgain(): void {
  new MutationObserver((_, observer) => {
    const button = document.querySelector<HTMLElement>('.pass-panel.submitted .send button');
    if (button === null) return;
    observer.disconnect();
    button.click();
    document.documentElement.dataset.tapped = 'yes';
  }).observe(document.body, { childList: true, subtree: true });
}
