// Runs one task about a deal in a worker of its own, which ends with the answer or when the caller cancels it.
import type { DealTask, DealTaskUpdate } from './deal-tasks.ts';
import { DEAL_PREVIEW } from './strings.ts';

/** Reports updates until the task is done; the returned function cancels it. */
export function runDealTask(task: DealTask, onUpdate: (update: DealTaskUpdate) => void): () => void {
  const worker = new Worker(new URL('./deal-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<DealTaskUpdate>) => {
    if (data.kind !== 'searched') worker.terminate();
    onUpdate(data);
  });
  worker.addEventListener('error', () => {
    worker.terminate();
    onUpdate({ kind: 'rejected', message: DEAL_PREVIEW.failed });
  });
  worker.postMessage(task);
  return () => worker.terminate();
}
