// Lays a whole exchange into the page as somebody with real tiles does, and counts the taps.
import type { Page } from 'playwright-core';

const RACK =
  '1 bam, 1 bam, 2 bam, 3 bam, 4 crak, 5 crak, 6 crak, 7 dot, 8 dot, 9 dot, east wind, flower, joker'.split(
    ', ',
  );

/** What is passed at each step, and what comes. */
export const LAID_PASSES = [
  ['3 bam, 9 dot, east wind', '1 dot, 2 dot, west wind'],
  ['1 dot, 2 dot, west wind', '1 crak, 2 crak, north wind'],
  ['1 crak, 2 crak, north wind', '3 dot, 4 dot, south wind'],
  ['3 dot, 4 dot, south wind', '9 bam, 9 crak, red dragon'],
  ['9 bam, 9 crak, red dragon', '8 bam, 8 crak, green dragon'],
  ['8 bam, 8 crak, green dragon', '5 dot, 6 dot, east wind'],
] as const;

/** From the front page to the close; returns the taps beside those that choose. */
export async function layExchange(page: Page): Promise<number> {
  let taps = 0;
  const press = async (name: string | RegExp) => {
    taps++;
    await page.getByRole('button', { name }).click();
  };
  const lay = async (tiles: readonly string[]) => {
    for (const tile of tiles) await press(new RegExp(`^${tile}, \\d left$`));
  };
  await page.getByRole('link', { name: /real tiles/ }).click();
  taps += 2;
  await page.getByRole('radio', { name: 'Left' }).check({ force: true });
  await lay(RACK);
  await press('This is my rack');
  for (const [step, [gave, came]] of LAID_PASSES.entries()) {
    if (step === 3) {
      await page.getByRole('button', { name: 'Continue' }).click();
      await press('Go on');
    }
    for (const tile of gave.split(', ')) {
      await page.getByRole('button', { name: tile, exact: true, pressed: false }).first().click();
    }
    await page.getByRole('button', { name: 'That is my answer' }).click();
    if (step === 0) await page.locator('.judgement .judged h3').waitFor();
    await lay(came.split(', '));
    await press('That is what came');
  }
  await page.getByRole('button', { name: 'No tiles' }).click();
  await press('Go on');
  await page.getByRole('heading', { name: 'The exchange is over' }).waitFor();
  return taps;
}
