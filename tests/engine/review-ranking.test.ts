// Which passes a review compares, and in what order.
import { describe, expect, test } from 'vitest';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour, SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { MOVE_STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { bagOf, facesOf, sizeOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { houseKernel, mixedRound, move, passesOf, records, reviewOf } from '../kit/reviews.ts';
import { opened, playOn } from '../kit/rounds.ts';

/**
 * Coefficient of x^size in ∏(1 + x + … + x^c) over the faces that may be passed.
 * Source: elementary combinatorics (a generating function for multisets with bounded copies).
 */
function passesByGeneratingFunction(rack: readonly Face[], size: number): number {
  let coefficients = [1, ...new Array<number>(size).fill(0)];
  const counts = bagOf(rack);
  FACES.forEach((face, index) => {
    if (face === 'joker') return;
    coefficients = coefficients.map((_, power) =>
      coefficients
        .slice(Math.max(0, power - counts[index]!), power + 1)
        .reduce((sum, coefficient) => sum + coefficient, 0),
    );
  });
  return coefficients[size]!;
}

const SAMPLE = records('ranking', 24).map((record) => reviewRound(record, houseKernel));

describe('the alternatives of a pass', () => {
  test('C1 the number of legal passes is the coefficient of the generating function', () => {
    const sizes = new Set<number>();
    for (const pass of SAMPLE.flatMap(passesOf)) {
      sizes.add(pass.played.tiles.length);
      expect(pass.legal).toBe(passesByGeneratingFunction(pass.rack, pass.played.tiles.length));
    }
    expect([...sizes].sort()).toEqual([1, 2, 3]);
  });

  test('C1 fourteen different tiles have 364 passes of three', () => {
    const different = FACES.slice(0, 14);
    const review = reviewOf(different, [move('first-right', FACES.slice(0, 3), FACES.slice(20, 23))]);
    expect(passesOf(review)[0]!.legal).toBe(364);
    expect(passesByGeneratingFunction(different, 3)).toBe((14 * 13 * 12) / 6);
  });

  test('C2 a joker is in no alternative, however many are held', () => {
    const rack: Face[] = [...new Array<Face>(6).fill('joker'), ...FACES.slice(0, 7)];
    const review = reviewOf(rack, [move('first-right', FACES.slice(0, 3), ['east', 'east', 'west'])]);
    const [pass] = passesOf(review);
    expect(pass!.legal).toBe((7 * 6 * 5) / 6);
    for (const each of [...SAMPLE.flatMap(passesOf), pass!].flatMap(({ alternatives }) => alternatives)) {
      expect(each.tiles).not.toContain('joker');
    }
  });

  test('are different passes, each possible from the rack', () => {
    for (const { alternatives, rack } of SAMPLE.flatMap(passesOf)) {
      expect(new Set(alternatives.map(({ tiles }) => tiles.join())).size).toBe(alternatives.length);
      for (const { tiles } of alternatives) expect(takeFrom(bagOf(rack), tiles)).not.toBeNull();
    }
  });
});

describe('the ranking of passes', () => {
  test('has the best first, and none is nearer', () => {
    for (const { alternatives, best } of SAMPLE.flatMap(passesOf)) {
      expect(alternatives[0]).toEqual(best);
      const values = alternatives.map(({ nearness }) => nearness);
      expect(values).toEqual([...values].sort((a, b) => b - a));
    }
  });

  test('gives a loss that is the difference to the best, never less than 0', () => {
    for (const { best, loss, played, rank } of SAMPLE.flatMap(passesOf)) {
      expect(loss).toBeCloseTo(best.nearness - played.nearness, 9);
      expect(loss).toBeGreaterThanOrEqual(0);
      expect(loss === 0).toBe(rank === 1);
      if (rank === 1) expect(played).toEqual(best);
    }
  });

  test('lists the pass played at its rank, or last when it ranks behind those shown', () => {
    let behind = 0;
    for (const { alternatives, legal, played, rank } of SAMPLE.flatMap(passesOf)) {
      expect(rank).toBeLessThanOrEqual(legal);
      const place = alternatives.findIndex(({ tiles }) => tiles.join() === played.tiles.join());
      expect(alternatives[place]).toEqual(played);
      if (rank > 12) {
        behind++;
        expect(place).toBe(alternatives.length - 1);
      } else {
        expect(alternatives[rank - 1]!.nearness).toBe(played.nearness);
      }
    }
    expect(behind).toBeGreaterThan(10);
  });

  test('has random passes all over the list and strong ones near the top', () => {
    const share = (seat: number) => {
      const passes = SAMPLE.filter((review) => review.seat === seat).flatMap(passesOf);
      return passes.reduce((sum, { legal, rank }) => sum + rank / legal, 0) / passes.length;
    };
    expect(share(0)).toBeLessThan(0.1);
    expect(share(2)).toBeGreaterThan(0.25);
  });
});

describe('replaying a record', () => {
  test('E2 gives the racks that the seat held', () => {
    const name = 'relived';
    const held = new Map<string, readonly Face[]>();
    const played = playOn(opened(name), stream(name, 'players'), (round) => {
      const step = stepOf(round);
      for (const seat of SEATS) held.set(`${seat} ${step}`, facesOf(round.racks[seat]));
      return false;
    });
    const seen = forFour((seat) => passesOf(reviewRound(seatView(played.round, seat).record, houseKernel)));
    for (const seat of SEATS) {
      expect(seen[seat].length).toBeGreaterThan(2);
      for (const { rack, step } of seen[seat]) expect(rack).toEqual(held.get(`${seat} ${step}`));
    }
  });

  test('gives tiles to go of the first and the last rack', () => {
    const { round } = mixedRound('first and last');
    for (const seat of SEATS) {
      const { record, rack } = seatView(round, seat);
      const review = reviewRound(record, houseKernel);
      expect(review.toGoStart).toBe(houseKernel.toGo(bagOf(record.start)));
      expect(review.toGoEnd).toBe(houseKernel.toGo(bagOf(rack)));
    }
  });

  test('reviews a round that is still going on as far as it has come', () => {
    const [record] = records('half way', 1);
    const whole = reviewRound(record!, houseKernel);
    const first: SeatRecord = { ...record!, steps: record!.steps.slice(0, 2) };
    const half = reviewRound(first, houseKernel);
    expect(half.choices).toEqual(whole.choices.slice(0, 2));
    expect(reviewRound({ ...record!, steps: [] }, houseKernel).choices).toEqual([]);
    expect(MOVE_STEPS).toContain(half.choices[1]!.step);
    expect(sizeOf(bagOf(record!.start))).toBe(14);
  });
});
