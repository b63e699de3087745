// A look ahead at a deal while a class is prepared: it shows what will be dealt, how rare that is, and finds a lesson.
import { describe, expect, it } from 'vitest';
import {
  type DealSetup,
  type DealTaskUpdate,
  type DealTask,
  kernelOf,
  previewDeal,
  searchDeals,
} from '../../client/class/prepare/deal-tasks.ts';
import { type DrillDeal, prepareDeal, type Constraint } from '../../shared-engine/index.ts';
import { vectors } from '../kit/analysts.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const bots = { ...drillOf([]).bots, styles: ['typical', 'typical', 'typical'] as const };
const about = (tiles: DrillDeal['tiles'], east = false): DealSetup => ({
  deal: dealOf(tiles, { dealer: east ? 0 : 1 }),
  bots,
  card: null,
});
const random = (name: string) => about({ kind: 'random', seed: seedNamed(name) });
const wished = (constraint: Constraint) => about({ kind: 'sampled', constraint, seed: seedNamed('look') });
const look = (one: DealSetup): DealTaskUpdate => previewDeal(one, houseKernel);

describe('what will be dealt', () => {
  it.each<[string, DealSetup]>([
    ['by chance', random('look')],
    [
      'set by hand',
      about({ kind: 'manual', racks: [['red', 'red'], [], [], []], seed: seedNamed('look') }, true),
    ],
    ['sampled', wished({ pairs: { from: 3 }, jokers: 1 })],
  ])('is shown of a deal %s as every table of the class gets it', (_, one) => {
    const news = look(one);
    const prepared = prepareDeal({ bots }, one.deal, houseKernel);
    expect(prepared.ok && news.kind === 'dealt' && news.rack).toEqual(
      prepared.ok && prepared.deal.prepared[0],
    );
  });

  it('comes with how rare a described rack is, and with nothing of the kind where anything will do', () => {
    const words = (wish: Constraint) => {
      const news = look(wished(wish));
      return news.kind === 'dealt' ? news.rarity : news;
    };
    // Three jokers in 13 of 152 tiles: .019624313 by the hypergeometric formula, and no sample is needed.
    expect(words({ jokers: 3 })).toBe('1 rack of 51 fits.');
    expect(words({ inARow: { from: 6 } })).toMatch(
      /^About 1 rack of [\d,]+ fits \(between 1 of [\d,]+ and 1 of [\d,]+\)\.$/,
    );
    expect(words({})).toBeNull();
  });

  it.each<[string, DealSetup, RegExp]>([
    [
      'five of a kind',
      about({
        kind: 'manual',
        racks: [Array.from({ length: 5 }, () => 'red' as const), [], [], []],
        seed: seedNamed('look'),
      }),
      /red dragon 5 times and the set has 4/,
    ],
    ['an impossible wish', wished({ jokers: 9 }), /no rack of 13 tiles can have 9 jokers/],
    ['a wish too rare', wished({ inARow: 9, flowers: 3, jokers: 0 }), /too rare to find/],
  ])('is refused in a sentence for %s', (_, one, sentence) => {
    const news = look(one);
    expect(news).toMatchObject({ kind: 'rejected' });
    expect(news.kind === 'rejected' && news.sentence).toMatch(sentence);
  });
});

describe('the search for a lesson', () => {
  const searched = (one: DealSetup, names: readonly string[]) => {
    const task: DealTask & { kind: 'search' } = { kind: 'search', seeds: names.map(seedNamed), ...one };
    return [...searchDeals(task, kernelOf(null), vectors)];
  };

  it('goes on until a first pass is clearly better than the usual one, the whole interval above nothing', () => {
    const news = searched(random('any'), ['lesson 1', 'lesson 2', 'lesson 3']);
    expect(news.map(({ kind }) => kind)).toEqual(['looked', 'found']);
    const found = news[1]!;
    if (found.kind !== 'found') throw new Error('nothing was found');
    expect([found.tried, found.seed]).toEqual([2, seedNamed('lesson 2')]);
    const { step, played, better, loss, halfWidth, unit } = found.better;
    expect([step, unit]).toEqual(['first-right', 'wins']);
    expect(loss - halfWidth).toBeGreaterThan(0);
    expect(better).not.toEqual(played);
  });

  it('says so when there is none', () => {
    expect(searched(random('any'), ['lesson 0', 'lesson 1'])).toEqual([
      { kind: 'looked', tried: 1 },
      { kind: 'looked', tried: 2 },
      { kind: 'none', tried: 2 },
    ]);
  });

  it('keeps to what the deal is to be like, and tells at once what cannot be', () => {
    const pairs = about({ kind: 'sampled', constraint: { pairs: { from: 2 } }, seed: seedNamed('look') }, true);
    const [found] = searched(pairs, ['pairs 0']);
    if (found?.kind !== 'found') throw new Error('nothing was found');
    const { deal } = pairs;
    const taken = look({ ...pairs, deal: { ...deal, tiles: { ...deal.tiles, seed: found.seed } } });
    const rack = taken.kind === 'dealt' ? taken.rack : [];
    expect(rack).toEqual(expect.arrayContaining([...found.better.played]));
    expect(rack.length - new Set(rack.filter((face) => face !== 'joker')).size).toBeGreaterThanOrEqual(2);
    expect(searched(wished({ jokers: 9 }), ['lesson 2'])).toMatchObject([{ kind: 'rejected' }]);
  });
});
