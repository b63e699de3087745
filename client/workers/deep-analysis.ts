// The deep analysis of a round that was played in the page, made in a worker so that the page stays smooth.
import type { CompiledCard, Ledger } from '../../shared-engine/index.ts';
import type {
  AnalysisTask,
  ChoiceAnalysis,
  LedgerAnswer,
  RoundAnalysisRequest,
} from './deep-analysis-worker.ts';

export type StartDeepAnalysis = typeof startDeepAnalysis;

/** A worker that has answered and knows its card: the next question on it takes less than half the time. */
interface Rested {
  readonly worker: Worker;
  readonly card: CompiledCard;
  readonly cancelEnd: () => void;
}

let rested: Rested | null = null;

/** So long a worker waits for another question, in milliseconds. */
const REST_MS = 120_000;

export interface AnalysisHandlers {
  readonly onChoice: (answer: ChoiceAnalysis) => void;
  /** Where luck and choices of a closed round are wanted as well, after the last choice. */
  readonly onLedger?: (ledger: Ledger) => void;
  readonly onFailure?: (message: string) => void;
}

/** Analyzes one choice after the other; returns a function that cancels it. A failing worker leaves the first answers. */
export function startDeepAnalysis(
  request: Omit<RoundAnalysisRequest, 'withLedger'>,
  { onChoice, onLedger, onFailure = (message) => console.warn(message) }: AnalysisHandlers,
): () => void {
  const { record, card, choices } = request;
  const known = takeRested(card);
  const worker =
    known ?? new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  const withLedger = onLedger !== undefined;
  let left = choices.length + (withLedger ? 1 : 0);
  worker.onmessage = ({ data }: MessageEvent<ChoiceAnalysis | LedgerAnswer>) => {
    if (--left === 0) rest(worker, card);
    if ('ledger' in data) onLedger?.(data.ledger);
    else onChoice(data);
  };
  worker.onerror = (event) => {
    left = 0;
    worker.terminate();
    onFailure(event.message);
  };
  worker.postMessage({ record, card: known ? null : card, choices, withLedger } satisfies AnalysisTask);
  return () => {
    if (left > 0) worker.terminate();
  };
}

function takeRested(card: CompiledCard): Worker | null {
  if (rested?.card !== card) return null;
  const { worker, cancelEnd } = rested;
  cancelEnd();
  rested = null;
  return worker;
}

/** One worker rests at a time. */
function rest(worker: Worker, card: CompiledCard): void {
  endRest();
  const end = setTimeout(endRest, REST_MS);
  rested = { worker, card, cancelEnd: () => clearTimeout(end) };
}

function endRest(): void {
  rested?.cancelEnd();
  rested?.worker.terminate();
  rested = null;
}

export { loadSimd } from '../../shared-engine/index.ts';
