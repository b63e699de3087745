// Why the server gave no drill just now, and the way to ask it again.
import type { Failure } from '../../connection/api.ts';
import { DRILL } from './strings.ts';

interface LoadFailureProps {
  readonly failure: Failure;
  readonly onRetry: () => void;
}

export function LoadFailure({ failure, onRetry }: LoadFailureProps) {
  return (
    <div class="notice" role="alert">
      <p>{failure.message}</p>
      <button type="button" onClick={onRetry}>
        {DRILL.tryAgain}
      </button>
    </div>
  );
}
