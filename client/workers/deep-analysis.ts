// The deeper judgement of a round that was played in the page, worked out beside it so that nothing stutters.
import type { ChoiceAnalysis, RoundAnalysisRequest } from './deep-analysis-worker.ts';

/** Looks at one choice after the other; the answer calls it off. Without workers nothing comes and nothing fails. */
export function startDeepAnalysis(
  task: RoundAnalysisRequest,
  onAnswer: (answer: ChoiceAnalysis) => void,
): () => void {
  const worker = new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  let left = task.choices;
  worker.addEventListener('message', ({ data }: MessageEvent<ChoiceAnalysis>) => {
    onAnswer(data);
    if (--left === 0) worker.terminate();
  });
  worker.addEventListener('error', (event) => console.warn(event.message));
  worker.postMessage(task);
  return () => worker.terminate();
}

export { loadSimd } from '../../shared-engine/index.ts';
