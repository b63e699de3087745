// A review knows what its seat knew and nothing else, and says the same each time.
import { describe, expect, test } from 'vitest';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { reviewSchema } from '../../shared-engine/protocol/review.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { bagOf } from '../../shared-engine/rules/tiles/bag.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { hiddenPair } from '../kit/hidden-pair.ts';
import { houseKernel, records } from '../kit/reviews.ts';

describe('privacy', () => {
  test('V1 Z1 rounds that differ in hidden racks alone give byte-identical reviews', () => {
    let pairs = 0;
    for (let n = 0; n < 24; n++) {
      const me = SEATS[n % 4]!;
      const pair = hiddenPair(`hidden ${n}`, me);
      if (pair === null) continue;
      const [one, other] = pair.map((round) => seatView(round, me));
      expect(pair[1].phase).toBe('closed');
      expect(pair[1].racks).not.toEqual(pair[0].racks);
      expect(other).toEqual(one);
      expect(JSON.stringify(reviewRound(other!.record, houseKernel))).toBe(
        JSON.stringify(reviewRound(one!.record, houseKernel)),
      );
      pairs++;
    }
    expect(pairs).toBeGreaterThan(15);
  });

  test('V1 a review names no tile that its seat did not hold', () => {
    for (const record of records('held', 12)) {
      const moves = record.steps.filter((step) => step.kind === 'move');
      const known = new Set([...record.start, ...moves.flatMap((step) => step.received)]);
      for (const choice of reviewRound(record, houseKernel).choices) {
        if (choice.kind !== 'pass') continue;
        for (const { tiles } of choice.alternatives) for (const face of tiles) expect(known).toContain(face);
        for (const { face } of choice.parts.groups) expect(known).toContain(face);
      }
    }
  });
});

describe('a repeated review', () => {
  test('of the same record has the same bytes, whatever was reviewed before', () => {
    const [first, second] = records('twice', 2);
    const once = JSON.stringify(reviewRound(first!, houseKernel));
    reviewRound(second!, houseKernel);
    expect(JSON.stringify(reviewRound(structuredClone(first!), houseKernel))).toBe(once);
  });

  test('does not depend on the order in which a rack was dealt', () => {
    const [record] = records('order', 1);
    const turned = { ...record!, start: [...record!.start].reverse() };
    expect(bagOf(turned.start)).toEqual(bagOf(record!.start));
    expect(reviewRound(turned, houseKernel)).toEqual(reviewRound(record!, houseKernel));
  });
});

describe('the schema of a review', () => {
  test('parses every review to the same value', () => {
    for (const record of records('parsed', 16)) {
      const review = reviewRound(record, houseKernel);
      expect(reviewSchema.parse(JSON.parse(JSON.stringify(review)))).toEqual(review);
    }
  });

  test('has a name for every section that a review mentions', () => {
    for (const record of records('named', 8)) {
      const { choices, sections } = reviewRound(record, houseKernel);
      for (const choice of choices) {
        if (choice.kind !== 'pass') continue;
        for (const id of [
          ...choice.sectionsInReach,
          ...choice.sectionsInReachAfter,
          ...choice.sectionsInReachAfterBest,
        ]) {
          expect(sections[id]).toMatch(/\w/);
        }
      }
    }
  });
});
