// Choices among a few numbers: tiles passed blind, continue or stop, tiles asked for by courtesy.
import { describe, expect, test } from 'vitest';
import type { NumberReview, Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { nearness } from '../../shared-engine/kernels/tiles-to-go/nearness.ts';
import { bagOf } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { houseKernel, move, passesOf, records, reviewOf, toldOf } from '../kit/reviews.ts';

const REVIEWS = records('numbers', 24).map((record) => reviewRound(record, houseKernel));

function numbersOf({ choices }: Review): NumberReview[] {
  return choices.filter((choice): choice is NumberReview => choice.kind !== 'pass');
}

/** Nearly a complete hand: only two tiles are no part of it. */
const NEARLY_DONE: readonly Face[] = [
  ...(['bam-3', 'bam-3', 'bam-3', 'bam-4', 'bam-4', 'bam-4', 'bam-7', 'bam-7', 'bam-7', 'bam-8'] as const),
  ...(['joker', 'red', 'north'] as const),
];
/** Thirteen faces far apart. */
const SCATTERED: readonly Face[] = [
  ...(['bam-1', 'bam-5', 'bam-9', 'crak-2', 'crak-4', 'crak-7', 'dot-3', 'dot-6', 'dot-8'] as const),
  ...(['east', 'north', 'red', 'white'] as const),
];

function vote(goes: boolean): SeatRecord['steps'][number] {
  return { kind: 'vote', go: [goes, true, true, true], by: ['player', 'bot', 'bot', 'bot'] };
}

function ask(count: number): SeatRecord['steps'][number] {
  return {
    kind: 'ask',
    asked: [count, 3, 3, 3],
    agreed: [count, 3, count, 3],
    by: ['player', 'bot', 'bot', 'bot'],
  };
}

describe('every number chosen', () => {
  const all = REVIEWS.flatMap(numbersOf);

  test('is compared with all the numbers there are', () => {
    for (const { kind, options } of all) {
      expect(options.map(({ value }) => value)).toEqual(kind === 'vote' ? [0, 1] : [0, 1, 2, 3]);
    }
    expect(new Set(all.map(({ kind }) => kind))).toEqual(new Set(['blind', 'vote', 'ask']));
  });

  test('loses by what the best number is better, never less than 0', () => {
    for (const { best, loss, options, played } of all) {
      const worth = (value: number) => options.find((option) => option.value === value)!.nearness;
      expect(loss).toBeCloseTo(worth(best) - worth(played), 9);
      expect(worth(best)).toBe(Math.max(...options.map(({ nearness }) => nearness)));
      if (loss === 0) expect(best).toBe(played);
    }
  });

  test('is reviewed in the order of the steps, the blind number before the tiles of its pass', () => {
    for (const { choices } of REVIEWS) {
      const kinds = choices.map(({ kind, step }) => `${kind} ${step}`);
      expect(kinds.slice(0, 3)).toEqual(['pass first-right', 'pass first-across', 'blind first-left']);
      expect(kinds.filter((kind) => kind === 'vote vote')).toHaveLength(1);
      const left = kinds.indexOf('pass first-left');
      if (left !== -1) expect(left).toBe(3);
    }
  });
});

describe('the number passed blind', () => {
  test('B1 is compared with each number and the best own tiles for it', () => {
    let compared = 0;
    for (const review of REVIEWS) {
      for (const pass of passesOf(review)) {
        const blind = numbersOf(review).find(({ kind, step }) => kind === 'blind' && step === pass.step);
        if (!blind) continue;
        compared++;
        expect(blind.played).toBe(pass.blind);
        expect(blind.options.find(({ value }) => value === pass.blind)!.nearness).toBe(pass.best.nearness);
      }
    }
    expect(compared).toBeGreaterThan(20);
  });

  test('B1 alone is reviewed where all three were passed blind and no tile was chosen', () => {
    const review = reviewOf(SCATTERED, [move('first-left', [], [], { blind: 3 })]);
    expect(review.choices.map(({ kind }) => kind)).toEqual(['blind']);
    expect(review.choices[0]).toMatchObject({ played: 3, best: 0 });
    expect(review.toGoEnd).toBe(review.toGoStart);
  });

  test('B1 is best above 0 for a rack with two passers, which would have to break up a group', () => {
    const review = reviewOf(NEARLY_DONE, [
      move('first-left', ['red', 'north', 'bam-3'], ['dot-2', 'dot-5', 'crak-7']),
    ]);
    const [blind] = numbersOf(review);
    expect(blind!.spare).toBe(2);
    expect(blind!.best).toBeGreaterThan(0);
    expect(toldOf(review)).toContain('With fewer than 3 passers the rule of thumb is to pass blind.');
  });
});

describe('the vote on a second Charleston', () => {
  test('O1 is better to continue for a scattered rack', () => {
    const review = reviewOf(SCATTERED, [vote(false)]);
    const [stopped] = numbersOf(review);
    expect(stopped).toMatchObject({ kind: 'vote', played: 0, best: 1 });
    expect(stopped!.loss).toBeGreaterThan(0.25);
    expect(toldOf(review)).toContain('better: continue');
  });

  test('O1 is better to stop for a rack with hardly any passers', () => {
    const done: readonly Face[] = [...NEARLY_DONE.slice(0, 11), 'joker', 'bam-6'];
    const review = reviewOf(done, [vote(true)]);
    const [went] = numbersOf(review);
    expect(went).toMatchObject({ kind: 'vote', played: 1, best: 0 });
    expect(toldOf(review)).toContain('better: stop');
  });

  test('is judged without what the others voted, and told whether that overruled it', () => {
    const others: SeatRecord['steps'][number] = {
      kind: 'vote',
      go: [true, false, false, true],
      by: ['player', 'player', 'player', 'stand-in'],
    };
    const [overruled] = numbersOf(reviewOf(SCATTERED, [others]));
    const [alone] = numbersOf(reviewOf(SCATTERED, [vote(true)]));
    expect(overruled).toEqual({ ...alone, anotherStopped: true });
  });
});

describe('the number asked for', () => {
  test('Y1 is reviewed without what the seat across asked for', () => {
    const other: SeatRecord['steps'][number] = {
      kind: 'ask',
      asked: [2, 0, 0, 1],
      agreed: [0, 0, 0, 0],
      by: ['player', 'bot', 'bot', 'bot'],
    };
    const [told] = numbersOf(reviewOf(SCATTERED, [other]));
    const [alone] = numbersOf(reviewOf(SCATTERED, [ask(2)]));
    expect(told).toEqual({ ...alone, askedAcross: 0 });
  });

  test('Y1 is best at 3 for a scattered rack and lower for a nearly complete one', () => {
    expect(numbersOf(reviewOf(SCATTERED, [ask(0)]))[0]).toMatchObject({ played: 0, best: 3 });
    const full: readonly Face[] = [...NEARLY_DONE.slice(0, 11), 'joker', 'bam-6'];
    expect(numbersOf(reviewOf(full, [ask(3)]))[0]!.best).toBeLessThan(3);
  });

  test('Y1 is worth the mean over what the seat across may ask for, the smaller number holding', () => {
    const given = (['east', 'north', 'red'] as const).map((_, index, tiles) => tiles.slice(0, index + 1));
    const swapped = given.map((gave) => {
      const [pass] = passesOf(reviewOf(SCATTERED, [move('courtesy-pass', gave, gave)]));
      return pass!.best.nearness;
    });
    const worth = [nearness(houseKernel, bagOf(SCATTERED)), ...swapped];
    const [asked] = numbersOf(reviewOf(SCATTERED, [ask(0)]));
    for (const { value, nearness: mean } of asked!.options) {
      const cases = [0, 1, 2, 3].map((other) => worth[Math.min(value, other)]!);
      expect(mean).toBeCloseTo(cases.reduce((sum, each) => sum + each, 0) / 4, 2);
    }
  });
});
