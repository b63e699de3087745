// Runs beside the page: one task about a deal at a time, told of as it goes.
import { type Kernel, loadVectors } from '../../shared-engine/index.ts';
import { type DealTask, kernelOf, preview, search } from './tasks.ts';

/** The card asked about last, ready to be asked again. */
let ready: { readonly key: string; readonly kernel: Kernel } | null = null;

self.addEventListener('message', (event: MessageEvent<DealTask>) => void work(event.data));

async function work(task: DealTask): Promise<void> {
  const key = JSON.stringify(task.card);
  if (ready?.key !== key) ready = { key, kernel: kernelOf(task.card) };
  const { kernel } = ready;
  if (task.kind === 'preview') return self.postMessage(preview(task, kernel));
  for (const news of search(task, kernel, await loadVectors())) self.postMessage(news);
}
