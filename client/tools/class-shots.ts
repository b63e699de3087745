// Pictures of a class: preparing, joining, the dashboard, the player's table, the big screen, the report.
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { heading, openSheet, passableTiles, passButton, passThree, rack, tray } from './page-actions.ts';

export type Picture = (name: string, of: Page, whole?: boolean) => Promise<Buffer>;

const NAMES = ['Ines', 'Tomas', 'Wilma', 'Odo', 'Runa', 'Bartholomea Featherstone'] as const;
const BIG_SCREEN = { width: 1920, height: 1080 };

export async function shootClass(
  browser: Browser,
  origin: string,
  look: BrowserContextOptions,
  picture: Picture,
): Promise<void> {
  const newPage = async () => (await browser.newContext(look)).newPage();
  const dashboard = await newPage();
  const bigScreen = await dashboard.context().newPage();
  await bigScreen.setViewportSize(BIG_SCREEN);
  const code = await prepared(dashboard, origin, picture);
  await picture('dashboard-empty', dashboard, true);
  await bigScreen.goto(`${origin}/c/${code}/big-screen`);
  await bigScreen.getByText('Join with this code').waitFor();
  await picture('big-screen-code', bigScreen);

  const players: Page[] = [];
  for (const name of NAMES) {
    const player = await newPage();
    await player.goto(`${origin}/c/${code}`);
    await player.getByLabel('Your name at the table').fill(name);
    if (name === 'Ines') await picture('join', player, true);
    await player.getByRole('button', { name: 'Join the class' }).click();
    await heading(player).filter({ hasText: 'You are in' }).waitFor();
    if (name === 'Ines') await picture('player-waiting', player);
    players.push(player);
  }
  await dashboard.getByRole('button', { name: 'Start deal 1' }).click();
  await Promise.all(players.map((player) => rack(player).waitFor()));
  await picture('player-dealt', players[0]!);
  await dashboard.getByRole('button', { name: 'Show on the big screen' }).click();
  await bigScreen.getByText('0 of 6 have chosen.').waitFor();
  await picture('big-screen-rack', bigScreen);
  for (const player of players.slice(0, 3)) await passThree(player);
  await players[5]!.close();
  await dashboard.getByText(/: waiting for /).waitFor();
  await picture('dashboard-waiting', dashboard, true);
  for (const player of players.slice(3, 5)) await passLast(player);
  await dashboard.getByRole('button', { name: 'Let bots choose for players who are away' }).click();
  await dashboard.getByText('First right: continue from…').waitFor();
  await players[0]!.getByText('Your teacher picks the choice that everybody continues from').waitFor();
  await picture('player-chosen', players[0]!);
  await picture('dashboard-guided', dashboard, true);
  await dashboard.getByRole('radio', { name: 'A pass you pick yourself' }).check();
  for (const place of [0, 2]) await dashboard.locator('.guided .pool button').nth(place).click();
  await picture('dashboard-guided-own-pass', dashboard, true);
  await dashboard.getByRole('radio').first().check();
  await dashboard.getByRole('button', { name: 'Reveal the choices' }).click();
  await dashboard.getByRole('button', { name: 'Continue from this choice' }).click();
  await bigScreen.getByText('The class continued with').waitFor();
  await picture('big-screen-choices', bigScreen);
  await players[4]!.getByText('The class continued from').waitFor();
  await picture('player-guided', players[4]!);
  const sheet = await openSheet(players[0]!, 'Settings');
  await sheet.getByRole('button', { name: 'Show my data' }).click();
  await sheet.getByRole('button', { name: 'Delete my data' }).click();
  await sheet.getByText('You give up your seat').scrollIntoViewIfNeeded();
  await picture('personal-data', players[0]!);
  await dashboard.getByRole('link', { name: 'Class report' }).click();
  await dashboard.getByRole('heading', { name: /^Report of / }).waitFor();
  await dashboard.getByRole('heading', { name: 'Step by step' }).waitFor();
  await picture('report', dashboard, true);
  for (const page of [dashboard, ...players]) await page.context().close();
}

/** A guided class of two deals, opened from this page; answers its code. */
async function prepared(dashboard: Page, origin: string, picture: Picture): Promise<string> {
  await dashboard.goto(origin);
  await dashboard.getByRole('button', { name: 'Prepare a class' }).click();
  await dashboard.getByLabel('What is this drill called?').fill('Thursday: pairs before runs');
  await picture('prepare', dashboard, true);
  await dashboard.getByRole('button', { name: 'Find a deal with a lesson' }).click();
  await dashboard.getByText(/Checked \d+ of/).waitFor();
  await picture('prepare-search', dashboard, true);
  await dashboard.getByText('Clearly better:').waitFor({ timeout: 90_000 });
  await dashboard.getByText('Texts for this deal').click();
  await dashboard
    .getByLabel('For the players, shown above their tiles')
    .fill('Which section do these tiles point to?');
  await dashboard.getByRole('button', { name: 'Add a deal with tiles you pick' }).click();
  for (const name of ['3 bam', '3 bam', '4 crak', 'red dragon', 'joker']) {
    await dashboard.getByRole('button', { name, exact: true }).click();
  }
  await dashboard.getByRole('button', { name: 'Add a deal that fits a description' }).click();
  await dashboard.getByLabel('Pairs, pungs and kongs').selectOption('at-least');
  await dashboard.getByText(/of racks fit/).waitFor();
  await dashboard.getByRole('radio', { name: /in guided deals/ }).check();
  // Six players with one of them away are too few for an anonymous class to show anything.
  await dashboard.getByRole('checkbox', { name: /report names each player/ }).check();
  await picture('prepare-whole', dashboard, true);
  await dashboard.getByRole('button', { name: 'Open the class' }).click();
  const code = dashboard.locator('.big-code');
  await code.waitFor();
  return (await code.getAttribute('data-code')) ?? '';
}

/** Passes the last three tiles of the rack instead of the first. */
async function passLast(page: Page): Promise<void> {
  await tray(page).waitFor();
  for (let left = 3; left > 0; left--) {
    await passableTiles(page).last().click();
    await tray(page)
      .getByText('empty place')
      .nth(left - 1)
      .waitFor({ state: 'detached' });
  }
  await passButton(page).click();
}
