// A lesson made of a rack from the table, in a browser: written, shared, played along and printed, without a network.
import type { Page } from 'playwright-core';
import { LAID_PASSES } from './lay-exchange.ts';

const WORDS = 'Keep the 1 bam, pass <b>winds</b> first.';

/** What was seen of it. */
export interface LessonSeen {
  /** Letters of the link. */
  readonly link: number;
  /** Tiles drawn in the teacher's words, and those words as they are read out. */
  readonly wordTiles: number;
  readonly words: string;
  /** Steps on the handout, and whether the page to play on is printed too. */
  readonly printed: number;
  readonly isPagePrinted: boolean;
  /** What is said to a link of which the end is missing. */
  readonly torn: string;
}

/** From an exchange that was laid in to its end; its card has not been passed on before. */
export async function writesLessonOfTable(page: Page, origin: string): Promise<LessonSeen> {
  await page.goto(`${origin}/#own-tiles`);
  await page.getByRole('button', { name: 'Write a lesson about it' }).click();
  await page.getByRole('button', { name: 'Deal 1: tiles you pick' }).click();
  await page.getByText('What you would choose, and why', { exact: true }).click();
  await page.getByLabel('Your words').fill(WORDS);
  await page.getByRole('button', { name: 'Make the lesson' }).click();
  await page.getByRole('button', { name: 'I may pass it on', exact: true }).click();
  const link = await page.getByRole('textbox', { name: 'Link to the lesson' }).inputValue();
  await page.goto(origin);
  await page.goto(link);
  await playsFirstStep(page);
  const words = page.locator('.lesson-compared .task');
  const seen = {
    link: link.length,
    wordTiles: await words.locator('.text-tile').count(),
    words: await words.evaluate(readOut),
    ...(await printedOf(page)),
  };
  await page.goto(origin);
  await page.goto(link.slice(0, -8));
  return { ...seen, torn: (await page.getByRole('alert').textContent()) ?? '' };
}

/** In the page: the text without what is drawn. */
function readOut(element: Element): string {
  const copy = document.createElement('p');
  copy.innerHTML = element.innerHTML;
  for (const drawing of copy.querySelectorAll('svg')) drawing.remove();
  return copy.textContent ?? '';
}

/** As the teacher does. */
async function playsFirstStep(page: Page): Promise<void> {
  const [[gave]] = LAID_PASSES;
  for (const tile of gave.split(', ')) {
    await page.getByRole('button', { name: tile, exact: true, pressed: false }).first().click();
  }
  await page.getByRole('button', { name: 'That is my answer' }).click();
  // The card is at hand as at a table, and a tab that is loaded anew stands where it stood.
  await page.getByRole('button', { name: 'Card', exact: true }).click();
  await page.locator('.card-panel .match-tiles').first().waitFor();
  await page.getByText('You chose as your teacher does.').waitFor();
  await page.reload();
  await page.getByText('You chose as your teacher does.').waitFor();
}

async function printedOf(page: Page): Promise<Pick<LessonSeen, 'printed' | 'isPagePrinted'>> {
  await page.getByRole('button', { name: 'Go on from your teacher’s choice' }).click();
  await page.getByText('set by your teacher').first().waitFor();
  await page.emulateMedia({ media: 'print' });
  const printed = await page.locator('.printed-moment:visible').count();
  const isPagePrinted = await page.locator('main').isVisible();
  await page.emulateMedia({ media: 'screen' });
  return { printed, isPagePrinted };
}
