// The judgement of one choice of an exchange laid in, made in a worker; what has been judged stays.
import { signal } from '@preact/signals';
import {
  type AnswerChoice,
  type CompiledCard,
  type DeepAnalysis,
  decisionsIn,
  type LaidExchange,
  laidRecord,
  recordWithAnswer,
} from '../../shared-engine/index.ts';
import type { StartDeepAnalysis } from '../practice/local-table.ts';

/** One part of a choice: a blind pass has two, how many and which tiles. */
export interface JudgedPart {
  readonly kind: 'pass' | 'blind' | 'vote' | 'ask';
  /** Null while it is being played on. */
  readonly analysis: DeepAnalysis | null;
}

export type Judgement =
  | { readonly is: 'working' | 'done'; readonly parts: readonly JudgedPart[] }
  | { readonly is: 'failed' };

export interface Judge {
  /** Of this choice in this situation; null when nobody asked. */
  of(exchange: LaidExchange, choice: AnswerChoice): Judgement | null;
  ask(exchange: LaidExchange, choice: AnswerChoice): void;
  stop(): void;
}

export function createJudge(loadCard: () => Promise<CompiledCard>, start: StartDeepAnalysis): Judge {
  const judgements = signal<ReadonlyMap<string, Judgement>>(new Map());
  const running = new Set<() => void>();
  const put = (key: string, judgement: Judgement) => {
    judgements.value = new Map(judgements.value).set(key, judgement);
  };
  return {
    of: (exchange, choice) => judgements.value.get(keyOf(exchange, choice)) ?? null,
    ask(exchange, choice) {
      const key = keyOf(exchange, choice);
      const known = judgements.peek().get(key);
      if (known && known.is !== 'failed') return;
      const record = recordWithAnswer(laidRecord(exchange), choice, 'player');
      const before = decisionsIn(laidRecord(exchange)).length;
      const places = decisionsIn(record)
        .map((_, place) => place)
        .slice(before);
      let parts = places.map((place): JudgedPart => ({ kind: kindOf(record, place), analysis: null }));
      put(key, { is: 'working', parts });
      loadCard().then(
        (card) => {
          const cancel = start({ record, card, choices: places }, ({ nth, analysis }) => {
            parts = parts.map((part, at) => (places[at] === nth ? { ...part, analysis } : part));
            const isDone = parts.every((part) => part.analysis !== null);
            if (isDone) running.delete(cancel);
            put(key, { is: isDone ? 'done' : 'working', parts });
          });
          running.add(cancel);
        },
        () => put(key, { is: 'failed' }),
      );
    },
    stop() {
      for (const cancel of running) cancel();
      running.clear();
    },
  };
}

function keyOf(exchange: LaidExchange, choice: AnswerChoice): string {
  return JSON.stringify([laidRecord(exchange), choice]);
}

function kindOf(record: Parameters<typeof decisionsIn>[0], place: number): JudgedPart['kind'] {
  const { offered, subject } = decisionsIn(record)[place]!;
  if (subject === 'tiles') return 'pass';
  return offered.chosen.kind === 'move' ? 'blind' : offered.chosen.kind;
}
