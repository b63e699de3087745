// An analyzer for tests: it keeps what it is asked and answers when and what the test says.
import type {
  AnalysisRank,
  AnalysisRequest,
  AnalysisResult,
  DeepAnalyzer,
  PreparationRequest,
} from '../../server/work-ports.ts';
import type { Ledger } from '../../shared-engine/analysis/ledger/settle.ts';
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import { sampleDeepAnalysis } from './classes.ts';

export interface AskedAnalysis extends AnalysisRequest {
  /** The one given last. */
  readonly rank: () => AnalysisRank;
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
    analyze(request, signal, first) {
      let rank = first;
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
        rank: () => rank,
        isOver: () => isOver,
        isAborted: () => signal.aborted,
        answer,
      });
      return {
        result,
        rank(to) {
          rank = to;
        },
      };
    },
    prepare(request, signal) {
      prepared.push({ ...request, isAborted: () => signal.aborted });
    },
    ledger: async () => null,
  };
  return { analyzer, asked, prepared };
}

/** Answers everything at once. */
export function answering(answer: (request: AnalysisRequest) => AnalysisResult | null): DeepAnalyzer {
  return {
    analyze: (request) => ({ result: Promise.resolve(answer(request)), rank() {} }),
    prepare() {},
    ledger: async () => null,
  };
}

/** A pass that another one beats, by an amount that follows from the id of the decision: different choices differ. */
export function analysisByDecision({ decisionId }: Pick<AnalysisRequest, 'decisionId'>): AnalysisResult {
  const value = Number.parseInt(decisionId.slice(0, 3), 16) / 1000;
  const analysis = { ...sampleDeepAnalysis('costly'), loss: { value, halfWidth: 0.5 } };
  return { analysis, reducedBudget: false };
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

/** A ledger of one choice that brought something, luck that took it, and nothing else. */
export const SAMPLE_LEDGER: Ledger = {
  unit: 'wins in 100 games',
  average: 25,
  start: { value: 20, halfWidth: 1 },
  close: { value: 20, halfWidth: 1 },
  luck: { value: -2, halfWidth: 1 },
  choices: { value: 2, halfWidth: 1 },
  standIns: 0,
  jumps: 0,
  entries: [
    {
      kind: 'pass',
      step: 'first-right',
      by: 'player',
      value: { value: 20, halfWidth: 1 },
      choice: 2,
      after: -2,
      afterBy: 'luck',
    },
  ],
  sampledDeals: 8,
  neighbors: [],
};
