// The deep analysis of a round that was played in the page, made in a worker so that the page stays smooth.
import type { ChoiceAnalysis, RoundAnalysisRequest } from './deep-analysis-worker.ts';

export type StartDeepAnalysis = typeof startDeepAnalysis;

/** Analyzes one choice after the other; returns a function that cancels it. A failing worker leaves the first answers. */
export function startDeepAnalysis(
  request: RoundAnalysisRequest,
  onAnswer: (answer: ChoiceAnalysis) => void,
  onFailure: (message: string) => void = (message) => console.warn(message),
): () => void {
  const worker = new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  let left = request.choices.length;
  worker.addEventListener('message', ({ data }: MessageEvent<ChoiceAnalysis>) => {
    onAnswer(data);
    if (--left === 0) worker.terminate();
  });
  worker.addEventListener('error', (event) => onFailure(event.message));
  worker.postMessage(request);
  return () => worker.terminate();
}

export { loadSimd } from '../../shared-engine/index.ts';
