// Ten racks one after the other: what is asked, what was answered, and which of them are worth another look.
import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type AskedRack,
  askedRack,
  type Constraint,
  type DrawnDeal,
  type Face,
  type Kernel,
  type MistakeCategory,
  type Review,
  reviewAskedPass,
  type SectionDistance,
  sectionDistances,
} from '../../../shared-engine/index.ts';
import type { DealDrawer, DrawerRequest } from '../../workers/drawn-deals.ts';
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

/** What the racks are to be like, or the mistake that a typical player would make with them. */
export type RackWish = { readonly fits: Constraint | null } | { readonly tempts: MistakeCategory };

export type RacksState =
  | { readonly is: 'choosing'; readonly problem: string | null }
  | { readonly is: 'drawing'; readonly tried: number }
  | {
      readonly is: 'asking';
      readonly question: RackQuestion;
      /** From 1. */
      readonly nth: number;
      /** How many are asked: ten, or those that are asked again. */
      readonly of: number;
      readonly asked: AskedRack;
      /** Whether it was to be drawn for a mistake and none was found. */
      readonly isByChance: boolean;
      /** Null until the question is answered. */
      readonly answer: RackAnswer | null;
    }
  /** Ten are done, or as many as were answered before somebody stopped. */
  | {
      readonly is: 'done';
      readonly question: RackQuestion;
      readonly answered: readonly AnsweredRack[];
    };

export interface RacksModel {
  readonly state: ReadonlySignal<RacksState>;
  start(question: RackQuestion, wish: RackWish): void;
  pass(tiles: readonly Face[]): void;
  nameSections(named: readonly string[]): void;
  /** The next rack, or the sum after the last. */
  next(): void;
  /** The sum of what has been answered, or the choice where nothing has. */
  stop(): void;
  /** Once they are done: the same question of these racks again. */
  repeat(racks: readonly AskedRack[]): void;
  /** Back to the choice of a question. */
  choose(): void;
  /** Nobody looks any more. */
  close(): void;
}

export interface RacksPorts {
  readonly kernel: Kernel;
  readonly newSeed: () => string;
  readonly openDrawer: (request: Pick<DrawerRequest, 'wish' | 'most' | 'onTried'>) => DealDrawer;
}

export function racksModel({ kernel, newSeed, openDrawer }: RacksPorts): RacksModel {
  const state = signal<RacksState>({ is: 'choosing', problem: null });
  let answered: readonly AnsweredRack[] = [];
  let question: RackQuestion = 'pass';
  let of = RACKS_AT_ONCE;
  let deal = (_nth: number): void => {};
  let drawer: DealDrawer | null = null;

  function put(answer: RackAnswer) {
    const now = state.value;
    if (now.is !== 'asking' || now.answer !== null) return;
    answered = [...answered, { nth: now.nth, asked: now.asked, answer }];
    state.value = { ...now, answer };
  }

  function dealByChance(wish: Constraint | null): typeof deal {
    const seed = newSeed();
    return (nth) => {
      const dealt = askedRack(seed, nth, wish, kernel);
      if (dealt.ok) ask(nth, dealt.asked);
      else state.value = { is: 'choosing', problem: dealt.message };
    };
  }

  function ask(nth: number, asked: AskedRack, isByChance = false): void {
    state.value = { is: 'asking', question, nth, of, asked, isByChance, answer: null };
  }

  /** Drawn one ahead of need; where no worker can be had, the racks come by chance. */
  function dealTempting(kind: MistakeCategory): typeof deal {
    const seed = newSeed();
    const mine = openDrawer({
      wish: { kind, firstPass: true },
      most: RACKS_AT_ONCE,
      onTried(tried) {
        if (state.value.is === 'drawing') state.value = { is: 'drawing', tried };
      },
    });
    drawer = mine;
    return (nth) => {
      state.value = { is: 'drawing', tried: 0 };
      void mine.next().then((drawn) => {
        if (state.value.is !== 'drawing' || drawer !== mine) return;
        if (drawn !== null) return ask(nth, rackOfDeal(drawn), drawn.kind === null);
        const dealt = askedRack(seed, nth, null, kernel);
        if (dealt.ok) ask(nth, dealt.asked, true);
      });
    };
  }

  function end(): void {
    drawer?.stop();
    drawer = null;
  }

  function sumUp(): void {
    end();
    state.value =
      answered.length > 0 ? { is: 'done', question, answered } : { is: 'choosing', problem: null };
  }

  return {
    state,
    start(chosen, wish) {
      end();
      answered = [];
      question = chosen;
      of = RACKS_AT_ONCE;
      deal = 'tempts' in wish ? dealTempting(wish.tempts) : dealByChance(wish.fits);
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
      if (now.nth < of) deal(now.nth + 1);
      else sumUp();
    },
    stop: sumUp,
    repeat(racks) {
      if (state.value.is !== 'done' || racks.length === 0) return;
      answered = [];
      of = racks.length;
      deal = (nth) => ask(nth, racks[nth - 1]!);
      deal(1);
    },
    choose() {
      state.value = { is: 'choosing', problem: null };
    },
    close: end,
  };
}

function rackOfDeal({ record: { seat, dealer, start } }: DrawnDeal): AskedRack {
  return { dealer, isEast: seat === dealer, rack: start };
}
