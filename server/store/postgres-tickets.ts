// One-use tickets in PostgreSQL: issued by one server, redeemed at another; only their hashes are stored.
import type pg from 'pg';
import { z } from 'zod';
import { seatSchema } from '../../shared-engine/index.ts';
import type { Entropy, Tickets } from '../ports.ts';
import { hashSecret, newSecret } from '../secrets.ts';
import { TICKET_MS } from './tickets.ts';

const grantSchema = z.union([
  z.object({ code: z.string(), seat: z.null(), since: z.null(), shown: z.null() }),
  z.object({ code: z.string(), seat: seatSchema, since: z.int(), shown: z.string().nullable() }),
]);

/** Their age is measured by the clock of the database, the only one that all servers share. */
export function postgresTickets(pool: pg.Pool, entropy: Entropy): Tickets {
  return {
    async issue({ code, holder, shown }) {
      const ticket = newSecret(entropy);
      await pool.query('DELETE FROM quadrille.ticket WHERE until <= now()');
      await pool.query(
        `INSERT INTO quadrille.ticket (secret_hash, code, seat, since, shown, until)
        VALUES ($1, $2, $3, $4, $5, now() + $6 * interval '1 millisecond')`,
        [hashSecret(ticket), code, holder?.seat ?? null, holder?.since ?? null, shown, TICKET_MS],
      );
      return ticket;
    },
    async redeem(ticket) {
      const { rows } = await pool.query(
        'DELETE FROM quadrille.ticket WHERE secret_hash = $1 RETURNING code, seat, since, shown, until > now() AS fresh',
        [hashSecret(ticket)],
      );
      if (rows[0]?.fresh !== true) return null;
      const { code, seat, since, shown } = grantSchema.parse(rows[0]);
      return { code, holder: seat === null ? null : { seat, since }, shown };
    },
  };
}
