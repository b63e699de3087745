// The page's side of the work on deals: one worker for each task, ended when its answer is there or nobody waits any more.
import type { DealNews, DealTask } from './tasks.ts';

/** What is said where the work fails, or the browser has no workers. */
const FAILED: DealNews = {
  kind: 'refused',
  sentence: 'This could not be worked out here; the class can be opened all the same.',
};

/** Tells of the task until it is done; the answer calls it off. */
export function askAboutDeal(task: DealTask, onNews: (news: DealNews) => void): () => void {
  const worker = new Worker(new URL('./task-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<DealNews>) => {
    if (data.kind !== 'looked') worker.terminate();
    onNews(data);
  });
  worker.addEventListener('error', () => {
    worker.terminate();
    onNews(FAILED);
  });
  worker.postMessage(task);
  return () => worker.terminate();
}
