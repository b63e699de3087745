// The preview of a deal while a class is prepared: its tiles, how rare they are, and the search for a lesson.
import { describe, expect, it } from 'vitest';
import {
  type DealSetup,
  type DealTask,
  type DealTaskUpdate,
  judgeDeal,
  kernelOf,
  previewDeal,
  searchDeals,
} from '../../client/class/prepare/deal-tasks.ts';
import type { Constraint, DrillDeal } from '../../shared-engine/drill/format.ts';
import { plainRack, prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { simd } from '../kit/analysts.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const bots = { ...drillOf([]).bots, styles: ['typical', 'typical', 'typical'] as const };
const setupOf = (tiles: DrillDeal['tiles'], east = false): DealSetup => ({
  deal: dealOf(tiles, { dealer: east ? 0 : 1 }),
  bots,
  card: null,
});
const random = (name: string) => setupOf({ kind: 'random', seed: seedNamed(name) });
const constrained = (constraint: Constraint) =>
  setupOf({ kind: 'sampled', constraint, seed: seedNamed('look') });
const previewOf = (setup: DealSetup): DealTaskUpdate => previewDeal(setup, houseKernel);

describe('the preview of a deal', () => {
  it.each<[string, DealSetup]>([
    ['random deal', random('look')],
    [
      'deal with picked tiles',
      setupOf({ kind: 'manual', racks: [['red', 'red'], [], [], []], seed: seedNamed('look') }, true),
    ],
    ['deal with a constraint', constrained({ pairs: { from: 3 }, jokers: 1 })],
  ])('shows of a %s the rack that every table of the class gets', (_, setup) => {
    const update = previewOf(setup);
    const prepared = prepareDeal({ bots }, setup.deal, houseKernel);
    expect(prepared.ok && update.kind === 'dealt' && update.rack).toEqual(
      prepared.ok && prepared.deal.prepared[0],
    );
    // Where no card is needed, the closed deal shows the same rack without a worker.
    const plain = setup.deal.tiles.kind === 'sampled' ? null : update.kind === 'dealt' && update.rack;
    expect(plainRack({ bots }, setup.deal)).toEqual(plain);
  });

  it('says how rare a rack with a constraint is, and nothing about an empty constraint', () => {
    const rarity = (constraint: Constraint) => {
      const update = previewOf(constrained(constraint));
      return update.kind === 'dealt' ? update.rarity : update;
    };
    // Three jokers in 13 of 152 tiles: .019624313 by the hypergeometric formula, and no sample is needed.
    expect(rarity({ jokers: 3 })).toBe('1 rack of 51 fits.');
    expect(rarity({ inARow: { from: 6 } })).toMatch(
      /^About 1 rack of [\d,]+ fits \(between 1 of [\d,]+ and 1 of [\d,]+\)\.$/,
    );
    expect(rarity({})).toBeNull();
  });

  it.each<[string, DealSetup, RegExp]>([
    [
      'five of a kind',
      setupOf({
        kind: 'manual',
        racks: [Array.from({ length: 5 }, () => 'red' as const), [], [], []],
        seed: seedNamed('look'),
      }),
      /^It uses red dragon 5 times, but there are only 4/,
    ],
    ['an impossible constraint', constrained({ jokers: 9 }), /^No rack of 13 tiles can have 9 jokers/],
    ['a constraint too rare to meet', constrained({ inARow: 9, flowers: 3, jokers: 0 }), /too rare to find/],
  ])('is rejected with a message for %s', (_, setup, message) => {
    const update = previewOf(setup);
    expect(update).toMatchObject({ kind: 'rejected' });
    expect(update.kind === 'rejected' && update.message).toMatch(message);
  });
});

describe('the search for a lesson', () => {
  const TRIED = [19, 20, 21, 9, 11].map((n) => `lesson ${n}`);
  const updatesOf = (setup: DealSetup, names: readonly string[]) => {
    const task: DealTask & { kind: 'search' } = { kind: 'search', seeds: names.map(seedNamed), ...setup };
    return [...searchDeals(task, kernelOf(null), simd)];
  };

  it('continues until a first pass is clearly better than the typical one, its whole interval above zero', () => {
    const updates = updatesOf(random('any'), TRIED);
    const found = updates.at(-1)!;
    if (found.kind !== 'found') throw new Error('nothing was found');
    // Which of them has a lesson depends on the card and the fitted win model; that the first one ends the search does not.
    expect(updates.slice(0, -1).map(({ kind }) => kind)).toEqual(new Array(found.tried - 1).fill('searched'));
    expect(found.seed).toBe(seedNamed(TRIED[found.tried - 1]!));
    const judged = judgeDeal(setupOf({ kind: 'random', seed: found.seed }), kernelOf(null), simd);
    if (judged.kind !== 'judged') throw new Error('nothing was judged');
    expect(judged.pass.played).toEqual(found.better.played);
    expect(judged.pass.sentences.join(' ')).toMatch(/\w/);
    expect(judged.pass.better === null).toBe(!['costly', 'a-little-worse'].includes(judged.pass.verdict));
    const { step, played, better, loss, halfWidth, unit } = found.better;
    expect([step, unit]).toEqual(['first-right', 'wins']);
    expect(loss - halfWidth).toBeGreaterThan(0);
    expect(better).not.toEqual(played);
  });

  it('reports that no seed has a lesson', () => {
    const without: string[] = [];
    for (const name of TRIED) {
      if (without.length < 2 && updatesOf(random('any'), [name]).at(-1)?.kind === 'none') without.push(name);
    }
    expect(updatesOf(random('any'), without)).toEqual([
      { kind: 'searched', tried: 1 },
      { kind: 'searched', tried: 2 },
      { kind: 'none', tried: 2 },
    ]);
  });

  it('keeps the constraint of the deal, and reports an impossible one at once', () => {
    const pairs = setupOf(
      { kind: 'sampled', constraint: { pairs: { from: 2 } }, seed: seedNamed('look') },
      true,
    );
    const found = updatesOf(pairs, TRIED).at(-1);
    if (found?.kind !== 'found') throw new Error('nothing was found');
    const { deal } = pairs;
    const taken = previewOf({ ...pairs, deal: { ...deal, tiles: { ...deal.tiles, seed: found.seed } } });
    const rack = taken.kind === 'dealt' ? taken.rack : [];
    expect(rack).toEqual(expect.arrayContaining([...found.better.played]));
    expect(rack.length - new Set(rack.filter((face) => face !== 'joker')).size).toBeGreaterThanOrEqual(2);
    expect(updatesOf(constrained({ jokers: 9 }), ['lesson 2'])).toMatchObject([{ kind: 'rejected' }]);
  });
});
