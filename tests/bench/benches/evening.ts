// Sixty people behind one address at a server with the limits that stand by default: how long they wait, and who is refused.
import { startPageServer } from '../../../client/tools/page-server.ts';
import { builtFiles, clubEvening, p99, Router } from '../../kit/club-evening.ts';
import type { Bench } from '../bench.ts';

const TABLES = 15;
const RELOADS = 3;

export const bench: Bench = {
  summary:
    'Sixty people behind one address who open the page, join, play a step and reload three times, all at once.',
  async run() {
    // What is not set has its default.
    const server = await startPageServer({
      REQUESTS_PER_MINUTE: '',
      ROOMS_PER_MINUTE: '',
      SOCKETS_PER_IP: '',
    });
    try {
      const files = builtFiles();
      const router = new Router({ url: server.origin }, files);
      const started = performance.now();
      const evening = await clubEvening(router, { tables: TABLES, reloads: RELOADS });
      const seconds = (performance.now() - started) / 1000;
      for (const peer of evening.peers) peer.socket.terminate();
      return {
        people: evening.people.length,
        files_of_a_visit: files.length + 1,
        requests_each: router.requests / evening.people.length,
        refused: router.refused.length,
        join_p99_ms: Math.round(p99(evening.joinMs)),
        reload_p99_ms: Math.round(p99(evening.reloadMs)),
        evening_s: Math.round(10 * seconds) / 10,
      };
    } finally {
      await server.stop();
    }
  },
};
