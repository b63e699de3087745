// A class in real Chromium from its preparation to its report: three desks, a big screen, eight players on small screens.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import {
  heading,
  passableTiles,
  passButton,
  passThree,
  rack,
  tileLabels,
  withoutBotPauses,
} from '../../../client/tools/page-actions.ts';
import type { Drill } from '../../../shared-engine/drill/format.ts';
import type { ProofRow } from '../proof.ts';

export type Form = Drill['form'];

export interface WalkPlan {
  readonly browser: Browser;
  readonly form: Form;
  /** Without the one who comes late. */
  readonly players: number;
  /** Ends the server and starts it anew at the same address. */
  restart(): Promise<void>;
  readonly origin: string;
  /** Folder of the pictures. */
  readonly pictures: string;
}

const NAMES = ['Ines', 'Tomas', 'Wilma', 'Odo', 'Runa', 'Bela', 'Cato', 'Dunja'] as const;
const SCREENS = [
  { width: 360, height: 740 },
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
] as const;
const DESK = { width: 1280, height: 800 };
const WALL = { width: 1920, height: 1080 };
/** How long a page is waited for on busy cores, in milliseconds. */
const PATIENCE_MS = 120_000;

const SITTINGS: Readonly<Record<Form, string>> = {
  alone: 'Everybody alone, with the same three bots.',
  tables: 'Four players at each table.',
  guided: 'Everybody alone, in guided deals.',
};

export async function walkClass(plan: WalkPlan): Promise<readonly ProofRow[]> {
  const errors: string[] = [];
  const open = (viewport: BrowserContextOptions['viewport']) => newPage(plan.browser, viewport, errors);
  const look = picturesIn(plan.pictures, plan.form);
  const code = await prepare(await open(DESK), plan, look);
  const { desk, assistant, wall } = await openDesks(code, plan, open);
  const players: Page[] = [];
  for (const [n, name] of NAMES.slice(0, plan.players).entries())
    players.push(await join(await open(SCREENS[n % SCREENS.length]), code, name, plan));
  await look(desk, 'desk before the first deal');
  if (plan.form === 'tables') await moveToNewTable(desk, players[1]!, NAMES[1]);
  await desk.getByLabel('Stop before a step').selectOption('first-across');
  await desk.getByRole('button', { name: 'Start deal 1' }).click();
  for (const [n, page] of players.entries()) {
    await rack(page).waitFor();
    // Every third chooses otherwise, so that there is a ranking to look at.
    await (n % 3 === 2 ? passLastThree(page) : passThree(page));
  }
  const late = await join(await open(SCREENS[0]), code, 'Late Pia', plan);
  // At tables of four nobody joins a deal that runs with others at it: the late player has a table of the own.
  await rack(late).waitFor();
  await passThree(late);
  const cut = await cutAndBack(players[1]!, desk);
  const out = await remove(desk, players.at(-1)!, NAMES[plan.players - 1]!);
  await desk.getByRole('button', { name: 'Show on the big screen' }).click();
  await desk.getByRole('button', { name: 'Reveal the choices' }).click();
  const before = await ranking(wall);
  await look(wall, 'big screen');
  await look(desk, 'desk at the reveal');
  await look(players[0]!, 'player at the stop');
  await plan.restart();
  await wall.reload();
  const after = await ranking(wall);
  await assistant.reload();
  await assistant.getByRole('region', { name: 'On the big screen now' }).waitFor();
  const saved = await assistant.getByRole('button', { name: 'Save the drill as a file' }).isVisible();
  await look(assistant, 'second desk after the restart');
  const pages = await endAndReport(desk, look);
  const row = (what: string, value: string | boolean, bar: string, ok: boolean): ProofRow => ({
    what: `${plan.form}: ${what}`,
    value,
    bar,
    ok,
  });
  return [
    row('ranking on the big screen before and after a restart', before === after, 'true', before === after),
    row('tiles of a player who was cut and came back', cut, 'the same', cut === 'the same'),
    row('what a removed player reads', out, 'that the teacher did it', /^Your teacher has taken/.test(out)),
    row('a desk opened with a key saves the drill', saved, 'true', saved),
    row('pages of the printed report of one deal', `${pages}`, 'at most 3', pages <= 3),
    row('errors of pages', errors.join('; ') || 'none', 'none', errors.length === 0),
  ];
}

async function newPage(browser: Browser, viewport: BrowserContextOptions['viewport'], errors: string[]) {
  const context = await browser.newContext({
    viewport: viewport ?? null,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
  });
  context.setDefaultTimeout(PATIENCE_MS);
  await withoutBotPauses(context);
  const page = await context.newPage();
  page.on('pageerror', ({ message }) => errors.push(message));
  return page;
}

type Look = (page: Page, name: string) => Promise<void>;

function picturesIn(folder: string, form: Form): Look {
  mkdirSync(folder, { recursive: true });
  return async (page, name) => {
    await page.screenshot({ path: path.join(folder, `${form} ${name}.png`), fullPage: true });
  };
}

async function prepare(page: Page, { origin, form }: WalkPlan, look: Look): Promise<string> {
  await page.goto(origin);
  await page.getByRole('button', { name: 'Prepare a class' }).click();
  await page.getByLabel('What is this drill called?').fill('Walk drill');
  await page.getByRole('button', { name: 'Add a random deal' }).click();
  await page.getByRole('radio', { name: SITTINGS[form] }).check();
  await page.getByRole('checkbox', { name: /names each player/ }).check();
  await look(page, 'preparing');
  await page.getByRole('button', { name: 'Open the class' }).click();
  return (await page.locator('[data-code]').getAttribute('data-code')) ?? '';
}

/** The first teacher's computer makes two keys and a code and is not needed any more. */
async function openDesks(
  code: string,
  { browser, origin }: WalkPlan,
  open: (at: typeof DESK) => Promise<Page>,
) {
  const first = browser.contexts()[browser.contexts().length - 1]!.pages()[0]!;
  const desks: Page[] = [];
  for (let made = 0; made < 2; made++) {
    await first.getByRole('button', { name: 'Make a key' }).click();
    const field = first.getByLabel('Link with the key');
    const link = await field.inputValue();
    const desk = await open(DESK);
    await desk.goto(link);
    await desk.getByRole('heading', { name: 'Other computers' }).waitFor();
    desks.push(desk);
    await first.reload();
  }
  await first.getByRole('button', { name: 'Make a code' }).click();
  const shown = await first.locator('[data-screen-code]').getAttribute('data-screen-code');
  const wall = await open(WALL);
  await wall.goto(`${origin}/c/${code}/big-screen`);
  await wall.getByLabel('Code for the big screen').fill(shown ?? '');
  await wall.getByRole('button', { name: 'Show the big screen' }).click();
  await wall.getByText('Join with this code').waitFor();
  await first.context().close();
  const [desk, assistant] = desks;
  return { desk: desk!, assistant: assistant!, wall };
}

async function join(page: Page, code: string, name: string, { origin }: WalkPlan): Promise<Page> {
  await page.goto(`${origin}/c/${code}`);
  await page.getByLabel('Your name at the table').fill(name);
  await page.getByRole('button', { name: 'Join the class' }).click();
  await heading(page)
    .filter({ hasText: /You are in|First right/ })
    .waitFor();
  return page;
}

async function passLastThree(page: Page): Promise<void> {
  for (let tile = 0; tile < 3; tile++) await passableTiles(page).last().click();
  await passButton(page).click();
}

/** Before the first deal; the player's page finds the new place by itself. */
async function moveToNewTable(desk: Page, page: Page, name: string): Promise<void> {
  const row = rowOf(desk, name);
  await row.locator('summary').click();
  await row.getByLabel(`Table and seat of ${name}`).selectOption({ label: 'A new table, seat 1' });
  await row.getByRole('button', { name: 'Seat there' }).click();
  await page.getByText('Your teacher has put you at another place.').waitFor();
}

function rowOf(desk: Page, name: string) {
  return desk.getByRole('row').filter({ has: desk.getByRole('rowheader', { name, exact: true }) });
}

async function cutAndBack(page: Page, desk: Page): Promise<string> {
  const tiles = await tileLabels(page);
  const context = page.context();
  await context.setOffline(true);
  await page.close();
  await desk.getByText('away').first().waitFor();
  await context.setOffline(false);
  const back = await context.newPage();
  await back.goto(page.url());
  await rack(back).waitFor();
  return (await tileLabels(back)).join() === tiles.join() ? 'the same' : 'others';
}

async function remove(desk: Page, page: Page, name: string): Promise<string> {
  const row = rowOf(desk, name);
  await row.locator('summary').click();
  await row.getByRole('button', { name: `Remove ${name}` }).click();
  await row.getByRole('button', { name: 'Yes, remove' }).click();
  const message = page.locator('.teacher-message').filter({ hasText: 'taken you out' });
  await message.waitFor();
  return (await message.textContent()) ?? '';
}

/** What was chosen in the order shown, once the costs of all of it are there. */
async function ranking(wall: Page): Promise<string> {
  await wall.getByText('Best:').waitFor();
  return (await wall.getByRole('region', { name: 'What the class chose' }).textContent()) ?? '';
}

/** How many pages the report is printed on. */
async function endAndReport(desk: Page, look: Look): Promise<number> {
  await desk.getByRole('button', { name: 'End the class' }).click();
  await desk.getByRole('button', { name: 'Yes, end it for everybody' }).click();
  await desk.getByRole('link', { name: 'Class report' }).click();
  await desk.getByRole('heading', { name: 'Report of “Walk drill”' }).waitFor();
  await look(desk, 'report');
  const pdf = await desk.pdf({ preferCSSPageSize: true });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}
