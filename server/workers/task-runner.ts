// Does the tasks of a worker; it holds compiled cards, and the house card always.
import { LRUCache } from 'lru-cache';
import {
  type Analyst,
  analyzeDecision,
  type CompiledCard,
  chooseFor,
  compileCard,
  createAnalyst,
  createSwarKernel,
  DEEP_BUDGET,
  houseCard,
  type Kernel,
  reviewRound,
  SHALLOW_BUDGET,
  type SimdModule,
} from '../../shared-engine/index.ts';
import { prepareDrill } from './prepare-drill.ts';
import type { CardRef, Task, TaskResult } from './task.ts';

/** Cards held compiled besides the house card; each takes a few megabytes. */
const MAX_CARDS = 6;

interface ReadyCard {
  readonly kernel: Kernel;
  /** Made when it is first asked for: that takes longer than compiling the card. */
  analyst(): Analyst;
}

export interface TaskRunner {
  /** Compiles a card before it is asked about. */
  prepare(card: CardRef): void;
  /** Throws where the task makes no sense or was stopped. */
  run(task: Task): TaskResult;
}

/** `isStopped` is asked between the rollouts of a long task. */
export function createTaskRunner(simd: SimdModule, isStopped: () => boolean = () => false): TaskRunner {
  const house = readyCard(houseCard(), simd, isStopped);
  const others = new LRUCache<string, ReadyCard>({ max: MAX_CARDS });

  function cardFor({ key, file }: CardRef): ReadyCard {
    if (file === null) return house;
    const known = others.get(key);
    if (known) return known;
    const ready = readyCard(compileCard(file), simd, isStopped);
    others.set(key, ready);
    return ready;
  }

  return {
    prepare: (card) => void cardFor(card).analyst(),
    run(task) {
      const { kernel, analyst } = cardFor(task.card);
      switch (task.kind) {
        case 'review':
          return { kind: 'review', review: reviewRound(task.record, kernel, task.earlier) };
        case 'analyze': {
          const budget = task.depth === 'deep' ? DEEP_BUDGET : SHALLOW_BUDGET;
          return { kind: 'analyze', analysis: analyzeDecision(analyst(), task.record, task.nth, { budget }) };
        }
        case 'drill':
          return { kind: 'drill', prepared: prepareDrill(task.drill, kernel) };
        case 'choose': {
          const { style, view, seed } = task;
          return { kind: 'choose', choice: chooseFor(style, view, kernel, { below: () => seed }, analyst) };
        }
      }
    },
  };
}

function readyCard(card: CompiledCard, simd: SimdModule, isStopped: () => boolean): ReadyCard {
  let analyst: Analyst | null = null;
  return {
    kernel: createSwarKernel(card),
    analyst() {
      analyst ??= stoppable(createAnalyst(card, simd), isStopped);
      return analyst;
    },
  };
}

/** Rollouts are where the time goes: an analysis that is not wanted any more ends before the next ones. */
function stoppable(analyst: Analyst, isStopped: () => boolean): Analyst {
  const { rollouts } = analyst;
  return {
    ...analyst,
    rollouts: {
      ...rollouts,
      run(batch) {
        if (isStopped()) throw new Error('The task was stopped.');
        return rollouts.run(batch);
      },
    },
  };
}
