// Two servers on one PostgreSQL race for the same room: one event for each scheduled action, no fork, every answer true.
import { systemClock } from '../../../server/clock.ts';
import { postgresStore } from '../../../server/store/postgres.ts';
import { openPool } from '../../../server/store/postgres-pool.ts';
import { startPostgres } from '../../kit/postgres.ts';
import { raceTwoServers } from '../faults/two-server-race.ts';
import type { Proof } from '../proof.ts';

export const proof: Proof = {
  summary: 'Two servers on one database race for one room ten thousand times, and its log never forks.',
  async run({ seed, size }) {
    const races = size === 'full' ? 10_000 : 500;
    const postgres = await startPostgres();
    try {
      const url = await postgres.newDatabase();
      const stores = [await storeAt(url), await storeAt(url)] as const;
      const raced = await raceTwoServers(races, seed, stores, systemClock);
      await Promise.all(stores.map((store) => store.close()));
      const share = Math.min(...raced.wins) / races;
      return [
        { what: 'races on PostgreSQL', value: raced.races, bar: 'reported', ok: true },
        {
          what: 'writes of each server that were kept',
          value: raced.wins.join(' and '),
          bar: 'reported',
          ok: true,
        },
        {
          what: 'of 100 races, writes of the server that won less',
          value: Math.round(100 * share),
          bar: '>= 20',
          ok: share >= 0.2,
        },
        {
          what: 'what did not hold',
          value: raced.violations.slice(0, 5).join('; ') || 0,
          bar: '0',
          ok: raced.violations.length === 0,
        },
      ];
    } finally {
      await postgres.discard();
    }
  },
};

async function storeAt(url: string) {
  const opened = await openPool(url);
  if (!opened.ok) throw new Error(opened.message);
  return postgresStore(opened.pool);
}
