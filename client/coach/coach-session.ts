// One question to the coach: the first three steps at once, what to choose when it has been played on in a worker.
import {
  type AnswerChoice,
  answerOf,
  type Coaching,
  type CompiledCard,
  coachedChoice,
  coachedSentences,
  coachingFor,
  createSwarKernel,
  decisionsIn,
  type Face,
  firstLook,
  type PendingDecision,
  recordWithAnswer,
  type SeatRecord,
} from '../../shared-engine/index.ts';
import { type StartDeepAnalysis, startDeepAnalysis } from '../workers/deep-analysis.ts';

export interface CoachedChoice {
  /** The round up to the open step. */
  readonly record: SeatRecord;
  readonly decision: PendingDecision;
}

export interface Advice {
  /** Empty where it is a number. */
  readonly tiles: readonly Face[];
  readonly sentences: readonly string[];
}

export interface CoachSession {
  readonly coaching: Coaching;
  /** Plays the choices on; the returned function cancels it. */
  advise(onAdvice: (advice: Advice) => void, onFail: () => void): () => void;
}

/** So many answers are judged at most before one is named. */
const MOST_JUDGED = 4;

export function openCoachSession(
  { record, decision }: CoachedChoice,
  card: CompiledCard,
  start: StartDeepAnalysis = startDeepAnalysis,
): CoachSession {
  /** Judged as the review will judge it: where that would name another pass, the other one is judged before it is named. */
  function judge(answer: AnswerChoice, left: number, say: Say): () => void {
    const answered = recordWithAnswer(record, answer, 'player');
    const place = decisionsIn(answered).length - 1;
    let cancelNext = () => {};
    const cancel = start(
      { record: answered, card, choices: [place] },
      {
        onChoice({ analysis }) {
          const best = coachedChoice(analysis);
          if (best !== analysis.finalists[analysis.played] && left > 1) {
            cancelNext = judge(answerOf(decision, best), left - 1, say);
          } else {
            say.onAdvice({ tiles: best.tiles, sentences: coachedSentences(decision, record, card, best) });
          }
        },
        onFailure: say.onFail,
      },
    );
    return () => {
      cancel();
      cancelNext();
    };
  }

  return {
    coaching: coachingFor(record, card),
    advise: (onAdvice, onFail) =>
      judge(firstLook(record, decision, createSwarKernel(card)), MOST_JUDGED, { onAdvice, onFail }),
  };
}

interface Say {
  readonly onAdvice: (advice: Advice) => void;
  readonly onFail: () => void;
}
