// Drills prepared for a class: in a worker, so that tables in play are served meanwhile, or in this process.
import { setImmediate } from 'node:timers/promises';
import type { Drills } from '../ports.ts';
import { prepareDrill } from './prepare-drill.ts';
import { cardRefOf } from './task.ts';
import { workOptions } from './work-budgets.ts';
import type { WorkerPool } from './worker-pool.ts';

/** No class exists yet that could take turns with others. */
const FAIRNESS_KEY = 'drills';

export const drillsInProcess: Drills = {
  async prepare(drill, { kernel }) {
    await setImmediate();
    return prepareDrill(drill, kernel);
  },
};

export function pooledDrills(pool: WorkerPool): Drills {
  return {
    async prepare(drill, playingCard) {
      const card = cardRefOf(playingCard);
      const options = workOptions('drill', FAIRNESS_KEY, null);
      const result = await pool.run(() => ({ kind: 'drill', card, drill }), options).result;
      return result?.kind === 'drill' ? result.prepared : null;
    },
  };
}
