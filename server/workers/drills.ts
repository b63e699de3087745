// Drills prepared for a class: in a worker, so that tables in play are served meanwhile, or in this process.
import type { Drills } from '../ports.ts';
import type { CompiledCards } from './compiled-cards.ts';
import { workOptions } from './work-budgets.ts';
import type { WorkerPool } from './worker-pool.ts';

/** No class exists yet that could take turns with others. */
const FAIRNESS_KEY = 'drills';

export function pooledDrills(pool: WorkerPool, cards: CompiledCards): Drills {
  return {
    async prepare(drill, playingCard) {
      const card = await cards.refOf(playingCard, FAIRNESS_KEY);
      if (card === null) return null;
      const options = workOptions('drill', FAIRNESS_KEY, null);
      const result = await pool.run(() => ({ kind: 'drill', card, drill }), options).result;
      return result?.kind === 'drill' ? result.prepared : null;
    },
  };
}
