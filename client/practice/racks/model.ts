// Ten racks one after the other: what is asked, what was answered, and which of them are worth another look.
import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type AskedRack,
  askedRack,
  type Constraint,
  choiceVerdict,
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
      readonly asked: AskedRack;
      /** Whether it was to be drawn for a mistake and none was found. */
      readonly isByChance: boolean;
      /** Null until the question is answered. */
      readonly answer: RackAnswer | null;
    }
  | { readonly is: 'done'; readonly again: readonly AnsweredRack[] };

export interface RacksModel {
  readonly state: ReadonlySignal<RacksState>;
  start(question: RackQuestion, wish: RackWish): void;
  pass(tiles: readonly Face[]): void;
  nameSections(named: readonly string[]): void;
  /** The next rack, or the end after the tenth. */
  next(): void;
  stop(): void;
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
  let deal = (_nth: number): void => {};
  let drawer: DealDrawer | null = null;

  function put(answer: RackAnswer) {
    const now = state.value;
    if (now.is !== 'asking' || now.answer !== null) return;
    answered = [...answered, { nth: now.nth, asked: now.asked, answer }];
    state.value = { ...now, answer };
  }

  function dealByChance(question: RackQuestion, wish: Constraint | null): typeof deal {
    const seed = newSeed();
    return (nth) => {
      const dealt = askedRack(seed, nth, wish, kernel);
      if (dealt.ok) ask(question, nth, dealt.asked);
      else state.value = { is: 'choosing', problem: dealt.message };
    };
  }

  function ask(question: RackQuestion, nth: number, asked: AskedRack, isByChance = false): void {
    state.value = { is: 'asking', question, nth, asked, isByChance, answer: null };
  }

  /** Drawn one ahead of need; where no worker can be had, the racks come by chance. */
  function dealTempting(question: RackQuestion, kind: MistakeCategory): typeof deal {
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
        if (drawn !== null) return ask(question, nth, rackOfDeal(drawn), drawn.kind === null);
        const dealt = askedRack(seed, nth, null, kernel);
        if (dealt.ok) ask(question, nth, dealt.asked, true);
      });
    };
  }

  function end(): void {
    drawer?.stop();
    drawer = null;
  }

  return {
    state,
    start(question, wish) {
      end();
      answered = [];
      deal = 'tempts' in wish ? dealTempting(question, wish.tempts) : dealByChance(question, wish.fits);
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
      if (now.nth < RACKS_AT_ONCE) return deal(now.nth + 1);
      end();
      state.value = { is: 'done', again: answered.filter(isWorthALook) };
    },
    stop() {
      end();
      state.value = { is: 'choosing', problem: null };
    },
    close: end,
  };
}

function rackOfDeal({ record: { seat, dealer, start } }: DrawnDeal): AskedRack {
  return { dealer, isEast: seat === dealer, rack: start };
}

function isWorthALook({ answer }: AnsweredRack): boolean {
  if (answer.kind === 'pass')
    return answer.review.choices.some((choice) => choiceVerdict(choice) === 'costly');
  return !answer.distances.some(({ id, inReach }) => inReach && answer.named.includes(id));
}
