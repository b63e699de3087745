// What is told of a drill that everybody plays when they like: when, of whom, and what a difference of two releases tells.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Drill } from '../../shared-engine/drill/format.ts';
import { playGuidedDeal } from '../../shared-engine/drill/guided.ts';
import { parseDrill } from '../../shared-engine/drill/parse.ts';
import { prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { anonymousReport } from '../../shared-engine/drill/report/class-report.ts';
import { dividedSteps, drillOfDivided } from '../../shared-engine/drill/report/divided.ts';
import {
  type CountedChoices,
  type CountedDeal,
  countedChoices,
  type DealCounts,
  isReleaseDue,
  NO_COUNTS,
  openSpreads,
  releasedSpreads,
  shortSpread,
  spreadFromShort,
  stepsTaken,
  withRelease,
} from '../../shared-engine/drill/report/release.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const deal: CountedDeal = { seat: 0, terms: STANDARD_TERMS.class, rack: ['bam-1', 'dot-4', 'west'] };
const A = 'bam-1 dot-4 west';
const B = 'bam-1 dot-4 north';
const C = 'dot-4 west north';

function released(counts: DealCounts, newcomers: readonly CountedChoices[]): DealCounts {
  return withRelease(counts, newcomers, stepsTaken(counts, newcomers, deal));
}

const toldAt = (counts: DealCounts, step: string) =>
  releasedSpreads(counts, deal)
    .filter((one) => one.step === step)
    .map(({ kind, cells, other }) => [kind, ...cells.map(({ count }) => count), other]);
const firsts = (...chosen: readonly string[]): CountedChoices[] =>
  chosen.map((one) => ({ 'first-right': one }));
const times = (count: number, chosen: string): string[] => Array.from({ length: count }, () => chosen);

test('PD5 something is told when ten are through, and more with each five after them', () => {
  const due = (told: number) => [4, 5, 9, 10].map((waiting) => isReleaseDue(told, waiting));
  expect([due(0), due(10)]).toEqual([
    [false, false, false, true],
    [false, true, true, true],
  ]);
});

test('PD6 two cells of three at least are told and the rest as one number, of which no order of arrival shows', () => {
  const ten = firsts(...times(5, A), ...times(4, B), C);
  const counts = released(NO_COUNTS, ten);
  expect(toldAt(counts, 'first-right')).toEqual([['pass', 5, 5]]);
  expect(toldAt(released(NO_COUNTS, firsts(...times(8, A), B, C)), 'first-right')).toEqual([]);
  const shuffled = released(NO_COUNTS, ten.toReversed());
  expect(JSON.stringify(releasedSpreads(shuffled, deal))).toBe(JSON.stringify(releasedSpreads(counts, deal)));
});

test('PD6 where all newcomers of a release chose alike, they are told of with the next one', () => {
  const ten = released(NO_COUNTS, firsts(...times(6, A), ...times(4, B)));
  const held = released(ten, firsts(...times(5, C)));
  expect(toldAt(held, 'first-right')).toEqual([['pass', 6, 4, 0]]);
  expect(toldAt(released(held, firsts(...times(4, A), B)), 'first-right')).toEqual([['pass', 10, 5, 5, 0]]);
});

test('PD6 steps of the second Charleston are told when the vote is, and its blind tiles with the tiles passed', () => {
  const going: CountedChoices = { vote: '1', 'second-right': `0:${A}` };
  const others: CountedChoices = { vote: '1', 'second-right': '1:bam-1 west' };
  const alike = [...Array.from({ length: 5 }, () => going), ...Array.from({ length: 5 }, () => others)];
  expect(releasedSpreads(released(NO_COUNTS, alike), deal)).toEqual([]);
  const mixed = [...alike, { vote: '0' }, { vote: '0' }, { vote: '0' }];
  const counts = released(NO_COUNTS, mixed);
  expect([toldAt(counts, 'vote'), toldAt(counts, 'second-right')]).toEqual([
    [['vote', 10, 3, 0]],
    [
      ['blind', 5, 5, 0],
      ['pass', 5, 5, 0],
    ],
  ]);
});

test('PD7 two players of one release who exchange all their choices leave every released byte as it is', () => {
  const option = fc.constantFrom<CountedChoices>(
    { 'first-right': A, vote: '1', 'second-left': B },
    { 'first-right': A, vote: '0', 'courtesy-ask': '2' },
    { 'first-right': B, vote: '1', 'second-left': C },
    { 'first-right': C, vote: '0', 'courtesy-ask': '0' },
  );
  fc.assert(
    fc.property(fc.array(option, { minLength: 25, maxLength: 25 }), fc.nat(4), fc.nat(4), (players, a, b) => {
      const told = (all: readonly CountedChoices[]) => {
        let counts = NO_COUNTS;
        return [0, 10, 15, 20].map((from, n) => {
          counts = released(counts, all.slice(from, [10, 15, 20, 25][n]));
          return releasedSpreads(counts, deal);
        });
      };
      const exchanged = players.map((one, n) =>
        n === 15 + a ? players[15 + b]! : n === 15 + b ? players[15 + a]! : one,
      );
      const before = told(players);
      expect(JSON.stringify(told(exchanged))).toBe(JSON.stringify(before));
      for (const { cells, other } of before.flat()) {
        expect(cells.every(({ count }) => count >= 3) && (other === 0 || other >= 3)).toBe(true);
      }
    }),
    { numRuns: 20, seed: 12 },
  );
});

test('a spread is stored a tenth as long and read back as it was; with names every choice is counted', () => {
  const counts = released(NO_COUNTS, firsts(...times(6, A), ...times(3, B), C));
  const [spread] = releasedSpreads(counts, deal);
  expect(spreadFromShort(shortSpread(spread!), deal)).toEqual(spread);
  expect(spread).toMatchObject({ rack: deal.rack, cells: [{ decisionId: A, count: 6 }], other: 4 });
  const all = openSpreads({ told: { 'first-right': { [A]: 1, [C]: 2 } } }, deal);
  expect(all.map(({ cells }) => cells.map(({ count }) => count))).toEqual([[1, 2]]);
});

test('a round that is played out again with its script gives the choices that are counted', () => {
  const scripted = { arrivals: { 'first-right': ['dot-1', 'dot-2', 'west'] } } as const;
  const tiles = { kind: 'manual', racks: [[], [], [], []], seed: seedNamed('counted') } as const;
  const drill = drillOf([dealOf(tiles, { scripted })]);
  const prepared = prepareDeal(drill, drill.deals[0]!, houseKernel);
  if (!prepared.ok) throw new Error(prepared.problem.message);
  const tilesPassed = prepared.deal.prepared[0].filter((face) => face !== 'joker').slice(0, 3);
  const start = { deal: prepared.deal, seat: 0, bots: drill.bots, terms: STANDARD_TERMS.class } as const;
  const script = [
    { seat: 3, choice: { kind: 'pass', step: 'first-right', tiles: ['dot-1', 'dot-2', 'west'], blind: 0 } },
  ] as const;
  const pass = { kind: 'pass', step: 'first-right', tiles: tilesPassed, blind: 0 } as const;
  const played = playGuidedDeal({ ...start, script }, [pass], houseKernel);
  if (!played.ok) throw new Error(played.message);
  const { record } = seatView(played.round, 0);
  expect(countedChoices(record)).toEqual({ 'first-right': tilesPassed.join(' ') });
  expect(record.steps[0]).toMatchObject({ received: ['dot-1', 'dot-2', 'west'] });
});

test('the steps at which players are most divided come first, and their deals make a guided drill', () => {
  const drill: Drill = drillOf([
    dealOf({ kind: 'random', seed: seedNamed('a') }, { id: 'calm' }),
    dealOf({ kind: 'random', seed: seedNamed('b') }, { id: 'divided', title: 'Two pairs' }),
  ]);
  const report = (id: string, ten: readonly CountedChoices[]) => {
    const frozen = releasedSpreads(released(NO_COUNTS, ten), deal);
    return anonymousReport({ id }, { players: 10, frozen, analyses: null }, { sections: [] });
  };
  const votes = (go: number, chosen: string) =>
    Array.from({ length: 10 }, (_, n) => ({ vote: n < go ? '1' : '0', 'first-across': n < 5 ? A : chosen }));
  const steps = dividedSteps([report('calm', votes(7, C)), report('divided', votes(5, B))]);
  expect(steps.map(({ deal: id, step, division }) => [id, step, division])).toEqual([
    ['divided', 'vote', 0.5],
    ['calm', 'vote', 1 - 0.49 - 0.09],
  ]);
  const made = drillOfDivided(steps, drill);
  expect(made?.deals.map(({ id }) => id)).toEqual(['divided', 'calm']);
  expect(parseDrill(JSON.parse(JSON.stringify(made)), houseKernel).ok).toBe(true);
  expect(drillOfDivided([], drill)).toBeNull();
});

test('a deal carries what its teacher chose and says at a step, and a comment that fits no step is named', () => {
  const comments = {
    'first-right': { chosen: ['bam-1', 'west'], words: 'Keep the pair.' },
    vote: { chosen: 1 },
  };
  const json = (more: object) => ({
    ...drillOf([{ ...dealOf({ kind: 'random', seed: seedNamed('c') }), ...more }]),
  });
  expect(parseDrill(json({ comments }), houseKernel)).toMatchObject({
    ok: true,
    drill: { deals: [{ comments }] },
  });
  for (const wrong of [
    { vote: { chosen: 2 } },
    { 'first-left': { chosen: 1 } },
    { 'first-left': { chosen: ['joker'] } },
    { 'courtesy-ask': { chosen: ['west'] } },
    { vote: { words: 'x'.repeat(100_000) } },
    { vote: { words: 'a\u202Eb' } },
    { later: {} },
  ]) {
    const parsed = parseDrill(json({ comments: wrong }), houseKernel);
    expect(parsed.ok ? [] : parsed.problems[0]?.message).toMatch(
      /^Deal 1: ("comments|"comments\.vote\.words|unknown entry)/,
    );
  }
});
