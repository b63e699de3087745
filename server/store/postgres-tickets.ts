// One-use tickets in PostgreSQL: issued by one server, redeemed at another; only their hashes are stored.
import type pg from 'pg';
import { z } from 'zod';
import { seatSchema } from '../../shared-engine/index.ts';
import type { Entropy, Tickets } from '../ports.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import { TICKET_MS } from './tickets.ts';

const grantSchema = z.union([
  z.object({ code: z.string(), seat: z.null(), since: z.null() }),
  z.object({ code: z.string(), seat: seatSchema, since: z.int() }),
]);

/** Their age is measured by the clock of the database, the only one that all servers share. */
export function postgresTickets(pool: pg.Pool, entropy: Entropy): Tickets {
  return {
    async issue({ code, holder }) {
      const ticket = newSecret(entropy);
      await pool.query('DELETE FROM quadrille.ticket WHERE until <= now()');
      await pool.query(
        `INSERT INTO quadrille.ticket (secret_hash, code, seat, since, until)
        VALUES ($1, $2, $3, $4, now() + $5 * interval '1 millisecond')`,
        [hashSecret(ticket), code, holder?.seat ?? null, holder?.since ?? null, TICKET_MS],
      );
      return ticket;
    },
    async redeem(ticket) {
      const { rows } = await pool.query(
        'DELETE FROM quadrille.ticket WHERE secret_hash = $1 RETURNING code, seat, since, until > now() AS fresh',
        [hashSecret(ticket)],
      );
      if (rows[0]?.fresh !== true) return null;
      const { code, seat, since } = grantSchema.parse(rows[0]);
      return { code, holder: seat === null ? null : { seat, since } };
    },
  };
}
