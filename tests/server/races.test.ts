// Two servers race for one room, on PostgreSQL and in memory: one event for one duty, no fork, every answer true.
import { expect, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { postgresStore } from '../../server/store/postgres.ts';
import { openPool } from '../../server/store/postgres-pool.ts';
import { FakeClock } from '../kit/clock.ts';
import { startPostgres } from '../kit/postgres.ts';
import { race } from '../prove/faults/two-server-race.ts';

test('in memory', async () => {
  const rooms = memoryStore();
  const { faults, races } = await race(400, 'in memory', [rooms, rooms], new FakeClock());
  expect([races, faults]).toEqual([400, []]);
});

test('on PostgreSQL', async () => {
  const postgres = await startPostgres();
  try {
    const url = await postgres.newDatabase();
    const storeAt = async (): Promise<Store> => {
      const opened = await openPool(url);
      if (!opened.ok) throw new Error(opened.sentence);
      return postgresStore(opened.pool);
    };
    const stores = [await storeAt(), await storeAt()] as const;
    const { faults, wins } = await race(250, 'on PostgreSQL', stores, new FakeClock());
    expect(faults).toEqual([]);
    expect(Math.min(...wins)).toBeGreaterThan(50);
    await Promise.all(stores.map((store) => store.close()));
  } finally {
    await postgres.discard();
  }
});

test('a store that lets both write is found out', async () => {
  const rooms = memoryStore();
  const careless: Store = {
    ...rooms,
    async append(code, after, log) {
      const outcome = await rooms.append(code, after, log);
      return outcome === 'conflict' ? 'kept' : outcome;
    },
  };
  const { faults } = await race(50, 'careless', [careless, careless], new FakeClock());
  expect(faults).not.toEqual([]);
});
