// Two servers race for one room, on PostgreSQL and in memory: one event for each scheduled action, no fork, true answers.
import { expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { postgresStore } from '../../server/store/postgres.ts';
import { openPool } from '../../server/store/postgres-pool.ts';
import { FakeClock } from '../kit/clock.ts';
import { startPostgres } from '../kit/postgres.ts';
import { raceTwoServers } from '../prove/faults/two-server-race.ts';

test('ST1 ID5 two servers that race for one room in memory leave one log, and one event for each scheduled action', async () => {
  const rooms = memoryStore();
  const { violations, races } = await raceTwoServers(400, 'in memory', [rooms, rooms], new FakeClock());
  expect([races, violations]).toEqual([400, []]);
});

test('ST1 ID5 two servers that race for one room on PostgreSQL leave one log, and each wins some races', async () => {
  const postgres = await startPostgres();
  try {
    const url = await postgres.newDatabase();
    const storeAt = async (): Promise<Store> => {
      const opened = await openPool(url);
      if (!opened.ok) throw new Error(opened.message);
      return postgresStore(opened.pool);
    };
    const stores = [await storeAt(), await storeAt()] as const;
    const { violations, wins } = await raceTwoServers(250, 'on PostgreSQL', stores, new FakeClock());
    expect(violations).toEqual([]);
    expect(Math.min(...wins)).toBeGreaterThan(50);
    await Promise.all(stores.map((store) => store.close()));
  } finally {
    await postgres.discard();
  }
});

test('the race finds out a store that lets both servers write', async () => {
  const rooms = memoryStore();
  const careless: Store = {
    ...rooms,
    async commit(batch) {
      const outcomes = await rooms.commit(batch);
      return outcomes.map((outcome) => (outcome === 'conflict' ? 'committed' : outcome));
    },
  };
  const { violations } = await raceTwoServers(50, 'careless', [careless, careless], new FakeClock());
  expect(violations).not.toEqual([]);
});
