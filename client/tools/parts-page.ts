// The page of all parts in all their states: built in memory, opened without a server, looked at part by part.
import path from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { build, type Plugin } from 'vite';

const ROOT = path.resolve(import.meta.dirname, 'parts');

/** Reserved for names that lead nowhere (RFC 2606); every request to it is answered here. */
const ORIGIN = 'http://parts.invalid';

const TYPES: Readonly<Record<string, string>> = { html: 'text/html', js: 'text/javascript', css: 'text/css' };

type Files = ReadonlyMap<string, string | Uint8Array>;

let built: Promise<Files> | null = null;

/** Opens the page with these parts, or with all of them; the caller closes the page's context. */
export async function openParts(
  browser: Browser,
  look: BrowserContextOptions,
  wanted: readonly string[] = [],
): Promise<Page> {
  built ??= buildParts();
  const files = await built;
  const context = await browser.newContext({ reducedMotion: 'reduce', timezoneId: 'UTC', ...look });
  await context.route(`${ORIGIN}/**`, (route) => {
    const name = new URL(route.request().url()).pathname.slice(1) || 'index.html';
    const body = files.get(name);
    if (body === undefined) return route.fulfill({ status: 404 });
    return route.fulfill({ body: Buffer.from(body), contentType: TYPES[path.extname(name).slice(1)] ?? '' });
  });
  const page = await context.newPage();
  await page.goto(`${ORIGIN}/#${wanted.join(',')}`);
  // Attached, not visible: a page with nothing but a sheet over it has no height.
  await page.locator('html[data-ready]').waitFor({ state: 'attached' });
  return page;
}

/** Names of the parts, in their order on the page. */
export function partNames(page: Page): Promise<string[]> {
  return page.locator('.part-of-page').evaluateAll((parts) => parts.map(({ id }) => id));
}

/** Nothing on this page needs what workers do; to bundle them would take longer than all the rest. */
const withoutWorkers: Plugin = {
  name: 'without-workers',
  enforce: 'pre',
  transform: (code, id) =>
    /client[\\/]workers[\\/]/.test(id)
      ? code.replaceAll(/new URL\('[^']+', import\.meta\.url\)/g, "'data:text/javascript,'")
      : null,
};

async function buildParts(): Promise<Files> {
  const output = await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    plugins: [withoutWorkers],
    build: {
      write: false,
      target: 'es2022',
      cssCodeSplit: false,
      minify: false,
      modulePreload: { polyfill: false },
    },
  });
  const files = new Map<string, string | Uint8Array>();
  for (const { output: chunks } of [output].flat().filter((one) => 'output' in one)) {
    for (const chunk of chunks) files.set(chunk.fileName, chunk.type === 'chunk' ? chunk.code : chunk.source);
  }
  return files;
}
