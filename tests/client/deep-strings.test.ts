// The deeper judgement on the page: grades, figures, rows and the line over the steps, from judgements made by hand.
import { describe, expect, it } from 'vitest';
import { journeyOf } from '../../client/review/round-progress.ts';
import { journeyWords } from '../../client/review/progress-strings.ts';
import {
  aheadWords,
  deepProgress,
  finalistName,
  gradeOfJudgement,
  measuredFigure,
  progressWords,
} from '../../client/review/deep-strings.ts';
import { gradeOf } from '../../client/review/strings.ts';
import type { DeepAnalysis, Finalist, MeasuredValue, Review } from '../../shared-engine/index.ts';
import { withDeepAnalysis } from '../../shared-engine/index.ts';
import { move, reviewOf } from '../kit/reviews.ts';

const NOTHING: MeasuredValue = { value: 0, halfWidth: 0 };

function finalist(outlook: number, difference: MeasuredValue): Finalist {
  return {
    tiles: ['bam-3', 'bam-3', 'flower'],
    number: null,
    winProbability: { value: outlook, halfWidth: 0.5 },
    difference,
    giveaway: null,
    amongBest: true,
  };
}

function judged(verdict: DeepAnalysis['verdict'], loss: MeasuredValue, outlook = 25): DeepAnalysis {
  return {
    depth: 'deep',
    verdict,
    decided: verdict !== 'too-close',
    loss,
    giveaway: null,
    played: 0,
    bestAlternative: 1,
    finalists: [finalist(outlook, NOTHING), finalist(outlook + loss.value, loss)],
    alternatives: 1,
    averagePass: null,
    sampledDeals: 128,
    smallLoss: 1,
    sentences: ['One sentence.'],
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

describe('grades', () => {
  it('follow the verdict once there is one, and the first look until then', () => {
    const small = { value: 1.8, within: 0.6 };
    const large = { value: 4, within: 1 };
    expect(gradeOfJudgement(judged('as-good', small)).level).toBe(0);
    expect(gradeOfJudgement(judged('too-close', small)).level).toBe(1);
    expect(gradeOfJudgement(judged('better-exists', small)).level).toBe(2);
    expect(gradeOfJudgement(judged('better-exists', large)).level).toBe(3);
    const quick = { depth: 'quick', verdict: 'not-looked-at' } as const;
    expect(gradeOf({ loss: 2, analysis: quick }).level).toBe(3);
    expect(gradeOf({ loss: 2, analysis: judged('as-good', small) }).level).toBe(0);
  });
});

describe('figures', () => {
  it('carry their interval, a sign where one is wanted, and a real minus', () => {
    expect(measuredFigure({ value: 2.34, halfWidth: 0.66 }, true)).toBe('+2.3 ± 0.7');
    expect(measuredFigure({ value: -2.34, halfWidth: 0.66 }, false)).toBe('−2.3 ± 0.7');
    expect(measuredFigure({ value: -0.04, halfWidth: 0.2 }, true)).toBe('0.0 ± 0.2');
  });

  it('are read out for each row of the scale', () => {
    const row = finalist(27, { value: -1.5, halfWidth: 0.4 });
    expect(aheadWords(finalistName('pass', row), row, false)).toBe(
      '3 bam, 3 bam and flower: 1.5 points behind your choice, give or take 0.4.',
    );
    expect(finalistName('vote', { ...row, number: 0 })).toBe('Stop');
  });
});

describe('the line over the steps', () => {
  it('counts tiles to go until every pass has been played on, and shows outlook from then on', () => {
    const first = twoPasses();
    expect(journeyOf(first)).toMatchObject({
      kind: 'toGo',
      points: [{ name: 'Start', value: first.toGoStart }, { name: 'First right' }, { name: 'First across' }],
    });
    const half = withDeepAnalysis(first, 0, judged('as-good', NOTHING, 21));
    expect(journeyOf(half).kind).toBe('toGo');
    const whole = withDeepAnalysis(half, 1, judged('as-good', NOTHING, 28));
    const { kind, points } = journeyOf(whole);
    expect([kind, points.map(({ value }) => value)]).toEqual(['outlook', [21, 28]]);
    expect(journeyWords(kind, points)).toBe(
      'Outlook in chances of 100: First right 21.0, First across 28.0.',
    );
  });
});

describe('progress', () => {
  it('is told between the first and the last judgement', () => {
    const first = twoPasses();
    const half = withDeepAnalysis(first, 1, judged('too-close', NOTHING));
    const whole = withDeepAnalysis(half, 0, judged('too-close', NOTHING));
    expect([first, half, whole].map(deepProgress)).toEqual([null, { done: 1, all: 2 }, null]);
    expect(progressWords({ done: 1, all: 2 })).toContain('1 of 2 choices');
  });
});
