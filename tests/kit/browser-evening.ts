// A club evening in real pages: tables are opened, friends join, everybody passes and reloads at the same moment.
import type { Page } from 'playwright-core';
import { heading, joinAt, openFor, passThree, rack, titleOf } from '../../client/tools/page-actions.ts';

const NAMES = ['Ines', 'Tomas', 'Wilma', 'Odo'] as const;

/**
 * `people` are at each of so many tables; bots take the other seats. Resolves with the question that each page shows
 * after its reload.
 */
export async function browserEvening(
  newPage: () => Promise<Page>,
  origin: string,
  { tables, people }: { readonly tables: number; readonly people: number },
): Promise<readonly string[]> {
  const seated = await Promise.all(
    Array.from({ length: tables }, () => friendsAt(newPage, origin, NAMES.slice(0, people))),
  );
  const pages = seated.flat();
  const all = (act: (page: Page) => Promise<unknown>) => Promise.all(pages.map(act));
  await all((page) => page.getByRole('button', { name: 'I am ready' }).click());
  await all((page) => rack(page).waitFor());
  await all(passThree);
  await all((page) => heading(page).filter({ hasText: 'First across' }).waitFor());
  await all((page) => page.reload());
  await all((page) => rack(page).waitFor());
  return Promise.all(pages.map(titleOf));
}

async function friendsAt(
  newPage: () => Promise<Page>,
  origin: string,
  names: readonly string[],
): Promise<Page[]> {
  const pages = await Promise.all(names.map(() => newPage()));
  const link = await openFor(pages[0]!, origin, names[0]!);
  // One after the other: each takes the first seat that is free on the screen.
  for (const [n, page] of pages.entries()) if (n > 0) await joinAt(page, link, names[n]!);
  return pages;
}
