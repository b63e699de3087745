// Card and drill files made to stop a server, sent to one whose heap is small.
import { freePort } from '../../kit/temporary.ts';
import { siegeCards } from './cards.ts';
import { siegeDrills } from './drills.ts';
import type { Finding } from './finding.ts';
import type { Siege } from './siege.ts';

/** A fifth of what a card of 12,000 hands at sixty tables took when each table compiled it. */
const HEAP_MB = 64;

export async function hostileFiles({ start, size }: Siege): Promise<readonly Finding[]> {
  const port = await freePort();
  const server = await start({
    METRICS_PORT: String(port),
    REVIEW_WORKERS: '1',
    NODE_OPTIONS: `--max-old-space-size=${HEAP_MB}`,
  });
  const watched = { ...server, metricsUrl: `http://127.0.0.1:${port}/metrics` };
  return [...(await siegeCards(watched, size)), ...(await siegeDrills(watched, size))];
}
