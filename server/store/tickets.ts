// One-use tickets in memory: a page gets one for its cookie, so that no lasting secret travels in a frame.
import type { Clock, Entropy, Grant, Tickets } from '../ports.ts';
import { newSecret } from '../secrets.ts';

export const TICKET_MS = 30_000;
/** Tickets that may be open at once; beyond that the oldest is dropped. */
const MAX_TICKETS = 20_000;

export function memoryTickets(clock: Clock, entropy: Entropy): Tickets {
  const open = new Map<string, { readonly grant: Grant; readonly until: number }>();

  /** The map is in the order of issue, so those that are too old stand in front. */
  function dropOld(): void {
    for (const [ticket, { until }] of open) {
      if (until > clock.now() && open.size <= MAX_TICKETS) return;
      open.delete(ticket);
    }
  }

  return {
    async issue(grant) {
      const ticket = newSecret(entropy);
      open.set(ticket, { grant, until: clock.now() + TICKET_MS });
      dropOld();
      return ticket;
    },
    async redeem(ticket) {
      dropOld();
      const found = open.get(ticket);
      open.delete(ticket);
      return found?.grant ?? null;
    },
  };
}
