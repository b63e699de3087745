// The worker that runs a task about a deal beside the page and reports as it goes.
import { loadSimd } from '../../../shared-engine/index.ts';
import { type DealTask, judgeDeal, kernelOf, previewDeal, searchDeals } from './deal-tasks.ts';

self.addEventListener('message', (event: MessageEvent<DealTask>) => void run(event.data));

async function run(task: DealTask): Promise<void> {
  const kernel = kernelOf(task.card);
  if (task.kind === 'preview') return self.postMessage(previewDeal(task, kernel));
  const simd = await loadSimd();
  if (task.kind === 'judge') return self.postMessage(judgeDeal(task, kernel, simd));
  for (const update of searchDeals(task, kernel, simd)) self.postMessage(update);
}
