// Surveys a card in a worker of its own, which ends with the answer or when the caller cancels it.
import type { CardFile, SurveyProgress } from '../../../shared-engine/index.ts';

/** Always the same racks, so that a card that was changed is compared with what it was. */
const SEED = 'is it a good card';

export function runCheck(card: CardFile, on: (step: SurveyProgress | 'failed') => void): () => void {
  const worker = new Worker(new URL('./check-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<SurveyProgress>) => {
    if (data.kind === 'survey') worker.terminate();
    on(data);
  });
  worker.addEventListener('error', () => {
    worker.terminate();
    on('failed');
  });
  worker.postMessage({ card, seed: SEED });
  return () => worker.terminate();
}
