// The store in a real PostgreSQL, held to the promises of every store.
import { postgresStore } from '../../server/store/postgres.ts';
import { openPool } from '../../server/store/postgres-pool.ts';
import { startPostgres, type TestPostgres } from '../kit/postgres.ts';
import { storeContract } from '../kit/store-contract.ts';

let postgres: TestPostgres;

storeContract({
  name: 'PostgreSQL',
  async prepare() {
    postgres = await startPostgres();
    return () => postgres.discard();
  },
  async newPlace() {
    const url = await postgres.newDatabase();
    const open = async () => {
      const opened = await openPool(url);
      if (!opened.ok) throw new Error(opened.message);
      return postgresStore(opened.pool);
    };
    return { open, openSecond: open, discard: async () => {} };
  },
});
