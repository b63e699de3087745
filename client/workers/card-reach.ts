// Asks a worker how often each hand of the card is reached from a rack, so that taps on the table are never kept waiting.
import { bagOf, type CompiledCard, type Face, type Reach, reachOf } from '../../shared-engine/index.ts';
import type { ReachAnswer, ReachRequest } from './deep-analysis-worker.ts';

export interface ReachFinder {
  /** Answers for the rack asked about last; those before it are dropped. */
  find(rack: readonly Face[], gone: readonly Face[]): void;
  close(): void;
}

export function openReachFinder(card: CompiledCard, onReach: (reach: readonly Reach[]) => void): ReachFinder {
  const worker = new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  let asked = 0;
  let last: ReachRequest['reach'] | null = null;
  let failed = false;
  const findHere = () => {
    if (last !== null) onReach(reachOf(card, bagOf(last.rack), last.gone));
  };
  worker.addEventListener('message', ({ data }: MessageEvent<ReachAnswer>) => {
    if (data.nth === asked) onReach(data.reach);
  });
  // Where no worker can be had, the page does it itself.
  worker.addEventListener('error', () => {
    failed = true;
    findHere();
  });
  return {
    find(rack, gone) {
      const request: ReachRequest = { reach: { rack, gone }, nth: ++asked, card: asked === 1 ? card : null };
      last = request.reach;
      if (failed) findHere();
      else worker.postMessage(request);
    },
    close: () => worker.terminate(),
  };
}

/** The same for one rack alone. */
export function findReach(
  card: CompiledCard,
  rack: readonly Face[],
  gone: readonly Face[],
): Promise<readonly Reach[]> {
  return new Promise((resolve) => {
    const finder = openReachFinder(card, (reach) => {
      finder.close();
      resolve(reach);
    });
    finder.find(rack, gone);
  });
}
