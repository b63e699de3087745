// The worker that plays the choices of one round on many times and sends each analysis when it is done.
import {
  analyzeDecision,
  type CompiledCard,
  createAnalyst,
  DEEP_BUDGET,
  type DeepAnalysis,
  loadSimd,
  type SeatRecord,
} from '../../shared-engine/index.ts';

export interface RoundAnalysisRequest {
  readonly record: SeatRecord;
  readonly card: CompiledCard;
  /** Which choices of the review of the record, in the order wanted. */
  readonly choices: readonly number[];
}

export interface ChoiceAnalysis {
  readonly nth: number;
  readonly analysis: DeepAnalysis;
}

self.addEventListener('message', (event: MessageEvent<RoundAnalysisRequest>) => void work(event.data));

async function work({ record, card, choices }: RoundAnalysisRequest): Promise<void> {
  const analyst = createAnalyst(card, await loadSimd());
  for (const nth of choices) {
    const answer: ChoiceAnalysis = {
      nth,
      analysis: analyzeDecision(analyst, record, nth, { budget: DEEP_BUDGET }),
    };
    self.postMessage(answer);
  }
}
