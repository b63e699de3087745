// The judgement of one choice of a seat: a first answer, then played on in a worker. What is judged stays.
import { signal } from '@preact/signals';
import {
  type AnswerChoice,
  type ChoiceReview,
  type ChoiceStory,
  type CompiledCard,
  createSwarKernel,
  decisionsIn,
  type Review,
  recordWithAnswer,
  reviewRound,
  type SeatRecord,
  withDeepAnalysis,
} from '../../../shared-engine/index.ts';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';

/** One part of a choice, told as in a review: a blind pass has two, how many and which tiles. */
export interface JudgedPart {
  readonly choice: ChoiceReview;
  readonly story: ChoiceStory;
}

export type Judgement =
  | { readonly is: 'working' | 'done'; readonly parts: readonly JudgedPart[] }
  | { readonly is: 'failed' };

export interface Judge {
  /** Of this choice of the seat whose record so far this is; null when nobody asked. */
  of(record: SeatRecord, choice: AnswerChoice): Judgement | null;
  ask(record: SeatRecord, choice: AnswerChoice): void;
  stop(): void;
}

export function createJudge(card: CompiledCard, start: StartDeepAnalysis): Judge {
  const judgements = signal<ReadonlyMap<string, Judgement>>(new Map());
  const kernel = createSwarKernel(card);
  const running = new Set<() => void>();
  const put = (key: string, judgement: Judgement) => {
    judgements.value = new Map(judgements.value).set(key, judgement);
  };

  function judge(key: string, soFar: SeatRecord, choice: AnswerChoice): void {
    const record = recordWithAnswer(soFar, choice, 'player');
    const before = decisionsIn(soFar).length;
    let review = reviewRound(record, kernel);
    const choices = [...review.choices.keys()].slice(before);
    put(key, { is: 'working', parts: partsOf(review, choices) });
    const cancel = start(
      { record, card, choices },
      {
        onChoice({ nth, analysis }) {
          review = withDeepAnalysis(review, nth, analysis);
          const isDone = choices.every((place) => review.choices[place]!.analysis.depth === 'deep');
          if (isDone) running.delete(cancel);
          put(key, { is: isDone ? 'done' : 'working', parts: partsOf(review, choices) });
        },
        onFailure: () => put(key, { is: 'failed' }),
      },
    );
    running.add(cancel);
  }

  return {
    of: (record, choice) => judgements.value.get(keyOf(record, choice)) ?? null,
    ask(record, choice) {
      const key = keyOf(record, choice);
      const known = judgements.peek().get(key);
      if (known && known.is !== 'failed') return;
      put(key, { is: 'working', parts: [] });
      judge(key, record, choice);
    },
    stop() {
      for (const cancel of running) cancel();
      running.clear();
    },
  };
}

function partsOf({ choices, story }: Review, places: readonly number[]): readonly JudgedPart[] {
  return places.map((place) => ({ choice: choices[place]!, story: story.choices[place]! }));
}

function keyOf(record: SeatRecord, choice: AnswerChoice): string {
  return JSON.stringify([record, choice]);
}
