// Drills prepared for a class by workers, a part at a time, so that tables in play and other classes are served meanwhile.
import { drillBoundsProblem } from '../../shared-engine/index.ts';
import type { Drills } from '../work-ports.ts';
import type { CompiledCards } from './compiled-cards.ts';
import type { Task, TaskResult } from './task.ts';
import { workOptions } from './work-budgets.ts';
import type { WorkerPool } from './worker-pool.ts';

export function pooledDrills(pool: WorkerPool, cards: CompiledCards): Drills {
  return {
    async prepare(drill, { card: playingCard, sender, signal }) {
      // A file that is nested too deeply could not even be sent to a worker.
      const problem = drillBoundsProblem(drill);
      if (problem !== null) return { ok: false, problems: [problem] };
      const card = await cards.refOf(playingCard, sender);
      if (card === null) return null;
      const resultOf = (task: Task): Promise<TaskResult | null> =>
        pool.run(() => task, workOptions(task.kind, sender, null, signal)).result;
      let result = await resultOf({ kind: 'drill', card, drill });
      while (result?.kind === 'drill' && !result.step.isDone) {
        result = await resultOf({ kind: 'drill-part', card, part: result.step.part });
      }
      return result?.kind === 'drill' && result.step.isDone ? result.step.prepared : null;
    },
    async play({ card: playingCard, fairnessKey, start, choices }) {
      const card = await cards.refOf(playingCard, fairnessKey);
      if (card === null) return null;
      const options = workOptions('play', fairnessKey, null);
      const result = await pool.run(() => ({ kind: 'play', card, start, choices }), options).result;
      return result?.kind === 'play' ? result.played : null;
    },
  };
}
