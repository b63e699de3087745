// Ten racks one after the other: what is asked, what was answered, and which of them are worth another look.
import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type AskedRack,
  askedRack,
  type Constraint,
  choiceVerdict,
  type Face,
  type Kernel,
  type Review,
  reviewAskedPass,
  type SectionDistance,
  sectionDistances,
} from '../../../shared-engine/index.ts';
import type { RackQuestion } from './strings.ts';

export const RACKS_AT_ONCE = 10;

export type RackAnswer =
  | { readonly kind: 'pass'; readonly review: Review }
  | {
      readonly kind: 'sections';
      readonly named: readonly string[];
      readonly distances: readonly SectionDistance[];
    };

export interface AnsweredRack {
  readonly nth: number;
  readonly asked: AskedRack;
  readonly answer: RackAnswer;
}

export type RacksState =
  | { readonly is: 'choosing'; readonly problem: string | null }
  | {
      readonly is: 'asking';
      readonly question: RackQuestion;
      /** From 1. */
      readonly nth: number;
      readonly asked: AskedRack;
      /** Null until the question is answered. */
      readonly answer: RackAnswer | null;
    }
  | { readonly is: 'done'; readonly again: readonly AnsweredRack[] };

export interface RacksModel {
  readonly state: ReadonlySignal<RacksState>;
  start(question: RackQuestion, wish: Constraint | null): void;
  pass(tiles: readonly Face[]): void;
  nameSections(named: readonly string[]): void;
  /** The next rack, or the end after the tenth. */
  next(): void;
  stop(): void;
}

export function racksModel(kernel: Kernel, newSeed: () => string): RacksModel {
  const state = signal<RacksState>({ is: 'choosing', problem: null });
  let answered: readonly AnsweredRack[] = [];
  let deal = (_nth: number): void => {};

  function put(answer: RackAnswer) {
    const now = state.value;
    if (now.is !== 'asking' || now.answer !== null) return;
    answered = [...answered, { nth: now.nth, asked: now.asked, answer }];
    state.value = { ...now, answer };
  }

  return {
    state,
    start(question, wish) {
      const seed = newSeed();
      answered = [];
      deal = (nth) => {
        const dealt = askedRack(seed, nth, wish, kernel);
        state.value = dealt.ok
          ? { is: 'asking', question, nth, asked: dealt.asked, answer: null }
          : { is: 'choosing', problem: dealt.message };
      };
      deal(1);
    },
    pass(tiles) {
      if (state.value.is !== 'asking') return;
      put({ kind: 'pass', review: reviewAskedPass(state.value.asked, tiles, kernel) });
    },
    nameSections(named) {
      if (state.value.is !== 'asking') return;
      put({ kind: 'sections', named, distances: sectionDistances(state.value.asked.rack, kernel) });
    },
    next() {
      const now = state.value;
      if (now.is !== 'asking') return;
      if (now.nth < RACKS_AT_ONCE) deal(now.nth + 1);
      else state.value = { is: 'done', again: answered.filter(isWorthALook) };
    },
    stop() {
      state.value = { is: 'choosing', problem: null };
    },
  };
}

function isWorthALook({ answer }: AnsweredRack): boolean {
  if (answer.kind === 'pass')
    return answer.review.choices.some((choice) => choiceVerdict(choice) === 'costly');
  return !answer.distances.some(({ id, inReach }) => inReach && answer.named.includes(id));
}
