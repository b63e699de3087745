// The deep analysis on the page: verdicts, numbers, rows and the chart over the steps, from analyses made by hand.
import { describe, expect, it } from 'vitest';
import {
  analysisProgress,
  differenceSentence,
  finalistName,
  progressSentence,
} from '../../client/review/deep-strings.ts';
import { progressDescription, roundProgress } from '../../client/review/round-progress.ts';
import { VERDICTS } from '../../client/room/verdicts.ts';
import { withInterval } from '../../client/ui/numbers.ts';
import { settle } from '../../shared-engine/analysis/ledger/settle.ts';
import type { DeepAnalysis, Finalist, MeasuredValue } from '../../shared-engine/analysis/review/analysis.ts';
import { choiceVerdict } from '../../shared-engine/analysis/review/choice-verdict.ts';
import { withDeepAnalysis, withLedger } from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { move, reviewOf } from '../kit/reviews.ts';

const NOTHING: MeasuredValue = { value: 0, halfWidth: 0 };

function finalist(wins: number, difference: MeasuredValue): Finalist {
  return {
    tiles: ['bam-3', 'bam-3', 'flower'],
    number: null,
    winProbability: { value: wins, halfWidth: 0.5 },
    difference,
    giveaway: null,
    amongBest: true,
  };
}

function analysisWith(verdict: DeepAnalysis['verdict'], loss: MeasuredValue, wins = 25): DeepAnalysis {
  return {
    depth: 'deep',
    verdict,
    loss,
    atMost: loss.value + loss.halfWidth,
    giveaway: null,
    played: 0,
    bestAlternative: 1,
    finalists: [finalist(wins, NOTHING), finalist(wins + loss.value, loss)],
    alternatives: 1,
    typicalPass: null,
    sampledDeals: 128,
    smallLoss: 1,
    why: null,
    others: null,
  };
}

const START = [
  'bam-1',
  'bam-3',
  'bam-3',
  'bam-6',
  'crak-2',
  'crak-4',
  'crak-4',
  'dot-1',
  'dot-5',
  'dot-9',
  'east',
  'red',
  'flower',
] as const;

function twoPasses(): Review {
  return reviewOf(START, [
    move('first-right', ['bam-1', 'crak-2', 'east'], ['bam-3', 'dot-2', 'dot-7']),
    move('first-across', ['dot-1', 'dot-2', 'red'], ['crak-4', 'north', 'bam-9']),
  ]);
}

describe('verdicts', () => {
  const small = { value: 1.8, halfWidth: 0.6 };
  const none = { value: -0.2, halfWidth: 0.6 };
  const verdictAfter = (analysis: DeepAnalysis) => VERDICTS[choiceVerdict({ loss: 2, analysis })].name;

  it('a choice that was played on has the verdict of its deep analysis, in its words', () => {
    expect(verdictAfter(analysisWith('best', none))).toBe('Best');
    expect(verdictAfter(analysisWith('just-as-good', small))).toBe('Just as good');
    expect(verdictAfter(analysisWith('a-little-worse', small))).toBe('A little worse');
    expect(verdictAfter(analysisWith('costly', small))).toBe('Costly');
    expect(verdictAfter(analysisWith('cant-say', small))).toBe('Can’t say');
  });

  it('a choice that was not played on yet gets its verdict from the loss in tiles, in order', () => {
    const quick = { depth: 'quick', verdict: 'pending' } as const;
    const names = [0, 0.04, 0.24, 0.25, 0.49, 0.5, 5].map((loss) => choiceVerdict({ loss, analysis: quick }));
    expect(names).toEqual([
      'best',
      'just-as-good',
      'just-as-good',
      'a-little-worse',
      'a-little-worse',
      'costly',
      'costly',
    ]);
  });
});

describe('numbers', () => {
  it('a measured number is shown with its interval, a sign where one is wanted, and a real minus sign', () => {
    expect(withInterval(2.34, 0.66, true)).toBe('+2.3 ± 0.7');
    expect(withInterval(-2.34, 0.66, false)).toBe('−2.3 ± 0.7');
    expect(withInterval(-0.04, 0.2, true)).toBe('0.0 ± 0.2');
  });

  it('each row of the scale has a sentence for those who do not see it', () => {
    const row = finalist(27, { value: -1.5, halfWidth: 0.4 });
    const name = finalistName('pass', row);
    expect(differenceSentence(name, row, 'named')).toBe(
      '3 bam, 3 bam and flower: 1.5 fewer wins in 100 games than your choice.',
    );
    expect(differenceSentence(name, row, 'other')).toBe(
      '3 bam, 3 bam and flower: between 1.1 and 1.9 fewer wins in 100 games than your choice.',
    );
    const across = { ...row, difference: { value: 0.3, halfWidth: 0.4 } };
    expect(differenceSentence(name, across, 'other')).toMatch(/: between 0\.1 fewer and 0\.7 more wins in /);
    const above = { ...row, difference: { value: 1.5, halfWidth: 0.4 } };
    expect(differenceSentence(name, above, 'other')).toMatch(/: between 1\.1 and 1\.9 more wins in /);
    expect(finalistName('vote', { ...row, number: 0 })).toBe('I’d stop');
  });
});

describe('the chart over the steps', () => {
  it('the chart shows tiles to go until every pass has been played on, and wins in 100 games from then on', () => {
    const first = twoPasses();
    expect(roundProgress(first)).toMatchObject({
      kind: 'toGo',
      points: [{ name: 'Start', value: first.toGoStart }, { name: 'First right' }, { name: 'First across' }],
    });
    const half = withDeepAnalysis(first, 0, analysisWith('just-as-good', NOTHING, 21));
    expect(roundProgress(half).kind).toBe('toGo');
    const whole = withDeepAnalysis(half, 1, analysisWith('just-as-good', NOTHING, 28));
    const progress = roundProgress(whole);
    expect(progress.kind).toBe('wins');
    expect(progress.points.map(({ value }) => value)).toEqual([21, 28]);
    expect(progressDescription(progress)).toBe('Wins in 100 games: First right 21.0, First across 28.0.');
  });
});

describe('the chart beside luck and choices', () => {
  const batches = (wins: number) => new Float64Array(8).fill(wins);
  const made = { by: 'player', afterBy: 'luck' } as const;
  const sums = settle(
    [
      { ...made, kind: 'pass', step: 'first-right', value: batches(34), chosen: batches(35) },
      { ...made, kind: 'ask', step: 'courtesy-ask', value: batches(51.4), chosen: batches(43.9) },
    ],
    batches(43.2),
    { average: 37, dealsPerBatch: 8 },
  );

  it('the line ends at the close, with the number that the sentence below tells, though nothing was swapped last', () => {
    const review = withLedger(twoPasses(), { ...sums, neighbors: [] });
    expect(roundProgress(review).points.map(({ name, value }) => [name, value])).toEqual([
      ['Start', 34],
      ['First right', 51.4],
      ['Close', 43.2],
    ]);
    expect(review.story.ledger).toContain('At the close your rack was worth about 43.');
  });

  it('a win rate above an even share among four is explained where it is told, and one that is not needs no word', () => {
    const told = (average: number) =>
      withLedger(twoPasses(), { ...sums, average, neighbors: [] }).story.ledger.join(' ');
    expect(told(37)).toContain('wins about 37 in 100 games');
    expect(
      [37, 24].map((average) => told(average).includes('Among four equal players each wins 25 at most.')),
    ).toEqual([true, false]);
  });
});

describe('progress', () => {
  it('the page says how many choices are done between the first and the last analysis', () => {
    const first = twoPasses();
    const half = withDeepAnalysis(first, 1, analysisWith('cant-say', NOTHING));
    const whole = withDeepAnalysis(half, 0, analysisWith('cant-say', NOTHING));
    expect([first, half, whole].map(analysisProgress)).toEqual([null, { done: 1, all: 2 }, null]);
    expect(progressSentence({ done: 1, all: 2 })).toContain('1 of your 2 choices');
  });
});
