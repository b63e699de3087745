// Does the tasks of a worker; it holds compiled cards, and the house card always.
import { LRUCache } from 'lru-cache';
import {
  type Analyst,
  analyzeDecision,
  type CompiledCard,
  chooseFor,
  compileCard,
  createAnalyst,
  createDealMemory,
  createSwarKernel,
  DEEP_BUDGET,
  houseCard,
  type Kernel,
  LEDGER_BATCHES,
  ledgerOf,
  parseCard,
  playGuidedDeal,
  prepareDecision,
  type Random,
  reviewRound,
  SHALLOW_BUDGET,
  type SimdModule,
  seatView,
  stream,
  usesRollouts,
} from '../../shared-engine/index.ts';
import type { PlayedDeal } from '../work-ports.ts';
import { beginDrill, continueDrill } from './prepare-drill.ts';
import { cardFromShared, shareCard } from './shared-card.ts';
import type { CardRef, Task, TaskResult } from './task.ts';

/** Hands of all cards held besides the house card: two of the largest, and at most 140 MB with what belongs to them. */
const MAX_HANDS = 40_000;

/**
 * Situations whose deals are remembered: of a class of forty at one step, in which each player thinks for half a minute
 * after the step was prepared, about 25 are different.
 */
const MAX_SITUATIONS = 32;

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

/** `isStopped` is asked between the rollouts or racks of a long task. */
export function createTaskRunner(simd: SimdModule, isStopped: () => boolean = () => false): TaskRunner {
  const house = readyCard(houseCard(), simd, isStopped);
  const others = new LRUCache<string, ReadyCard>({
    maxSize: MAX_HANDS,
    sizeCalculation: ({ kernel }) => Math.max(1, kernel.card.hands.length),
  });

  function cardFor({ key, shared }: CardRef): ReadyCard {
    if (shared === null) return house;
    const known = others.get(key);
    if (known) return known;
    const ready = readyCard(cardFromShared(shared), simd, isStopped);
    others.set(key, ready);
    return ready;
  }

  return {
    prepare: (card) => void cardFor(card).analyst(),
    run(task) {
      switch (task.kind) {
        case 'check-card':
          return checkedCard(task.file);
        case 'compile-card':
          return { kind: 'compile-card', shared: shareCard(compileCard(task.file)) };
        case 'review': {
          const { kernel } = cardFor(task.card);
          return { kind: 'review', review: reviewRound(task.record, kernel, task.earlier) };
        }
        case 'analyze': {
          const analyst = cardFor(task.card).analyst();
          const budget = task.depth === 'deep' ? DEEP_BUDGET : SHALLOW_BUDGET;
          return { kind: 'analyze', analysis: analyzeDecision(analyst, task.record, task.nth, { budget }) };
        }
        case 'prepare': {
          const analyst = cardFor(task.card).analyst();
          prepareDecision(analyst, task.record, task.open, { budget: DEEP_BUDGET });
          return { kind: 'prepare' };
        }
        case 'ledger': {
          const analyst = cardFor(task.card).analyst();
          return { kind: 'ledger', ledger: ledgerOf(analyst, task.record, LEDGER_BATCHES[task.depth]) };
        }
        case 'drill':
          return { kind: 'drill', step: beginDrill(task.drill, cardFor(task.card).kernel, isStopped) };
        case 'drill-part':
          return { kind: 'drill', step: continueDrill(task.part, cardFor(task.card).kernel, isStopped) };
        case 'play':
          return { kind: 'play', played: playedDeal(task, cardFor(task.card).kernel) };
        case 'choose': {
          const { kernel, analyst } = cardFor(task.card);
          const { style, view } = task;
          return { kind: 'choose', choice: chooseFor(style, view, kernel, randomOf(task), analyst) };
        }
      }
    },
  };
}

function playedDeal({ start, choices }: Task & { kind: 'play' }, kernel: Kernel): PlayedDeal {
  const played = playGuidedDeal(start, choices, kernel);
  if (!played.ok) return { ok: false };
  const { round } = played;
  return { ok: true, record: seatView(round, start.seat).record, isClosed: round.phase === 'closed' };
}

function checkedCard(json: unknown): TaskResult & { kind: 'check-card' } {
  const parsed = parseCard(json);
  const compiled = parsed.ok
    ? ({ ok: true, file: parsed.card, shared: shareCard(compileCard(parsed.card)) } as const)
    : ({ ok: false, problems: parsed.problems.map(({ message }) => message) } as const);
  return { kind: 'check-card', compiled };
}

/** A bot that rolls deals out draws one number, and this is the one; the others get a stream of their own. */
function randomOf({ style, seed }: Task & { kind: 'choose' }): Random {
  return usesRollouts(style) ? { below: () => seed } : stream(String(seed), 'choice');
}

function readyCard(card: CompiledCard, simd: SimdModule, isStopped: () => boolean): ReadyCard {
  let analyst: Analyst | null = null;
  return {
    kernel: createSwarKernel(card),
    analyst() {
      analyst ??= stoppable(
        { ...createAnalyst(card, simd), memory: createDealMemory(MAX_SITUATIONS) },
        isStopped,
      );
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
