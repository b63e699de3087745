// What no single pass tells: tiles that came back, one neighbor fed over several passes, and what East discards first.
import { describe, expect, test } from 'vitest';
import { cameBack } from '../../shared-engine/analysis/review/came-back.ts';
import { fedNeighbor } from '../../shared-engine/analysis/review/fed-neighbor.ts';
import type { ChoiceReview, Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { wholeRoundSentences } from '../../shared-engine/analysis/review/sentences/ledger.ts';
import { helpSentence } from '../../shared-engine/analysis/review/sentences/neighbors.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatMove } from '../../shared-engine/rules/view/record.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { SAMPLE_LEDGER } from '../kit/fake-analysis.ts';
import { houseKernel, move, passesOf, reviewOf, toldOf } from '../kit/reviews.ts';

const START: readonly Face[] = [
  'bam-1',
  'bam-1',
  'bam-5',
  'crak-2',
  'crak-7',
  'crak-9',
  'dot-3',
  'dot-4',
  'dot-8',
  'east',
  'north',
  'north',
  'flower',
];
const STEPS = [
  move('first-right', ['crak-7', 'dot-8', 'north'], ['bam-2', 'dot-5', 'west']),
  move('first-across', ['dot-5', 'east', 'west'], ['north', 'crak-7', 'red']),
  move('first-left', ['crak-7', 'north', 'red'], ['bam-9', 'dot-1', 'white']),
];
const review = reviewOf(START, STEPS);
const NOTHING = { fed: null, back: [], firstDiscard: null } as const;
const nthPass = (nth: number): number => review.choices.indexOf(passesOf(review)[nth]!);

describe('a tile that is passed a second time', () => {
  test('V3 is told once such a tile has come back, whichever copy it is', () => {
    expect(passesOf(review).map(({ parts }) => parts.returned)).toEqual([[], [], ['crak-7', 'north']]);
    const again = reviewOf(START, [
      move('first-right', ['crak-7', 'dot-8', 'north'], ['crak-7', 'dot-5', 'west']),
      move('first-across', ['crak-7', 'east', 'west'], ['bam-9', 'dot-1', 'white']),
    ]);
    // Such a tile came in the exchange in which the first one went.
    expect(passesOf(again)[1]!.parts.returned).toEqual(['crak-7']);
    expect(toldOf(review, nthPass(2))).toContain(
      'You had passed 7 crak and the north wind before, and more of those kinds came in.',
    );
    expect(toldOf(review, nthPass(1))).not.toMatch(/came in/);
  });
});

describe('a tile that comes back and stays', () => {
  const back = (...steps: readonly ReturnType<typeof move>[]) => cameBack(reviewOf(START, steps).choices);
  const [first, across, left] = STEPS as [SeatMove, SeatMove, SeatMove];

  test('V3 is told of the whole round, with the last pass as well, unless it goes again', () => {
    expect(back(first, across)).toEqual(['crak-7', 'north']);
    expect(back(first, across, left)).toEqual([]);
    const late = move('second-left', ['bam-9', 'dot-1', 'white'], ['north', 'red', 'red']);
    expect(back(first, across, left, late)).toEqual(['north', 'red']);
  });

  test('V3 is told of two that come where one goes again', () => {
    const two = move('first-across', ['dot-5', 'east', 'west'], ['crak-7', 'crak-7', 'red']);
    const one = move('first-left', ['crak-7', 'crak-9', 'red'], ['bam-9', 'dot-1', 'white']);
    expect(back(first, two, one)).toEqual(['crak-7']);
    const both = move('first-left', ['crak-7', 'crak-7', 'red'], ['bam-9', 'dot-1', 'white']);
    expect(back(first, two, both)).toEqual([]);
    expect(passesOf(reviewOf(START, [first, two, both]))[2]!.parts.returned).toEqual(['crak-7', 'crak-7']);
  });

  test('is also one that comes in the exchange in which such a one goes', () => {
    const swap = move('first-right', ['crak-7', 'dot-8', 'north'], ['crak-7', 'dot-5', 'west']);
    expect(back(swap)).toEqual(['crak-7']);
    expect(back(swap, move('first-across', ['crak-7', 'east', 'west'], ['north', 'bam-9', 'red']))).toEqual([
      'north',
    ]);
  });

  test('is named, one as one', () => {
    const told = (...tiles: readonly Face[]) =>
      wholeRoundSentences(SAMPLE_LEDGER, { ...NOTHING, back: tiles });
    expect(told('crak-7')).toEqual(['You had passed 7 crak; more of that kind came in and stayed.']);
    expect(told('north', 'red')).toEqual([
      'You had passed the north wind and the red dragon; more of those kinds came in and stayed.',
    ]);
    const five = ['bam-1', 'bam-2', 'crak-7', 'north', 'red'] as const;
    expect(told(...five)).toEqual([
      'You had passed 1 bam, 2 bam, 7 crak, the north wind and the red dragon; more of those kinds came in and stayed.',
    ]);
    expect(told(...five, 'white')).toEqual([
      'You had passed 1 bam, 2 bam, 7 crak, the north wind and others; more of those kinds came in and stayed.',
    ]);
  });
});

describe('one neighbor', () => {
  /** The review with what each pass cost through its receiver. */
  function costing(...costs: readonly number[]): Review['choices'] {
    let nth = 0;
    return review.choices.map((choice) => {
      const giveaway = choice.kind === 'pass' ? { value: costs[nth++]!, halfWidth: 0.3 } : null;
      return { ...choice, analysis: { ...sampleDeepAnalysis('best'), giveaway } };
    });
  }
  const toTheRight = (choice: ChoiceReview): ChoiceReview =>
    choice.kind === 'pass' ? { ...choice, step: 'second-right' } : choice;

  test('is named where at least two passes together cost clearly more than the smallest loss', () => {
    const choices = costing(0.9, 0.1, 0.8);
    expect(fedNeighbor(choices)).toBeNull();
    const again = (all: Review['choices']) =>
      all.map((choice, nth) => (nth === nthPass(2) ? toTheRight(choice) : choice));
    const fed = fedNeighbor(again(choices));
    expect(fed).toEqual({ toward: 'right', passes: 2, cost: { value: 1.7, halfWidth: 0.424 } });
    expect(wholeRoundSentences(SAMPLE_LEDGER, { ...NOTHING, fed })).toEqual([
      'In 2 passes you gave the player on the right more help than players usually do.',
      'That probably cost you about 1.7 wins in 100 games.',
    ]);
  });

  test('is not named for a pass of which it is not told that it helps more than most', () => {
    const toldMore = (choices: Review['choices']) =>
      choices.filter(
        (choice) => choice.analysis.depth === 'deep' && helpSentence(choice, choice.analysis).length > 0,
      );
    const choices = costing(1.9, 0.1, 0.2).map((choice, nth) =>
      nth === nthPass(2) ? toTheRight(choice) : choice,
    );
    expect(toldMore(choices)).toHaveLength(1);
    expect(fedNeighbor(choices)).toBeNull();
  });

  test('is not named while a pass has not been played on', () => {
    expect(fedNeighbor(review.choices)).toBeNull();
  });
});

test('East alone is told what to discard first: the tile that its closest hands need least', () => {
  expect(review.firstDiscard).toBeNull();
  const record = { seat: 0, dealer: 0, terms: STANDARD_TERMS.friends, steps: [] } as const;
  const pungs: readonly Face[] = [
    'bam-1',
    'bam-1',
    'bam-1',
    'bam-2',
    'bam-2',
    'bam-2',
    'bam-3',
    'bam-3',
    'bam-3',
  ];
  const start: readonly Face[] = [...pungs, 'bam-4', 'bam-4', 'bam-4', 'bam-4', 'west'];
  const east = reviewRound({ ...record, start }, houseKernel);
  expect(east.firstDiscard).toBe('west');
  expect(wholeRoundSentences(SAMPLE_LEDGER, { ...NOTHING, firstDiscard: east.firstDiscard })).toEqual([
    'As East you discard first: the tile your closest hands need least is the west wind.',
  ]);
});
