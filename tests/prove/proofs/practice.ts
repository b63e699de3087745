// Thirty rounds played in a real browser on a phone without a network, by somebody with one habit: the page finds it.
import type { Browser, Page } from 'playwright-core';
import { tileName } from '../../../client/tiles/tile-names.ts';
import { openChromium } from '../../../client/tools/chromium.ts';
import {
  answer,
  isClosed,
  nextHeading,
  passButton,
  rack,
  tileLabels,
  titleOf,
  withoutBotPauses,
} from '../../../client/tools/page-actions.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { createRackScorer, removals } from '../../../shared-engine/policy/pass-selection.ts';
import { STYLE_DATA } from '../../../shared-engine/policy/styles.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import { bagOf, countOf } from '../../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face } from '../../../shared-engine/rules/tiles/face.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const ROUNDS: Record<Size, number> = { small: 10, full: 30 };
/** Judging that many rounds takes minutes. */
const PATIENCE = 900_000;
const HABIT = /passing across cost you most/;

export const proof: Proof = {
  summary:
    'Rounds played in a real browser with one habit: the page names it, exercises it, and takes it along.',
  async run({ seed, size, tell }) {
    const server = await startPageServer();
    const browser = await openChromium();
    try {
      const page = await openPhone(browser, server.origin);
      for (let nth = 1; nth <= ROUNDS[size]; nth++) {
        await playRound(page, server.origin, `${seed} ${nth}`);
        if (nth % 5 === 0) tell?.({ what: 'rounds played', value: nth, bar: `${ROUNDS[size]}`, ok: true });
      }
      const headline = await headlineOf(page, server.origin, ROUNDS[size]);
      return [
        { what: 'the page names the habit', value: headline, bar: String(HABIT), ok: HABIT.test(headline) },
        ...(await exercise(page)),
        ...(await otherDevice(browser, page, server.origin, headline)),
      ];
    } finally {
      await browser.close();
      await server.stop();
    }
  },
};

/** A phone that has been to the page once and has no network from then on. */
async function openPhone(browser: Browser, origin: string): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    serviceWorkers: 'allow',
  });
  await withoutBotPauses(context);
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.goto(origin);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
  await context.setOffline(true);
  await page.reload();
  return page;
}

async function playRound(page: Page, origin: string, name: string): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${origin}/#deal=${seedNamed(name)}.1.0`);
  await rack(page).waitFor();
  for (let title = await titleOf(page); !isClosed(title); title = await nextHeading(page, title)) {
    if (title.includes(' for ')) await pass(page, title);
    else await answer(page, title, { ask: 0, go: true });
  }
  // Long enough for the round to be stored; what is not judged yet is judged later.
  await page.getByRole('heading', { name: 'Your choices, step by step' }).waitFor();
}

/** Whoever passes across gives up the largest groups, and passes well otherwise. */
async function pass(page: Page, title: string): Promise<void> {
  const labels = (await tileLabels(page)).map((label) => label ?? '');
  const held = labels.map((label) => faceOf(label));
  const wanted = title.includes('across') ? fromGroups(held) : leastUseful(held);
  const left = [...wanted];
  for (const [place, face] of held.entries()) {
    const at = left.indexOf(face);
    if (at < 0) continue;
    left.splice(at, 1);
    await rack(page)
      .getByRole('button', { name: labels[place]!, exact: true, pressed: false })
      .first()
      .click();
  }
  await passButton(page).click();
}

function fromGroups(held: readonly Face[]): readonly Face[] {
  const bag = bagOf(held);
  const natural = held.filter((face) => face !== 'joker');
  return natural.toSorted((a, b) => countOf(bag, b) - countOf(bag, a)).slice(0, 3);
}

function leastUseful(held: readonly Face[]): readonly Face[] {
  const style = STYLE_DATA.typical;
  if (style.kind !== 'nearness') throw new Error('The usual style is no longer one of nearness.');
  const scorer = createRackScorer(houseKernel, style, stream('somebody', 'passes'));
  return removals(scorer, bagOf(held), 3).map(({ face }) => face);
}

function faceOf(label: string): Face {
  const face = FACES.find((one) => label === tileName(one) || label.startsWith(`${tileName(one)},`));
  if (face === undefined) throw new Error(`No tile is called "${label}".`);
  return face;
}

/** What the page of habits says once every round has been judged. */
async function headlineOf(page: Page, origin: string, rounds: number): Promise<string> {
  await page.goto(`${origin}/#what-costs-me`);
  const headline = page.locator('.habit-headline').filter({ hasText: `Over ${rounds} rounds` });
  await headline.waitFor({ timeout: PATIENCE });
  return (await page.locator('.habit-headline, .habit-said').allTextContents()).join(' ');
}

async function exercise(page: Page): Promise<ProofRow[]> {
  await page.getByRole('link', { name: /^Ten minutes today/ }).tap();
  const title = (await page.getByRole('heading', { level: 2 }).first().textContent()) ?? '';
  const tiles = page.locator('.pick-rack button:not([aria-label="joker"])');
  for (let nth = 0; nth < 3; nth++) await tiles.nth(nth).tap();
  await page.getByRole('button', { name: 'That is my answer' }).tap();
  const back = page.getByText(/^It comes back on /);
  await back.waitFor();
  const words = (await back.textContent()) ?? '';
  await page.getByRole('button', { name: 'Next' }).tap();
  return [
    { what: 'the exercise that follows is about it', value: title, bar: 'across', ok: /across/.test(title) },
    { what: 'the answer says when it comes back', value: words, bar: 'a day', ok: words !== '' },
  ];
}

async function otherDevice(
  browser: Browser,
  page: Page,
  origin: string,
  headline: string,
): Promise<ProofRow[]> {
  await page.goto(`${origin}/#my-rounds`);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save all as a file' }).tap();
  const file = await (await saved).path();
  const other = await openPhone(browser, origin);
  await other.goto(`${origin}/#my-rounds`);
  await other.getByLabel('Add rounds from a file').setInputFiles(file);
  await other.getByText(/rounds added\./).waitFor();
  const there = await headlineOf(other, origin, Number(/Over (\d+) rounds/.exec(headline)?.[1]));
  return [
    {
      what: 'another device says the same from the file',
      value: there,
      bar: headline,
      ok: there === headline,
    },
  ];
}
