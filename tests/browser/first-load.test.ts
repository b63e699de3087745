// The built page stays small: what the front page waits for, what a table takes in all, and in how many requests.
import { describe, expect, it, onTestFinished } from 'vitest';
import { BUILT_PAGE } from '../../server/http/pages.ts';
import { browserSuite, DESKTOP } from '../kit/browser-suite.ts';
import { firstLoadBytes } from '../kit/first-load.ts';
import { startServer } from '../kit/server.ts';

const suite = browserSuite();

describe('the first load', () => {
  it('takes no more script than a slow line brings in a moment', () => {
    const { front, all } = firstLoadBytes();
    // The schemas and the engine alone are larger than the first bound: they must not slip into the front page.
    expect(front).toBeGreaterThan(5_000);
    expect(front).toBeLessThan(30 * 1024);
    expect(all).toBeGreaterThan(front);
    expect(all).toBeLessThan(150 * 1024);
  });

  it('AC1 is at most 15 requests for files, with everything that is stored for times without a network', async () => {
    const server = await startServer({ pageFolder: BUILT_PAGE });
    onTestFinished(() => server.stop());
    const page = await suite.newPage({ viewport: DESKTOP, serviceWorkers: 'allow' });
    await page.goto(server.url);
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    // The tables are fetched a moment after the front page.
    await page.waitForFunction(() =>
      performance.getEntriesByType('resource').some(({ name }) => name.includes('/assets/rooms-')),
    );
    const requests = server.logged
      .map((line) => JSON.parse(line))
      .filter(({ msg, route }) => msg === 'request' && !route.startsWith('/api/'));
    expect(requests.length).toBeGreaterThan(5);
    expect(requests.length).toBeLessThanOrEqual(15);
  });
});
