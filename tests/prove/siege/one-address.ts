// Part 4: a club evening of sixty behind one router, at a server with the limits that stand by default.
import { openChromium } from '../../../client/tools/chromium.ts';
import { browserEvening } from '../../kit/browser-evening.ts';
import { builtFiles, clubEvening, p99, Router } from '../../kit/club-evening.ts';
import type { Finding } from './finding.ts';
import { type Attack, type Besieged, findingsOf } from './siege.ts';

/** For each thing that a page waits for. */
const PATIENCE_MS = 240_000;

const tell = findingsOf('4 one address');

export const oneAddress: Attack = async ({ start, size }) => {
  const server = await start();
  const files = builtFiles();
  const router = new Router(server, files);
  const tables = size === 'full' ? 15 : 4;
  const { people, peers, joinMs, reloadMs } = await clubEvening(router, { tables, reloads: 3 });
  const seated = peers.filter(({ table }, n) => table.you === people[n]!.seat && table.round === 1).length;
  for (const peer of peers) peer.socket.terminate();
  return [
    ...(size === 'full' ? [await browsers(server)] : []),
    tell(
      `${people.length} people open, join, play and reload three times at once: refused of ${router.requests} requests`,
      '0',
      router.refused.slice(0, 3).join('; ') || '0',
      router.refused.length === 0,
    ),
    tell(
      'people at their seats in the end',
      `${people.length}`,
      `${seated}; 99 of 100 joined within ${Math.round(p99(joinMs))} ms and reloaded within ${Math.round(p99(reloadMs))} ms`,
      seated === people.length,
    ),
  ];
};

/** The same in as many real pages, each with cookies and storage of its own. */
async function browsers({ url }: Besieged): Promise<Finding> {
  const chromium = await openChromium();
  try {
    const newPage = async () => {
      const context = await chromium.newContext({ reducedMotion: 'reduce' });
      // Twenty pages on a small machine: what is held here is that nobody is refused, not how long it takes.
      context.setDefaultTimeout(PATIENCE_MS);
      return context.newPage();
    };
    const shown = await browserEvening(newPage, url, { tables: 5, people: 4 });
    const seated = shown.filter((question) => question.startsWith('First across')).length;
    return tell('real pages that open, join, play and reload at once', '20', `${seated}`, seated === 20);
  } finally {
    await chromium.close();
  }
}
