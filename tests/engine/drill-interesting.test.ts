// Deals worth a lesson: where a pass clearly better than the usual one is known, and only there.
import { describe, expect, test } from 'vitest';
import {
  begin,
  betterPasses,
  botsAround,
  chooseFor,
  type DeepAnalysis,
  dealTiles,
  facesOf,
  interestingDeals,
  type DealSearch,
  openRound,
  type PassReviewer,
  finishRound,
  quickReviewer,
  reviewRound,
  type SeatRecord,
  seatView,
  stream,
  typicalChoice,
} from '../../shared-engine/index.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { drillOf } from '../kit/drills.ts';
import { houseKernel, passesOf } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const seeds = Array.from({ length: 8 }, (_, n) => seedNamed(`interesting ${n}`));
const lookout: DealSearch = { seat: 1, dealer: 1, bots: drillOf([]).bots, steps: null };

describe('the quick judge', () => {
  const found = interestingDeals(seeds, lookout, houseKernel, quickReviewer(houseKernel));

  test('finds some of the deals, each with a pass at or above the smallest loss worth attention', () => {
    expect(found.length).toBeGreaterThan(0);
    for (const { seed, better } of found) {
      expect(seeds).toContain(seed);
      expect(better.length).toBeGreaterThan(0);
      for (const { loss, played, better: best } of better) {
        expect(loss).toBeGreaterThanOrEqual(0.25);
        expect(best).not.toEqual(played);
      }
    }
  });

  test('finds the same again, in the order of the seeds', () => {
    const [first] = found;
    expect(interestingDeals([first!.seed], lookout, houseKernel, quickReviewer(houseKernel))).toEqual([first]);
    const order = found.map(({ seed }) => seeds.indexOf(seed));
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  test('looks only at the steps asked for', () => {
    const step = found[0]!.better[0]!.step;
    const only = { ...lookout, steps: [step] };
    const [again] = interestingDeals([found[0]!.seed], only, houseKernel, quickReviewer(houseKernel));
    expect(again!.better.map((one) => one.step)).toEqual([step]);
    const none = { ...lookout, steps: [] };
    expect(interestingDeals(seeds.slice(0, 1), none, houseKernel, quickReviewer(houseKernel))).toEqual([]);
  });
});

test('the bar of the quick review is its smallest loss', () => {
  const { round } = finishRound(
    begin(openRound({ seed: seedNamed('bar'), dealer: 0 }, { revealRacks: false })),
    (view, random) => chooseFor('random', view, houseKernel, random),
  );
  const review = reviewRound(seatView(round, 2).record, houseKernel);
  const costly = passesOf(review).filter(({ loss }) => loss >= review.basis.smallLoss);
  expect(costly.length).toBeGreaterThan(1);
  expect(costly.length).toBeLessThan(passesOf(review).length);
  expect(betterPasses(review)).toEqual(
    costly.map(({ step, loss, played, best }) => ({
      step,
      played: played.tiles,
      better: best.tiles,
      loss,
      within: 0,
      unit: 'tiles',
    })),
  );
});

describe('a deeper judge in place of the quick one', () => {
  const shown: SeatRecord[] = [];
  const judgeAs =
    (verdict: DeepAnalysis['verdict']): PassReviewer =>
    (record) => {
      shown.push(record);
      const review = reviewRound(record, houseKernel);
      return {
        ...review,
        choices: review.choices.map((choice) => ({ ...choice, judgement: sampleDeepAnalysis(verdict) })),
      };
    };

  test('decides alone, whatever the quick loss is', () => {
    const [deal] = interestingDeals(seeds.slice(0, 1), lookout, houseKernel, judgeAs('better-exists'));
    expect(deal!.better.length).toBeGreaterThanOrEqual(4);
    for (const { better, loss, halfWidth } of deal!.better) {
      expect({ better, loss, within }).toEqual({ better: ['bam-1', 'bam-4', 'west'], loss: 2, within: 0.5 });
    }
    for (const verdict of ['as-good', 'too-close'] as const) {
      expect(interestingDeals(seeds.slice(0, 2), lookout, houseKernel, judgeAs(verdict))).toEqual([]);
    }
  });

  test('is shown the record of the seat, from the racks of the seed', () => {
    expect(shown[0]!.seat).toBe(1);
    expect(shown[0]!.start).toEqual(facesOf(dealTiles({ seed: seeds[0]!, dealer: 1 }).racks[1]));
  });
});

test('the usual choice is one the typical bot makes, steadier than any single look', () => {
  const { round } = { round: begin(openRound({ seed: seedNamed('usual'), dealer: 0 }, { revealRacks: false })) };
  const view = seatView(round, 0);
  const different = (choose: (n: number) => unknown): number =>
    new Set(Array.from({ length: 24 }, (_, n) => JSON.stringify(choose(n)))).size;
  const single = different((n) => chooseFor('typical', view, houseKernel, stream(`look ${n}`, 'usual')));
  const usual = different((n) => typicalChoice(view, houseKernel, stream(`look ${n}`, 'usual')));
  expect(single).toBeGreaterThan(1);
  expect(usual).toBeLessThan(single);
});

test('the usual choice of a seat that has answered, or of a closed round, is none', () => {
  const deal = { seed: seedNamed('closed'), dealer: 0 } as const;
  const { round } = finishRound(begin(openRound(deal, { revealRacks: false })), (view, random) =>
    chooseFor('typical', view, houseKernel, random),
  );
  expect(typicalChoice(seatView(round, 0), houseKernel, stream('closed', 'usual'))).toBeNull();
});

test('the bots of the drill play around the seat', () => {
  expect(botsAround(lookout.seat, lookout.bots)[lookout.seat]).toBeNull();
});
