// An analyzer for tests: it keeps what it is asked and answers when and what the test says.
import type {
  AnalysisRequest,
  AnalysisResult,
  DeepAnalyzer,
  PreparationRequest,
} from '../../server/ports.ts';
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';

export interface AskedAnalysis extends AnalysisRequest {
  readonly isLowered: () => boolean;
  /** Whether it has been answered or aborted. */
  readonly isOver: () => boolean;
  readonly isAborted: () => boolean;
  answer(result: AnalysisResult | null): void;
}

export interface FakeAnalyzer {
  readonly analyzer: DeepAnalyzer;
  /** Oldest first; what is over stays. */
  readonly asked: readonly AskedAnalysis[];
  /** Steps that were to be prepared, and whether that was aborted. */
  readonly prepared: readonly AskedPreparation[];
}

export interface AskedPreparation extends PreparationRequest {
  readonly isAborted: () => boolean;
}

export function fakeAnalyzer(): FakeAnalyzer {
  const asked: AskedAnalysis[] = [];
  const prepared: AskedPreparation[] = [];
  const analyzer: DeepAnalyzer = {
    analyze(request, signal) {
      let isLowered = false;
      let isOver = false;
      let resolve: (result: AnalysisResult | null) => void = () => {};
      const result = new Promise<AnalysisResult | null>((settle) => {
        resolve = settle;
      });
      const answer = (given: AnalysisResult | null) => {
        isOver = true;
        resolve(given);
      };
      signal.addEventListener('abort', () => answer(null));
      asked.push({
        ...request,
        isLowered: () => isLowered,
        isOver: () => isOver,
        isAborted: () => signal.aborted,
        answer,
      });
      return {
        result,
        lowerPriority() {
          isLowered = true;
        },
      };
    },
    prepare(request, signal) {
      prepared.push({ ...request, isAborted: () => signal.aborted });
    },
  };
  return { analyzer, asked, prepared };
}

/** An analysis that says nothing but that it was made, on so many sampled deals. */
export function analysisOf(sampledDeals: number, reducedBudget = false): AnalysisResult {
  const analysis: DeepAnalysis = {
    depth: 'deep',
    verdict: 'best',
    loss: null,
    atMost: 0,
    giveaway: null,
    played: 0,
    bestAlternative: null,
    finalists: [],
    alternatives: 0,
    typicalPass: null,
    sampledDeals,
    smallLoss: 1,
    why: null,
    others: null,
  };
  return { analysis, reducedBudget };
}
