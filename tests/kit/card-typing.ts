// A card put into the editor of the built page with a keyboard, one line a hand; the keys are counted.
import type { Page } from 'playwright-core';
import { z } from 'zod';
import { type CardFile, cardDraftSchema } from '../../shared-engine/card/format.ts';
import { writeShorthand } from '../../shared-engine/card/shorthand/write.ts';
import { typedBriefly } from './typed-briefly.ts';

/** Opens a new card, without hands and with one section. */
export async function openNewCard(page: Page, origin: string): Promise<void> {
  await page.goto(`${origin}/#my-cards`);
  await page.getByRole('button', { name: 'New card' }).click();
  await page.getByLabel('Name of the card').waitFor();
}

/** Types all sections with their hands; returns the keys pressed for each hand, Enter included. */
export async function typeCard(page: Page, { sections, patterns }: CardFile): Promise<number[]> {
  const keys: number[] = [];
  for (const [nth, { id, name }] of sections.entries()) {
    if (nth > 0) await page.getByRole('button', { name: 'Add a section' }).click();
    await page.getByLabel(`Name of section ${nth + 1}`).focus();
    await page.keyboard.type(name);
    await page.keyboard.press('Enter');
    for (const pattern of patterns.filter(({ section }) => section === id)) {
      const text = typedBriefly(writeShorthand(pattern));
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
      keys.push(text.length + 1);
    }
  }
  return keys;
}

const storedSchema = z.object({ card: cardDraftSchema });

/** The card in the editor as this browser has stored it. */
export async function storedCard(page: Page): Promise<CardFile> {
  // Hands begun and left empty go when the editor is left.
  await page.getByRole('button', { name: 'All my cards' }).click();
  await page.getByRole('button', { name: 'New card' }).waitFor();
  const texts = await page.evaluate(() =>
    Object.keys(localStorage)
      .filter((key) => key.startsWith('quadrille.own-card.'))
      .map((key) => localStorage.getItem(key) ?? ''),
  );
  return storedSchema.parse(JSON.parse(texts.at(-1) ?? 'null')).card;
}
