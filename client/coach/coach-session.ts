// One question to the coach: the first three steps at once, the pass when it has been played on in a worker.
import {
  type Coaching,
  type CompiledCard,
  coachedPass,
  coachedPassSentences,
  coachingFor,
  createSwarKernel,
  decisionsIn,
  type Face,
  firstLookPass,
  type PendingDecision,
  recordWithAnswer,
  type SeatRecord,
} from '../../shared-engine/index.ts';
import { startDeepAnalysis } from '../workers/deep-analysis.ts';

export interface CoachedChoice {
  /** The round up to the open step. */
  readonly record: SeatRecord;
  readonly decision: PendingDecision & { readonly kind: 'pass' };
}

export interface Advice {
  readonly tiles: readonly Face[];
  readonly sentences: readonly string[];
}

export interface CoachSession {
  readonly coaching: Coaching;
  /** Plays the passes on; the returned function cancels it. */
  advise(onAdvice: (advice: Advice) => void): () => void;
}

export function openCoachSession({ record, decision }: CoachedChoice, card: CompiledCard): CoachSession {
  return {
    coaching: coachingFor(record, card),
    advise(onAdvice) {
      const first = firstLookPass(record, decision, createSwarKernel(card));
      const answered = recordWithAnswer(record, first, 'player');
      const place = decisionsIn(answered).length - 1;
      return startDeepAnalysis({ record: answered, card, choices: [place] }, ({ analysis }) => {
        const pass = coachedPass(analysis);
        onAdvice({ tiles: pass.tiles, sentences: coachedPassSentences(record, card, pass) });
      });
    },
  };
}
