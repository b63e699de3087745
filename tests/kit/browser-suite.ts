// One Chromium and one server for a file of browser tests, and pages whose errors fail the test.
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { openChromium } from '../../client/tools/chromium.ts';
import { withoutBotPauses } from '../../client/tools/page-actions.ts';
import { type PageServer, startPageServer } from '../../client/tools/page-server.ts';

export const PHONE = { width: 360, height: 740 } as const;
export const TABLET = { width: 820, height: 1180 } as const;
export const DESKTOP = { width: 1366, height: 850 } as const;

export interface PageOptions extends BrowserContextOptions {
  /** Whether the page's worker plays choices on many times. It fills a core for as long as somebody plays. */
  readonly analyzes?: boolean;
  /** Of its device; a page with fewer than three leaves its seat at a table of the server to the server (rule WK8). */
  readonly cores?: number;
}

export interface Suite {
  /** Of the running server. */
  readonly origin: () => string;
  /** A page of a person of its own: other cookies, other storage. Closed after the test. */
  newPage(options?: PageOptions): Promise<Page>;
}

/** First answers alone are made, by the server and by its pages, for a test that does not ask for more. */
const QUICK = { REVIEW_DEPTH: 'quick' };

/** Registers the hooks; call it once at the top of a file. */
export function browserSuite(settings: Readonly<Record<string, string>> = {}): Suite {
  let browser: Browser;
  let server: PageServer;
  const problems: string[] = [];

  beforeAll(async () => {
    [browser, server] = await Promise.all([openChromium(), startPageServer({ ...QUICK, ...settings })]);
  });

  afterEach(async () => {
    await Promise.all(browser.contexts().map((context) => context.close()));
    // A broken content policy or an error nobody caught shows up here and nowhere else.
    expect(problems.splice(0)).toEqual([]);
  });

  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });

  return {
    origin: () => server.origin,
    async newPage({ analyzes = false, cores, ...options } = {}) {
      const context = await browser.newContext({
        viewport: DESKTOP,
        reducedMotion: 'reduce',
        serviceWorkers: 'block',
        ...options,
      });
      // A server that gives first answers alone begins to review at the close, on busy cores too.
      context.setDefaultTimeout(30_000);
      await withoutBotPauses(context);
      if (!analyzes) await context.addInitScript(restWorker);
      if (cores !== undefined) await context.addInitScript(haveCores, cores);
      const page = await context.newPage();
      page.on('pageerror', (error) => problems.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error' && !/net::|404|status of 4/.test(message.text()))
          problems.push(message.text());
      });
      return page;
    },
  };
}

/** In the page. */
function haveCores(value: number): void {
  Object.defineProperty(navigator, 'hardwareConcurrency', { value });
}

/** In the page: the worker for analyses takes what it is sent and answers nothing. */
function restWorker(): void {
  class RestingWorker extends EventTarget {
    postMessage(): void {}
    terminate(): void {}
  }
  window.Worker = new Proxy(window.Worker, {
    construct: (Real, [url, options]) =>
      String(url).includes('deep-analysis-worker') ? new RestingWorker() : new Real(url, options),
  });
}
