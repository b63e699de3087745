// Drills made ready for a class: in a worker, so that tables in play are served meanwhile, or in this process.
import { setImmediate } from 'node:timers/promises';
import type { Drills } from '../ports.ts';
import { slipFor } from './cards.ts';
import type { Pool } from './pool.ts';
import { prepareDrill } from './prepared-drill.ts';

export const drillsInProcess: Drills = {
  async prepare(drill, { kernel }) {
    await setImmediate();
    return prepareDrill(drill, kernel);
  },
};

/** A teacher waits for it: it goes before every closer look that is not begun. */
export function pooledDrills(pool: Pool): Drills {
  return {
    async prepare(drill, card) {
      const slip = slipFor(card);
      const answer = await pool.ask(() => ({ kind: 'drill', card: slip, drill }), 'first').answer;
      return answer?.kind === 'drill' ? answer.prepared : null;
    },
  };
}
