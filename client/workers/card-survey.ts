// Surveys a card in a worker of its own, which ends with the answer or when the caller cancels it.
import type { CardFile, SurveyProgress } from '../../shared-engine/index.ts';
import type { SurveyRequest } from './deep-analysis-worker.ts';

/** Always the same racks, so that a card that was changed is compared with what it was. */
const SEED = 'is it a good card';

export function startSurvey(card: CardFile, on: (step: SurveyProgress | 'failed') => void): () => void {
  const worker = new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<SurveyProgress>) => {
    if (data.kind === 'survey') worker.terminate();
    on(data);
  });
  worker.addEventListener('error', () => {
    worker.terminate();
    on('failed');
  });
  const request: SurveyRequest = { survey: card, seed: SEED };
  worker.postMessage(request);
  return () => worker.terminate();
}
