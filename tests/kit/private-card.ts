// A card of somebody's own with hands invented for the tests, and how a person takes it up from a friend's link.
import type { Page } from 'playwright-core';
import { packCard } from '../../client/cards/own/card-transfer.ts';
import { CARD_FORMAT, type CardFile } from '../../shared-engine/card/format.ts';
import { readShorthand } from '../../shared-engine/card/shorthand/read.ts';

const HANDS: Readonly<Record<string, readonly string[]>> = {
  Tides: ['5a 4a+3 3match 2f', '3a 3a+4 / 3a 3a+4 2east', '2a 2a+1 2a+2 / 5a+3 3match'],
  Lanterns: ['5dragon 4dragon2 5f', '6a / 3a+1 / 3a+2 2soap', '4wind 3a 3a+5 / 4a'],
};

export const PRIVATE_CARD: CardFile = {
  format: CARD_FORMAT,
  id: 'harbor-card',
  name: 'Harbor card',
  parameters: {},
  sections: Object.keys(HANDS).map((name) => ({ id: name.toLowerCase(), name })),
  patterns: Object.entries(HANDS).flatMap(([name, texts]) =>
    texts.map((text, nth) => {
      const read = readShorthand(text);
      if (!read.ok) throw new Error(`${text}: ${read.problems[0]?.message}`);
      return { id: `${name.toLowerCase()}-${nth + 1}`, section: name.toLowerCase(), ...read.pattern };
    }),
  ),
};

/** A name of one of its sections, as reviews write it. */
export const PRIVATE_SECTION = /tides|lanterns/i;

/** Keeps the card that a link brings, and plays with it from now on. */
export async function playWithPrivateCard(page: Page, origin: string): Promise<void> {
  await page.goto(`${origin}/#card=${await packCard(PRIVATE_CARD)}`);
  await page.getByRole('button', { name: 'Keep it in My cards' }).click();
  await page.getByRole('button', { name: 'All my cards' }).click();
  await page.getByRole('button', { name: `Play with it: ${PRIVATE_CARD.name}` }).click();
  await page.getByText('Your new tables play with this card.').waitFor();
}

/**
 * A second tab lists the round that the first has just closed, with the card's name, as soon as it is stored; its review,
 * opened again, speaks of the card's sections.
 */
export async function findsRoundOnPrivateCard(page: Page, origin: string): Promise<boolean> {
  const rounds = await page.context().newPage();
  await rounds.goto(`${origin}/#my-rounds`);
  const row = rounds.getByRole('listitem').filter({ hasText: PRIVATE_CARD.name });
  await row.getByRole('link').first().click();
  await rounds.getByText('A round of').waitFor();
  await rounds.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
  const told = (await rounds.locator('main').textContent()) ?? '';
  await rounds.close();
  return PRIVATE_SECTION.test(told);
}
