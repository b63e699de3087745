// The worker for what takes seconds: it plays the choices of a round on many times, or surveys a card, and tells as it goes.
import {
  type Analyst,
  analyzeDecision,
  type CardFile,
  type CompiledCard,
  createAnalyst,
  DEEP_BUDGET,
  type DeepAnalysis,
  loadSimd,
  type SeatRecord,
  SURVEY_DEALS,
  type SurveyProgress,
  surveyCard,
} from '../../shared-engine/index.ts';

export interface RoundAnalysisRequest {
  readonly record: SeatRecord;
  readonly card: CompiledCard;
  /** Which choices of the review of the record, in the order wanted. */
  readonly choices: readonly number[];
}

/** The same for a worker; `card` is null for that of the task before. */
export type AnalysisTask = Omit<RoundAnalysisRequest, 'card'> & { readonly card: CompiledCard | null };

export interface ChoiceAnalysis {
  readonly nth: number;
  readonly analysis: DeepAnalysis;
}

/** A card to be looked at over dealt racks. */
export interface SurveyRequest {
  readonly survey: CardFile;
  readonly seed: string;
}

/** Kept from task to task: what it has worked out of a card and of the steps before helps with the next choice. */
let kept: Analyst | null = null;

self.addEventListener('message', ({ data }: MessageEvent<AnalysisTask | SurveyRequest>) => {
  if ('survey' in data) survey(data);
  else void work(data);
});

function survey({ survey: card, seed }: SurveyRequest): void {
  for (const step of surveyCard(card, seed, SURVEY_DEALS)) self.postMessage(step satisfies SurveyProgress);
}

async function work({ record, card, choices }: AnalysisTask): Promise<void> {
  if (card !== null) kept = createAnalyst(card, await loadSimd());
  const analyst = kept;
  if (analyst === null) throw new Error('The first task of a worker brings its card.');
  for (const nth of choices) {
    const answer: ChoiceAnalysis = {
      nth,
      analysis: analyzeDecision(analyst, record, nth, { budget: DEEP_BUDGET }),
    };
    self.postMessage(answer);
  }
}
