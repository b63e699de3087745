// Judges for tests: they keep what they are asked and answer when and what the test says.
import type { AnalysisRequest, DeepAnalysis, DeepAnalyzer } from '../../server/ports.ts';
import { type Analysis, decisionsIn, type RecordedDecision } from '../../shared-engine/index.ts';

export interface AskedChoice extends AnalysisRequest {
  readonly question: RecordedDecision;
  readonly gaveWay: () => boolean;
  /** Whether it has been answered or called off. */
  readonly isOver: () => boolean;
  readonly wasCalledOff: () => boolean;
  answer(judged: DeepAnalysis | null): void;
}

export interface FakeAnalyzer {
  readonly analyzer: DeepAnalyzer;
  /** Oldest first; what is over stays. */
  readonly asked: readonly AskedChoice[];
}

export function fakeAnalyzer(): FakeAnalyzer {
  const asked: AskedChoice[] = [];
  const analyzer: DeepAnalyzer = {
    analyze(choice) {
      let gaveWay = false;
      let over = false;
      let calledOff = false;
      let settle: (judged: DeepAnalysis | null) => void = () => {};
      const result = new Promise<DeepAnalysis | null>((resolve) => {
        settle = resolve;
      });
      const answer = (judged: DeepAnalysis | null) => {
        over = true;
        settle(judged);
      };
      asked.push({
        ...choice,
        question: decisionsIn(choice.record)[choice.nth]!,
        gaveWay: () => gaveWay,
        isOver: () => over,
        wasCalledOff: () => calledOff,
        answer,
      });
      return {
        result,
        lowerPriority() {
          gaveWay = true;
        },
        cancel() {
          calledOff = true;
          answer(null);
        },
      };
    },
  };
  return { analyzer, asked };
}

/** A judgement that says nothing but that it was made, in so many worlds. */
export function analysisOf(sampledDeals: number, reducedBudget = false): DeepAnalysis {
  const judgement: Analysis = {
    depth: 'deep',
    verdict: 'as-good',
    decided: true,
    loss: null,
    giveaway: null,
    played: 0,
    bestAlternative: null,
    finalists: [],
    alternatives: 0,
    averagePass: null,
    sampledDeals,
    smallLoss: 1,
    sentences: [],
  };
  return { judgement, reducedBudget };
}
