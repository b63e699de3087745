// The processor time of a PostgreSQL and all its processes.
import type { TestPostgres } from '../../kit/postgres.ts';
import { cpuOf } from './processes.ts';

/** Milliseconds used so far by the processes that serve and write now; connections stay open during a measurement. */
export async function databaseCpu(database: TestPostgres): Promise<number> {
  const { rows } = await database.run(
    "SELECT pid FROM pg_stat_activity WHERE pid <> pg_backend_pid() AND backend_type <> 'autovacuum worker'",
  );
  return rows.reduce((sum, { pid }) => sum + cpuOf(Number(pid)), 0);
}
