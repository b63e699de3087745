// Pictures of a class: preparing, joining, the dashboard, the player's table, the big screen, the report.
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { heading, openSheet, passableTiles, passButton, passThree, rack, tray } from './page-actions.ts';

export type Picture = (name: string, of: Page, whole?: boolean) => Promise<Buffer>;

const NAMES = ['Ines', 'Tomas', 'Wilma', 'Odo', 'Runa', 'Bartholomea Featherstone'] as const;
const PROJECTOR = { width: 1920, height: 1080 };

export async function shootClass(
  browser: Browser,
  origin: string,
  look: BrowserContextOptions,
  picture: Picture,
): Promise<void> {
  const newPage = async () => (await browser.newContext(look)).newPage();
  const desk = await newPage();
  const wall = await desk.context().newPage();
  await wall.setViewportSize(PROJECTOR);
  const code = await prepared(desk, origin, picture);
  await picture('desk-empty', desk, true);
  await wall.goto(`${origin}/c/${code}/wall`);
  await wall.getByText('Join with the code').waitFor();
  await picture('wall-code', wall);

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
  await desk.getByRole('button', { name: 'Deal the first deal' }).click();
  await Promise.all(players.map((player) => rack(player).waitFor()));
  await picture('player-dealt', players[0]!);
  await desk.getByRole('button', { name: 'Put it on the wall' }).click();
  await wall.getByText('0 of 6 have chosen.').waitFor();
  await picture('wall-rack', wall);
  for (const player of players.slice(0, 3)) await passThree(player);
  await players[5]!.close();
  await desk.getByText(/still to choose/).waitFor();
  await picture('desk-waiting', desk, true);
  for (const player of players.slice(3, 5)) await passLast(player);
  await desk.getByRole('button', { name: 'Let bots choose for those who are away' }).click();
  await desk.getByText('the class goes on from…').waitFor();
  await players[0]!.getByText('When all have, your teacher says').waitFor();
  await picture('player-chosen', players[0]!);
  await picture('desk-line', desk, true);
  await desk.getByRole('radio', { name: 'A pass of your own choice' }).check();
  for (const place of [0, 2]) await desk.locator('.line .pool button').nth(place).click();
  await picture('desk-line-own', desk, true);
  await desk.getByRole('radio').first().check();
  await desk.getByRole('button', { name: 'Reveal the choices' }).click();
  await desk.getByRole('button', { name: 'Go on from this' }).click();
  await wall.getByText('The class went on from').waitFor();
  await picture('wall-choices', wall);
  await players[4]!.getByText('The class went on from').waitFor();
  await picture('player-line', players[4]!);
  const sheet = await openSheet(players[0]!, 'Settings');
  await sheet.getByRole('button', { name: 'Show what is kept' }).click();
  await sheet.getByRole('button', { name: 'Have it forgotten' }).click();
  await sheet.getByText('You give up your seat.').scrollIntoViewIfNeeded();
  await picture('kept', players[0]!);
  await desk.getByRole('link', { name: 'Report of this class' }).click();
  await desk.getByRole('heading', { name: /^Report: / }).waitFor();
  await desk.getByRole('heading', { name: 'Step by step' }).waitFor();
  await picture('report', desk, true);
  for (const page of [desk, ...players]) await page.context().close();
}

/** A guided class of two deals, opened from this page; answers its code. */
async function prepared(desk: Page, origin: string, picture: Picture): Promise<string> {
  await desk.goto(origin);
  await desk.getByRole('button', { name: 'Prepare a class' }).click();
  await desk.getByLabel('What is this drill called?').fill('Thursday: pairs before runs');
  await picture('prepare', desk, true);
  await desk.getByRole('button', { name: 'Look for one with a lesson in it' }).click();
  await desk.getByText(/Looked at \d+ of/).waitFor();
  await picture('prepare-search', desk, true);
  await desk.getByText('Clearly better:').waitFor({ timeout: 90_000 });
  await desk.getByText('Words that go with this deal').click();
  await desk
    .getByLabel('What the players read above their tiles')
    .fill('Which section do these tiles point to?');
  await desk.getByRole('button', { name: 'Add a deal set by hand' }).click();
  for (const name of ['3 bam', '3 bam', '4 crak', 'red dragon', 'joker']) {
    await desk.getByRole('button', { name, exact: true }).click();
  }
  await desk.getByRole('button', { name: 'Add a described deal' }).click();
  await desk.getByLabel('Pairs or more').selectOption('at-least');
  await desk.getByText(/of racks fit/).waitFor();
  await desk.getByRole('radio', { name: /one line of play/ }).check();
  await picture('prepare-whole', desk, true);
  await desk.getByRole('button', { name: 'Open the class' }).click();
  const code = desk.locator('.big-code');
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
