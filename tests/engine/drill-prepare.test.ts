// A drill's deals at the tables: equal for everybody, with every tile that was set, and the rest evenly random.
import { describe, expect, test } from 'vitest';
import type { DrillDeal } from '../../shared-engine/drill/format.ts';
import { botsAround, prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { dealTiles, type PreparedDeal } from '../../shared-engine/rules/deal/deal.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { bagOf, countOf, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { type Face, JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { dealOf, drillOf, fitsByDefinition, sampledDeal } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';
import { CHI_SQUARE, chiSquare, hypergeometric } from '../outside/distribution.ts';

function dealt(deal: DrillDeal, drill = drillOf([deal])): PreparedDeal {
  const prepared = prepareDeal(drill, deal, houseKernel);
  if (!prepared.ok) throw new Error(prepared.problem.message);
  return prepared.deal;
}

describe('a deal of a drill', () => {
  const seed = seedNamed('prepare');

  test('has at random the racks that its seed deals anywhere', () => {
    const { racks } = dealTiles({ seed, dealer: 3 });
    expect(dealt(dealOf({ kind: 'random', seed }, { dealer: 3 })).prepared).toEqual(racks.map(facesOf));
  });

  test('set by hand has every tile that was set, where it was set', () => {
    const set: Face[] = ['joker', 'joker', 'flower', 'bam-2'];
    const whole = dealTiles({ seed, dealer: 1 }).racks;
    const others = facesOf(whole[2]).slice(0, 5);
    const { prepared } = dealt(dealOf({ kind: 'manual', racks: [set, [], others, []], seed }));
    for (const face of set) expect(countOf(bagOf(prepared[0]), face)).toBeGreaterThanOrEqual(1);
    expect(countOf(bagOf(prepared[0]), 'joker')).toBeGreaterThanOrEqual(2);
    for (const face of others) expect(prepared[2]).toContain(face);
  });

  test('with a constraint has a fitting rack at its seat, with 14 tiles if that seat is the dealer', () => {
    const constraint = { pairs: { from: 3 }, jokers: 1 };
    for (const dealer of SEATS) {
      const { prepared } = dealt({ ...sampledDeal(constraint), seat: 2, dealer });
      expect(prepared[2]).toHaveLength(dealer === 2 ? 14 : 13);
      expect(fitsByDefinition(prepared[2], constraint, houseKernel)).toBe(true);
    }
  });

  test('is equal at every table, with equal bots, wherever it stands in the drill', () => {
    const deal = dealOf({ kind: 'random', seed });
    const moved = { ...deal, id: 'moved', title: 'Moved' };
    expect(dealt(moved, drillOf([sampledDeal({}), moved]))).toEqual(dealt(deal));
  });

  test('keeps its tiles when the seed of the bots changes, and changes what follows', () => {
    const deal = dealOf({ kind: 'random', seed });
    const drill = drillOf([deal]);
    const other = { ...drill, bots: { ...drill.bots, seed: seedNamed('other bots') } };
    expect(dealt(deal, other).prepared).toEqual(dealt(deal).prepared);
    expect(dealt(deal, other).seed).not.toBe(dealt(deal).seed);
  });

  test('has a seed that is none of the seeds in the file', () => {
    const drill = drillOf([dealOf({ kind: 'random', seed })]);
    expect([seed, drill.bots.seed]).not.toContain(dealt(drill.deals[0]!, drill).seed);
  });

  test('too rare to find is reported as a problem of the deal', () => {
    const deal = { ...sampledDeal({ inARow: 9, jokers: 4 }), id: 'needle' };
    const prepared = prepareDeal(drillOf([deal]), deal, houseKernel);
    expect(prepared).toMatchObject({ ok: false, problem: { code: 'too-rare', deal: 'needle' } });
    expect(!prepared.ok && prepared.problem.message).toMatch(
      /^Deal 1: such racks are too rare to find: .+\.$/,
    );
  });
});

test('the bots sit to the right of the seat of the deal, across from it and to its left', () => {
  const { bots } = drillOf([sampledDeal({})]);
  expect(botsAround(0, bots)).toEqual([null, 'typical', 'strong', 'casual']);
  expect(botsAround(2, bots)).toEqual(['strong', 'casual', null, 'typical']);
});

describe('tiles that are not set are evenly random', () => {
  const DEALS = 2_000;

  test('jokers of a neighbor, where the rack with a constraint has two: hypergeometric, 6 among 139 (chi-square, df 5, .01)', () => {
    const counts = [0, 0, 0, 0, 0, 0];
    for (let n = 0; n < DEALS; n++) {
      const { prepared } = dealt(sampledDeal({ jokers: 2 }, `neighbour ${n}`));
      counts[Math.min(5, bagOf(prepared[2])[JOKER_INDEX]!)]!++;
    }
    const shares = [0, 1, 2, 3, 4].map((k) => hypergeometric(k, 13, 6, 139));
    const expected = [...shares, 1 - shares.reduce((a, b) => a + b)].map((share) => share * DEALS);
    // Five jokers and more are due less than once and are taken together with four.
    const folded = (values: readonly number[]) => [...values.slice(0, 4), values[4]! + values[5]!];
    expect(chiSquare(folded(counts), folded(expected))).toBeLessThan(CHI_SQUARE[5]!.at01);
  });

  test('the rest of a rack with three tiles set: 10 of 149 (chi-square, df 5, .01)', () => {
    const counts = [0, 0, 0, 0];
    for (let n = 0; n < DEALS; n++) {
      const seed = seedNamed(`rest ${n}`);
      const { prepared } = dealt(
        dealOf({ kind: 'manual', racks: [['east', 'east', 'red'], [], [], []], seed }),
      );
      counts[Math.min(3, countOf(bagOf(prepared[0]), 'flower'))]!++;
    }
    const shares = [0, 1, 2].map((k) => hypergeometric(k, 10, 8, 149));
    const expected = [...shares, 1 - shares.reduce((a, b) => a + b)].map((share) => share * DEALS);
    expect(chiSquare(counts, expected)).toBeLessThan(CHI_SQUARE[5]!.at01);
  });
});
