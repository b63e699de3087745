// Which servers on one PostgreSQL run: each renews a lease of its own, by the clock of the database.
import type pg from 'pg';
import type { Entropy, Nodes } from '../ports.ts';
import { newSecret } from '../secrets.ts';

/** How long a server counts as running after it renewed its lease, in milliseconds. */
export const LEASE_MS = 5000;
const RENEW_MS = 1000;

export function postgresNodes(pool: pg.Pool, entropy: Entropy): Nodes {
  const id = newSecret(entropy).slice(0, 12);
  let closed = false;
  let renewing = renew();
  const timer = setInterval(() => {
    renewing = renewing.then(renew);
  }, RENEW_MS);
  timer.unref();

  /** A lease that cannot be renewed runs out, and the other servers take over. */
  async function renew(): Promise<void> {
    if (closed) return;
    await pool
      .query(
        `INSERT INTO quadrille.node (id, until) VALUES ($1, now() + $2 * interval '1 millisecond')
        ON CONFLICT (id) DO UPDATE SET until = excluded.until`,
        [id, LEASE_MS],
      )
      .catch(() => {});
  }

  return {
    id,
    async gone(ids) {
      const { rows } = await pool.query<{ id: string }>(
        'SELECT id FROM quadrille.node WHERE id = ANY ($1::text[]) AND until > now()',
        [ids],
      );
      const alive = new Set(rows.map((row) => row.id));
      return ids.filter((other) => !alive.has(other));
    },
    async close() {
      closed = true;
      clearInterval(timer);
      await renewing;
      await pool.query('DELETE FROM quadrille.node WHERE id = $1 OR until <= now()', [id]).catch(() => {});
    },
  };
}
