// Rounds by somebody with one habit, and the walk through the pages that name and exercise it.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { historyLines } from '../../shared-engine/practice/history-file.ts';
import type { StoredChoice, StoredRound } from '../../shared-engine/practice/stored-round.ts';
import { axeFindings, horizontalOverflow } from './accessibility-checks.ts';
import { historyOf, storedChoice, storedRound } from './stored-rounds.ts';

const DAY = 86_400_000;
const FIRST_DAY = Date.UTC(2099, 0, 1);

/** Ten rounds, long from now: a flower given away in each, and in one of them that cost enough to be asked again. */
export function habitRounds(): readonly StoredRound[] {
  return Array.from({ length: 10 }, (_, nth) => habitRound(nth));
}

function habitRound(nth: number): StoredRound {
  const given: StoredChoice = storedChoice({
    step: 'first-across',
    verdict: nth === 0 ? 'costly' : 'a-little-worse',
    loss: 3,
    halfWidth: 0.5,
    mistakes: ['flower-given'],
    withFlower: true,
  });
  const choices = [storedChoice({ verdict: 'best', loss: -1, halfWidth: 0.5 }), given];
  const ledger = { start: 25, close: 20 + nth, choices: -4, halfWidth: 1, standIns: 0, jumps: 0 };
  return storedRound(`a habit ${nth}`, { playedAt: FIRST_DAY + nth * DAY, choices, ledger });
}

/** Adds the rounds as a file; from the habit to an exercise that comes back and to racks drawn for it. */
export async function findsAndExercisesHabit(page: Page, origin: string): Promise<void> {
  const text = [...historyLines(historyOf(...habitRounds()))].join('');
  await page.goto(`${origin}/#my-rounds`);
  await page
    .getByLabel('Add rounds from a file')
    .setInputFiles({ name: 'rounds.jsonl', mimeType: 'application/jsonl', buffer: Buffer.from(text) });
  await page.getByText('10 rounds added.').waitFor();
  await page.goto(`${origin}/#what-costs-me`);
  await page.getByText(/one habit stands out: you gave a flower away/).waitFor();
  await page.getByRole('img', { name: /^From your first rounds to the latest/ }).waitFor();
  expect([await axeFindings(page), await horizontalOverflow(page)]).toEqual([[], 0]);
  await page.getByRole('link', { name: /^Ten minutes today/ }).click();
  await page.getByRole('heading', { name: /^First across, in your round of/ }).waitFor();
  const tiles = page.locator('.pick-rack [aria-disabled="false"]');
  for (const nth of [0, 1, 2]) await tiles.nth(nth).click();
  await page.getByRole('button', { name: 'That is my answer' }).click();
  await page.getByText(/^It comes back on /).waitFor();
  await page.goto(`${origin}/#ten-racks`);
  await page.getByLabel('The racks').selectOption('from the habit that costs me most');
  await page.getByText('Racks with which our club-player bot gave a flower away.').waitFor();
  await page.getByRole('button', { name: 'Deal the first rack' }).click();
  // How long one is looked for depends on the cores.
  const drawing = page.getByText(/^Looking for a rack that fits your habit…/);
  await drawing.or(page.getByRole('heading', { name: 'Rack 1 of 10' })).waitFor();
}
