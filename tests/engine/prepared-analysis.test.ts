// What is done before anybody has chosen: it takes time off an analysis and changes no byte of it.
import { describe, expect, test } from 'vitest';
import { DEALS_PER_BATCH } from '../../shared-engine/analysis/belief/particle-filter.ts';
import { passesOf } from '../../shared-engine/analysis/comparison/alternatives.ts';
import type { Analyst } from '../../shared-engine/analysis/comparison/analyze.ts';
import { createDealMemory, remembering } from '../../shared-engine/analysis/comparison/remembered-deals.ts';
import {
  always,
  createDealSource,
  type DealAction,
} from '../../shared-engine/analysis/comparison/sampled-deals.ts';
import {
  analyzeDecision,
  decisionKey,
  decisionsIn,
  prepareDecision,
  type RecordedDecision,
} from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { PendingDecision } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { mayPassBlind } from '../../shared-engine/rules/exchange/schedule.ts';
import type { SeatRecord, SeatStep } from '../../shared-engine/rules/view/record.ts';
import { analystOf } from '../kit/analysts.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { GLANCE } from '../prove/analysis/budgets.ts';

const plain = analystOf(houseKernel.card);
const terms = { budget: GLANCE };

/** One that remembers, and how many actions it has played out so far. */
function remembersAndCounts(): { analyst: Analyst; played: () => number } {
  let played = 0;
  const { rollouts } = plain;
  const run: typeof rollouts.run = (batch) => {
    played += batch.count * batch.alternatives;
    return rollouts.run(batch);
  };
  return { analyst: { ...plain, rollouts: { run }, memory: createDealMemory() }, played: () => played };
}

/** What the step asked of the seat whose outcome this is. */
function askedBy(outcome: SeatStep, { seat, terms }: SeatRecord): PendingDecision {
  if (outcome.kind === 'vote') return { kind: 'vote', step: 'vote' };
  if (outcome.kind === 'ask') return { kind: 'ask', step: 'courtesy-ask' };
  const { step, gave, blind } = outcome;
  const count = gave.length + blind[seat];
  return { kind: 'pass', step, count, blindAllowed: mayPassBlind(step, terms) };
}

describe('an analysis of what was prepared while nobody had chosen', () => {
  test('has the same bytes, and plays fewer actions out', () => {
    const [record] = records('prepared', 1);
    const decisions = [...decisionsIn(record!).entries()];
    const kinds = new Map(
      decisions.map(([nth, { offered, subject }]) => [`${offered.chosen.kind} ${subject}`, nth]),
    );
    expect(kinds.size).toBeGreaterThan(2);
    for (const nth of kinds.values()) {
      const { chosen } = decisions[nth]![1].offered;
      const [whole, prepared] = [remembersAndCounts(), remembersAndCounts()];
      const analysis = analyzeDecision({ ...whole.analyst, memory: null }, record!, nth, terms);
      const before = { ...record!, steps: record!.steps.slice(0, record!.steps.indexOf(chosen)) };
      prepareDecision(prepared.analyst, before, askedBy(chosen, record!), terms);
      const early = prepared.played();
      const again = analyzeDecision(prepared.analyst, record!, nth, terms);
      const left = prepared.played() - early;
      expect(JSON.stringify(again)).toBe(JSON.stringify(analysis));
      expect(left).toBeLessThan(whole.played());
      // Both votes are played out whichever is cast; what it does to the others is looked for when it is.
      if (chosen.kind === 'vote') expect(left).toBe(2 * GLANCE.why.confirm * DEALS_PER_BATCH);
    }
  });

  test('is the same work for whoever prepares the same: nothing is played out twice', () => {
    const { analyst, played } = remembersAndCounts();
    const [record] = records('twice', 1);
    const before = { ...record!, steps: [] };
    const open = askedBy(record!.steps[0]!, record!);
    prepareDecision(analyst, before, open, terms);
    const once = played();
    expect(once).toBeGreaterThan(0);
    prepareDecision(analyst, before, open, terms);
    expect(played()).toBe(once);
  });

  test('is not begun by an analyst without a memory', () => {
    const { analyst, played } = remembersAndCounts();
    const [record] = records('twice', 1);
    const open = askedBy(record!.steps[0]!, record!);
    prepareDecision({ ...analyst, memory: null }, { ...record!, steps: [] }, open, terms);
    expect(played()).toBe(0);
  });
});

test('what is remembered of some batches and actions is completed by the others, batch by batch', () => {
  const [{ offered }] = decisionsIn(records('gaps', 1)[0]!) as [RecordedDecision];
  const source = createDealSource(plain, offered.situation, { deals: 1, noise: 2 });
  const asked: string[] = [];
  const remembered = remembering({
    rollOut(range, actions, end) {
      asked.push(`${range.first}+${range.batches}: ${actions.map(({ key }) => key).join(' ')}`);
      return source.rollOut(range, actions, end);
    },
  });
  const [a, b, c] = passesOf(offered.situation, 3, plain.leaf).map(({ action }) => always(action)) as [
    DealAction,
    DealAction,
    DealAction,
  ];
  for (const [range, actions] of [
    [{ first: 2, batches: 2 }, [a, b]],
    [{ first: 0, batches: 6 }, [a, c]],
    [{ first: 1, batches: 4 }, [c, b, c]],
  ] as const) {
    expect(remembered.rollOut(range, actions)).toEqual(source.rollOut(range, actions));
  }
  expect(asked).toEqual([`2+2: ${a.key} ${b.key}`, `0+6: ${a.key} ${c.key}`, `1+4: ${b.key}`]);
  expect(remembered.rollOut({ first: 0, batches: 1 }, [a], 'step')).toEqual(
    source.rollOut({ first: 0, batches: 1 }, [a], 'step'),
  );
});

test('only the latest situations are remembered', () => {
  const memory = createDealMemory();
  let created = 0;
  const ask = (key: number) =>
    memory.sourceFor(String(key), () => {
      created++;
      return { rollOut: () => ({ deals: 0, actions: 0, values: new Float64Array(0) }) };
    });
  const first = ask(0);
  for (let key = 1; key < 8; key++) ask(key);
  expect(ask(0)).toBe(first);
  ask(8);
  expect([ask(0) === first, created]).toEqual([true, 9]);
  ask(1);
  expect(created).toBe(10);
});

test('a decision keeps its key when its step is over, in whatever order the tiles were picked', () => {
  const [record] = records('keys', 1);
  const keys = decisionsIn(record!).map(decisionKey);
  expect(new Set(keys).size).toBe(keys.length);
  const turned = record!.steps.map((step) =>
    step.kind === 'move' ? { ...step, gave: step.gave.toReversed() } : step,
  );
  const [first] = decisionsIn({ ...record!, steps: turned.slice(0, 1) }).map(decisionKey);
  expect(first).toBe(keys[0]);
});
