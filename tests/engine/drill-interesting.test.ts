// Deals with a lesson: those in which a pass is known that is clearly better than the typical one.
import { describe, expect, test } from 'vitest';
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { finishRound } from '../../shared-engine/bots/finish-round.ts';
import {
  betterPasses,
  type DealSearch,
  interestingDeals,
  type PassReviewer,
  quickReviewer,
} from '../../shared-engine/drill/interesting.ts';
import { botsAround } from '../../shared-engine/drill/prepare.ts';
import { typicalChoice } from '../../shared-engine/drill/typical.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../shared-engine/rules/exchange/evolve.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { type SeatView, seatView } from '../../shared-engine/rules/view/view.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { drillOf } from '../kit/drills.ts';
import { houseKernel, passesOf } from '../kit/reviews.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';

const seeds = Array.from({ length: 8 }, (_, n) => seedNamed(`interesting ${n}`));
const dealSearch: DealSearch = { seat: 1, dealer: 1, bots: drillOf([]).bots, steps: null };

describe('the search for lessons with quick reviews', () => {
  const found = interestingDeals(seeds, dealSearch, houseKernel, quickReviewer(houseKernel));

  test('finds some of the deals, each with a pass that costs half a tile or more', () => {
    expect(found.length).toBeGreaterThan(0);
    for (const { seed, better } of found) {
      expect(seeds).toContain(seed);
      expect(better.length).toBeGreaterThan(0);
      for (const { loss, played, better: best } of better) {
        expect(loss).toBeGreaterThanOrEqual(0.5);
        expect(best).not.toEqual(played);
      }
    }
  });

  test('finds the same deals again, in the order of their seeds', () => {
    const [first] = found;
    expect(interestingDeals([first!.seed], dealSearch, houseKernel, quickReviewer(houseKernel))).toEqual([
      first,
    ]);
    const order = found.map(({ seed }) => seeds.indexOf(seed));
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  test('counts only the passes of the steps it was asked for', () => {
    const step = found[0]!.better[0]!.step;
    const only = { ...dealSearch, steps: [step] };
    const [again] = interestingDeals([found[0]!.seed], only, houseKernel, quickReviewer(houseKernel));
    expect(again!.better.map((one) => one.step)).toEqual([step]);
    const none = { ...dealSearch, steps: [] };
    expect(interestingDeals(seeds.slice(0, 1), none, houseKernel, quickReviewer(houseKernel))).toEqual([]);
  });
});

test('a pass of the quick review has a clearly better one where its verdict is costly', () => {
  const { round } = finishRound(
    begin(openRound({ seed: seedNamed('bar'), dealer: 0 }, { revealRacks: false })),
    (view, random) => chooseFor('random', view, houseKernel, random),
  );
  const review = reviewRound(seatView(round, 2).record, houseKernel);
  const costly = passesOf(review).filter(({ loss }) => loss >= 0.5);
  expect(costly.length).toBeGreaterThan(1);
  expect(costly.length).toBeLessThan(passesOf(review).length);
  expect(betterPasses(review)).toEqual(
    costly.map(({ step, loss, played, best }) => ({
      step,
      played: played.tiles,
      better: best.tiles,
      loss,
      halfWidth: 0,
      unit: 'tiles',
    })),
  );
});

describe('a reviewer handed to the search for lessons', () => {
  const shown: SeatRecord[] = [];
  const reviewAs =
    (verdict: DeepAnalysis['verdict']): PassReviewer =>
    (record) => {
      shown.push(record);
      const review = reviewRound(record, houseKernel);
      return {
        ...review,
        choices: review.choices.map((choice) => ({ ...choice, analysis: sampleDeepAnalysis(verdict) })),
      };
    };

  test('decides alone which passes are costly, whatever the quick review says', () => {
    const [deal] = interestingDeals(seeds.slice(0, 1), dealSearch, houseKernel, reviewAs('costly'));
    expect(deal!.better.length).toBeGreaterThanOrEqual(4);
    for (const { better, loss, halfWidth } of deal!.better) {
      expect({ better, loss, halfWidth }).toEqual({
        better: ['bam-1', 'bam-4', 'west'],
        loss: 2,
        halfWidth: 0.5,
      });
    }
    for (const verdict of ['just-as-good', 'a-little-worse', 'cant-say'] as const) {
      expect(interestingDeals(seeds.slice(0, 2), dealSearch, houseKernel, reviewAs(verdict))).toEqual([]);
    }
  });

  test('gets the record of the seat, dealt from the racks of the seed', () => {
    expect(shown[0]!.seat).toBe(1);
    expect(shown[0]!.start).toEqual(facesOf(dealTiles({ seed: seeds[0]!, dealer: 1 }).racks[1]));
  });
});

test('the typical choice is one that the typical bot makes, and varies less than its single choices', () => {
  // At the courtesy there are four answers; among hundreds of passes seven looks may settle nothing.
  const views = ['usual', 'as usual', 'most usual', 'quite usual'].map((name) => {
    const asking = playOn(opened(name), stream(name, 'players'), ({ phase }) => phase === 'asking');
    return seatView(asking.round, 0);
  });
  const SINGLE = 24;
  /** How many of the answers are the most frequent one of their view. */
  const agreeing = (choose: (view: SeatView, n: number) => unknown): number =>
    views.reduce((sum, view) => {
      const answers = Array.from({ length: SINGLE }, (_, n) => JSON.stringify(choose(view, n)));
      return sum + Math.max(...answers.map((one) => answers.filter((other) => other === one).length));
    }, 0);
  const single = agreeing((view, n) => chooseFor('typical', view, houseKernel, stream(`look ${n}`, 'usual')));
  const usual = agreeing((view, n) => typicalChoice(view, houseKernel, stream(`look ${n}`, 'usual')));
  expect(single).toBeLessThan(views.length * SINGLE);
  expect(usual).toBeGreaterThan(single);
});

test('a seat that has answered has no typical choice, and neither has a closed round', () => {
  const deal = { seed: seedNamed('closed'), dealer: 0 } as const;
  const { round } = finishRound(begin(openRound(deal, { revealRacks: false })), (view, random) =>
    chooseFor('typical', view, houseKernel, random),
  );
  expect(typicalChoice(seatView(round, 0), houseKernel, stream('closed', 'usual'))).toBeNull();
});

test('the bots of the drill sit around the seat that is searched for', () => {
  expect(botsAround(dealSearch.seat, dealSearch.bots)[dealSearch.seat]).toBeNull();
});
