// How far the deeper look has come; gone once it is done.
import type { Review } from '../../shared-engine/index.ts';
import { deepProgress, progressWords } from './deep-strings.ts';

export function DeepProgress({ review }: { readonly review: Review }) {
  const progress = deepProgress(review);
  if (progress === null) return null;
  return (
    <div class="deep-progress">
      <progress id="deep-progress" value={progress.done} max={progress.all} />
      <label for="deep-progress">{progressWords(progress)}</label>
    </div>
  );
}
