// The deeper judgement of a round that was played in the page, worked out beside it so that nothing stutters.
import type { DeepAnswer, DeepTask } from './deep-analysis-worker.ts';

/** Looks at one choice after the other; the answer calls it off. Without workers nothing comes and nothing fails. */
export function lookDeeper(task: DeepTask, onAnswer: (answer: DeepAnswer) => void): () => void {
  const worker = new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  let left = task.choices;
  worker.addEventListener('message', ({ data }: MessageEvent<DeepAnswer>) => {
    onAnswer(data);
    if (--left === 0) worker.terminate();
  });
  worker.addEventListener('error', (event) => console.warn(event.message));
  worker.postMessage(task);
  return () => worker.terminate();
}

export { loadVectors } from '../../shared-engine/index.ts';
