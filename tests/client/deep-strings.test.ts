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
import type { DeepJudgement, Finalist, Measured, Review } from '../../shared-engine/index.ts';
import { withJudgement } from '../../shared-engine/index.ts';
import { move, reviewOf } from '../kit/reviews.ts';

const NOTHING: Measured = { value: 0, within: 0 };

function finalist(outlook: number, ahead: Measured): Finalist {
  return {
    tiles: ['bam-3', 'bam-3', 'flower'],
    number: null,
    outlook: { value: outlook, within: 0.5 },
    ahead,
    gift: null,
    inFront: true,
  };
}

function judged(verdict: DeepJudgement['verdict'], loss: Measured, outlook = 25): DeepJudgement {
  return {
    depth: 'deep',
    verdict,
    decided: verdict !== 'too-close',
    loss,
    gift: null,
    played: 0,
    rival: 1,
    finalists: [finalist(outlook, NOTHING), finalist(outlook + loss.value, loss)],
    rivals: 1,
    mean: null,
    worlds: 128,
    smallLoss: 1,
    words: ['One sentence.'],
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
    expect(gradeOf({ loss: 2, judgement: quick }).level).toBe(3);
    expect(gradeOf({ loss: 2, judgement: judged('as-good', small) }).level).toBe(0);
  });
});

describe('figures', () => {
  it('carry their interval, a sign where one is wanted, and a real minus', () => {
    expect(measuredFigure({ value: 2.34, within: 0.66 }, true)).toBe('+2.3 ± 0.7');
    expect(measuredFigure({ value: -2.34, within: 0.66 }, false)).toBe('−2.3 ± 0.7');
    expect(measuredFigure({ value: -0.04, within: 0.2 }, true)).toBe('0.0 ± 0.2');
  });

  it('are read out for each row of the scale', () => {
    const row = finalist(27, { value: -1.5, within: 0.4 });
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
    const half = withJudgement(first, 0, judged('as-good', NOTHING, 21));
    expect(journeyOf(half).kind).toBe('toGo');
    const whole = withJudgement(half, 1, judged('as-good', NOTHING, 28));
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
    const half = withJudgement(first, 1, judged('too-close', NOTHING));
    const whole = withJudgement(half, 0, judged('too-close', NOTHING));
    expect([first, half, whole].map(deepProgress)).toEqual([null, { done: 1, all: 2 }, null]);
    expect(progressWords({ done: 1, all: 2 })).toContain('1 of 2 choices');
  });
});
