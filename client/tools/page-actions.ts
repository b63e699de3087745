// What a person does at the table, by the names a person reads: used by the browser tests and the screenshots.
import type { BrowserContext, Locator, Page } from 'playwright-core';

/** The open question, the title of the review or the name of the screen. */
export function heading(page: Page): Locator {
  return page.getByRole('heading', { level: 1 });
}

/** The heading's words now. */
export async function titleOf(page: Page): Promise<string> {
  return (await heading(page).textContent()) ?? '';
}

export function rack(page: Page): Locator {
  return page.getByRole('toolbar', { name: 'Your rack' });
}

/** The tiles on the rack that may be passed and are not in the tray. */
export function passableTiles(page: Page): Locator {
  return rack(page).locator('button[aria-pressed="false"]:not([aria-label^="joker"])');
}

export function passButton(page: Page): Locator {
  return page.getByRole('button', { name: /^Pass (right|across|left) to / });
}

export function tray(page: Page): Locator {
  return page.getByRole('group', { name: 'Tray' });
}

/** Bots at tables in the page choose at once, as those of the server do that `startPageServer` starts. */
export function withoutBotPauses(context: BrowserContext): Promise<unknown> {
  return context.addInitScript(() => {
    // A page without an address has no storage.
    if (window.location.protocol.startsWith('http')) localStorage.setItem('quadrille.bot-delay', '0');
  });
}

/** Opens a table alone; the tiles are on the rack when this returns. */
export async function dealAlone(page: Page, origin: string): Promise<void> {
  await page.goto(origin);
  await page.getByRole('button', { name: 'Deal me in' }).click();
  await rack(page).waitFor();
}

/** The rack follows the table a frame later: until then it shows tiles that have gone. */
async function rackFollowed(page: Page): Promise<void> {
  await page.locator('.rack[aria-busy=true]').waitFor({ state: 'detached' });
}

/** How long a tap on a tile may take to show. */
const TAP_TIMEOUT_MS = 3_000;

/** Fills what is empty in the tray from the left end of the rack. */
export async function fillTray(page: Page): Promise<void> {
  await tray(page).waitFor();
  await rackFollowed(page);
  const empty = tray(page).getByText('empty place');
  for (let left = await empty.count(); left > 0; left = await empty.count()) {
    await passableTiles(page).first().click();
    // A tap that meets the very frame in which the table changes is for a rack that is gone, and is made again.
    await empty
      .nth(left - 1)
      .waitFor({ state: 'detached', timeout: TAP_TIMEOUT_MS })
      .catch(() => undefined);
  }
}

export async function passThree(page: Page): Promise<void> {
  await fillTray(page);
  await passButton(page).click();
}

/** Waits until the heading is another than `before` and answers the new one. */
export async function nextHeading(page: Page, before: string): Promise<string> {
  const changed = heading(page).filter({ hasNotText: before });
  await changed.waitFor();
  await rackFollowed(page);
  return titleOf(page);
}

/** Plays from the present question to the end, always continuing and asking for `ask` tiles; returns the headings met. */
export async function playToClose(page: Page, ask = 1): Promise<string[]> {
  const met: string[] = [];
  let now = await titleOf(page);
  while (!isClosed(now)) {
    met.push(now);
    now = await onward(page, now, { ask, go: true });
  }
  return met;
}

/** Answers the open question, where there is one for this seat, and waits for the next heading. */
export async function onward(page: Page, now: string, answers: Answers): Promise<string> {
  await answer(page, now, answers);
  return nextHeading(page, now);
}

interface Answers {
  readonly ask: number;
  readonly go: boolean;
}

export function isClosed(title: string): boolean {
  return title === 'What this deal can teach you';
}

/** Answers the open question and waits for nothing. */
export async function answer(page: Page, question: string, { ask, go }: Answers): Promise<void> {
  if (question.includes(' for ')) await passThree(page);
  else if (question.startsWith('Second Charleston'))
    await page.getByRole('button', { name: go ? 'Continue' : 'I’d stop', exact: true }).click();
  else if (question.startsWith('Courtesy: how many')) {
    await page.getByRole('button', { name: String(ask), exact: true }).click();
  }
}

/** What a screen reader says of each tile on the rack, in the order shown. */
export async function tileLabels(page: Page): Promise<(string | null)[]> {
  await rackFollowed(page);
  const tiles = await rack(page).getByRole('button').all();
  return Promise.all(tiles.map((tile) => tile.getAttribute('aria-label')));
}

/** Opens a table for friends and answers its link. */
export async function openFor(page: Page, origin: string, name: string): Promise<string> {
  await page.goto(origin);
  await page.getByLabel('Your name at the table').fill(name);
  await page.getByRole('button', { name: 'Open a table' }).click();
  await page.getByRole('button', { name: 'I am ready' }).waitFor();
  return page.url();
}

/** Follows a friend's link and takes the first seat nobody holds. */
export async function joinAt(page: Page, link: string, name: string): Promise<void> {
  await page.goto(link);
  await page.getByLabel('Your name at the table').fill(name);
  await page.getByRole('button', { name: 'Sit here' }).first().click();
  await page.getByRole('button', { name: 'I am ready' }).waitFor();
}

/** Opens the example of the help; its tiles are on the rack when this returns. */
export async function openLesson(page: Page, origin: string): Promise<void> {
  await page.goto(origin);
  await page.getByRole('link', { name: /two minutes/ }).click();
  await rack(page).waitFor();
}

export async function openSheet(page: Page, name: 'Help' | 'Settings'): Promise<Locator> {
  await page.getByRole('navigation', { name: 'Help and settings' }).getByRole('button', { name }).click();
  const sheet = page.getByRole('dialog');
  await sheet.waitFor();
  return sheet;
}

export async function closeSheet(page: Page): Promise<void> {
  // Closing is a step back in the browser's history, which would break off another page that is asked for meanwhile.
  await Promise.all([steppedBack(page), page.getByRole('button', { name: 'Close' }).click()]);
  await page.getByRole('dialog').waitFor({ state: 'detached' });
}

function steppedBack(page: Page): Promise<void> {
  return page.evaluate(
    () =>
      new Promise<void>((resolve) => window.addEventListener('popstate', () => resolve(), { once: true })),
  );
}
