// One question to the coach: the first three steps at once, what to choose when it has been played on in a worker.
import {
  type AnswerChoice,
  answerOf,
  type CoachedRack,
  type Coaching,
  type CompiledCard,
  coachedSentences,
  coachingFor,
  createSwarKernel,
  type DeepAnalysis,
  decisionsIn,
  type Face,
  facesOf,
  finalRack,
  firstLook,
  nextCoachStep,
  type PendingDecision,
  recordWithAnswer,
  type SeatRecord,
  tilesGone,
} from '../../shared-engine/index.ts';
import { findReach } from '../workers/card-reach.ts';
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

export interface CoachPorts {
  readonly start: StartDeepAnalysis;
  /** By what the card beside the rack is put in order too. */
  readonly findReach: typeof findReach;
}

const WORKERS: CoachPorts = { start: startDeepAnalysis, findReach };

export async function openCoachSession(
  { record, decision }: CoachedChoice,
  card: CompiledCard,
  ports: CoachPorts = WORKERS,
): Promise<CoachSession> {
  const reach = await ports.findReach(card, facesOf(finalRack(record)), tilesGone(record));
  const rack: CoachedRack = { record, card, reach };

  /** Judged as the review will judge it, one after the other, until one can be named. */
  function judge(answer: AnswerChoice, before: readonly DeepAnalysis[], say: Say): () => void {
    const answered = recordWithAnswer(record, answer, 'player');
    const place = decisionsIn(answered).length - 1;
    let cancelNext = () => {};
    const cancel = ports.start(
      { record: answered, card, choices: [place] },
      {
        onChoice({ analysis }) {
          const judged = [...before, analysis];
          const { kind, choice } = nextCoachStep(judged);
          if (kind === 'judge') cancelNext = judge(answerOf(decision, choice), judged, say);
          else say.onAdvice({ tiles: choice.tiles, sentences: coachedSentences(decision, rack, choice) });
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
    coaching: coachingFor(rack),
    advise: (onAdvice, onFail) =>
      judge(firstLook(record, decision, createSwarKernel(card)), [], { onAdvice, onFail }),
  };
}

interface Say {
  readonly onAdvice: (advice: Advice) => void;
  readonly onFail: () => void;
}
