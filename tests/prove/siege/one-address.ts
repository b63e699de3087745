// Part 4: a club evening of sixty behind one router, at a server with the limits that stand by default.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { BUILT_PAGE } from '../../../server/http/pages.ts';
import { clubEvening, p99, Router } from '../../kit/club-evening.ts';
import { type Attack, findingsOf } from './siege.ts';

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

/** Of the page as it is built: all that a first visit fetches. */
function builtFiles(): string[] {
  return readdirSync(path.join(BUILT_PAGE, 'assets'))
    .filter((file) => /\.(js|css)$/.test(file))
    .map((file) => `/assets/${file}`);
}
