// Records written by hand in which the better choice is obvious to a player, and what the review says of them.
import { describe, expect, test } from 'vitest';
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import { withDeepAnalysis } from '../../shared-engine/analysis/review/deep-analysis.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { move, passesOf, reviewOf, toldOf } from '../kit/reviews.ts';

/** Three multiples that belong together on the house card, and four strays. */
const TOGETHER: readonly Face[] = [
  ...(['bam-3', 'bam-3', 'bam-3', 'bam-4', 'bam-4', 'bam-4', 'bam-7', 'bam-7'] as const),
  ...(['crak-1', 'dot-8', 'north', 'red', 'joker'] as const),
];
const STRAYS: readonly Face[] = ['crak-1', 'dot-8', 'north'];
const PUNG: readonly Face[] = ['bam-3', 'bam-3', 'bam-3'];
const ARRIVED: readonly Face[] = ['dot-2', 'dot-5', 'crak-7'];

const headlineOf = ({ story }: Review): string => story.headline.join(' ');

const go: SeatRecord['steps'][number] = {
  kind: 'vote',
  go: [true, true, true, true],
  by: ['player', 'bot', 'bot', 'bot'],
};

describe('a pung given up while strays were at hand', () => {
  const review = reviewOf(TOGETHER, [move('first-right', PUNG, ARRIVED)]);
  const [pass] = passesOf(review);

  test('costs more than a tile, and the better pass is made of strays', () => {
    expect(pass!.loss).toBeGreaterThan(1);
    for (const face of pass!.best.tiles) expect([...STRAYS, 'red']).toContain(face);
    expect(pass!.best.toGo).toBeLessThan(pass!.played.toGo);
    expect(pass!.parts).toMatchObject({
      broken: [{ face: 'bam-3', count: 3 }],
      brokenByBest: [],
      groupCount: 3,
      groupsKept: 2,
      groupsKeptByBest: 3,
    });
  });

  test('is told of the pass and in the headline', () => {
    expect(toldOf(review)).toContain('Your pung of 3 bam then stays together.');
    expect(headlineOf(review)).toContain('the first pass to the right');
    expect(headlineOf(review)).toContain('Your pung of 3 bam then stays together.');
  });
});

describe('three strays given', () => {
  const review = reviewOf(TOGETHER, [move('first-right', STRAYS, ARRIVED)]);

  test('cost nothing worth telling, and the praise names what was kept', () => {
    const [pass] = passesOf(review);
    expect(pass!.loss).toBeLessThan(review.basis.smallLoss);
    expect(pass!.parts.broken).toEqual([]);
    expect(toldOf(review)).toContain('You kept all 3 of your pairs and pungs together.');
    expect(headlineOf(review)).toMatch(/^At first look, each of your choices/);
    expect(headlineOf(review)).toContain(
      'You kept the pung of 3 bam, the pung of 4 bam and the pair of 7 bam together.',
    );
  });
});

describe('a group that has just been made', () => {
  const rest = (['bam-4', 'bam-4', 'bam-4', 'bam-7', 'bam-7', 'bam-3'] as const).concat();
  const start: readonly Face[] = [...rest, 'crak-1', 'dot-8', 'north', 'red', 'dot-6', 'crak-9', 'joker'];
  const formedPair = move('first-right', STRAYS, ['bam-3', 'south', 'white']);

  test('is named when it is broken up again', () => {
    const review = reviewOf(start, [formedPair, move('first-across', ['bam-3', 'bam-3', 'red'], ARRIVED)]);
    const pass = passesOf(review)[1]!;
    expect(pass.parts.formed).toEqual([{ face: 'bam-3', count: 2 }]);
    expect(toldOf(review, 1)).toContain(
      'You gave away a new pair of 3 bam: look at the whole rack again before each pass.',
    );
  });

  test('is not claimed for a group that was there before', () => {
    const review = reviewOf(start, [formedPair]);
    expect(passesOf(review)[0]!.parts.formed).toEqual([]);
  });
});

describe('who chose', () => {
  const seat = (by: 'stand-in' | 'bot') => reviewOf(TOGETHER, [move('first-right', PUNG, ARRIVED, { by })]);

  test('K2 what the stand-in gave is said to be its choice and not the player’s', () => {
    const review = seat('stand-in');
    const [pass] = passesOf(review);
    expect(pass!.by).toBe('stand-in');
    expect(toldOf(review)).toContain('Your stand-in passed a pung of 3 bam');
    expect(toldOf(review)).not.toMatch(/\byou\b/i);
    expect(headlineOf(review)).toContain(
      'to the right. Your stand-in passed a pung of 3 bam to the right. Better: ',
    );
  });

  test('what a bot gave is said to be its choice', () => {
    const told = toldOf(seat('bot'));
    expect(told).toContain('The bot passed a pung of 3 bam');
    expect(told).not.toMatch(/\byour?\b/i);
  });

  test('K2 the lesson is about a choice of the player wherever there is one', () => {
    const review = reviewOf(TOGETHER, [
      move('first-right', STRAYS, ['bam-7', 'dot-5', 'crak-7']),
      move('first-across', PUNG, ARRIVED, { by: 'stand-in' }),
    ]);
    expect(passesOf(review)[1]!.loss).toBeGreaterThan(1);
    expect(headlineOf(review)).toMatch(/^At first look, each of your choices/);
    expect(headlineOf(review)).not.toContain('stand-in');
  });

  test('Y1 a courtesy pass in which the seat gave nothing is no choice', () => {
    const nothing = { ...move('courtesy-pass', [], []), by: [null, 'bot', null, 'bot'] as const };
    const review = reviewOf(TOGETHER, [nothing]);
    expect(review.choices).toEqual([]);
    expect(headlineOf(review)).toBe('There was no choice to look back on yet.');
  });

  test('Y2 a courtesy pass is compared with passes of as many tiles', () => {
    const review = reviewOf(TOGETHER, [move('courtesy-pass', ['red'], ['dot-2'])]);
    const [pass] = passesOf(review);
    expect(pass!.legal).toBe(7);
    for (const { tiles } of pass!.alternatives) expect(tiles).toHaveLength(1);
    expect(reviewOf(TOGETHER, [go]).choices).toHaveLength(1);
  });
});

describe('the headline while choices are played on', () => {
  const steps = [
    move('first-right', STRAYS, ['dot-2', 'dot-5', 'crak-7']),
    move('first-across', ['dot-2', 'dot-5', 'red'], ['crak-2', 'crak-8', 'east']),
  ];
  const review = reviewOf(TOGETHER, steps);
  const losing = (verdict: DeepAnalysis['verdict'], value: number): DeepAnalysis => ({
    ...sampleDeepAnalysis(verdict),
    loss: { value, halfWidth: 0.9 },
  });
  const lessonAfter = (...analyses: readonly (DeepAnalysis | null)[]) =>
    headlineOf(
      analyses.reduce(
        (now, analysis, nth) => (analysis === null ? now : withDeepAnalysis(now, nth, analysis)),
        review,
      ),
    );

  test('is about a costly choice before one that is a little worse by a larger loss', () => {
    expect(lessonAfter(losing('a-little-worse', 2.53), losing('costly', 2.03))).toContain(
      'the first pass across',
    );
    expect(lessonAfter(losing('costly', 1.5), losing('costly', 2.03))).toContain('the first pass across');
  });

  test('is about a vote that made no difference only where nothing else is told, and says so', () => {
    const stopped = { ...go, go: [true, true, false, true] } as const;
    const votes = (vote: SeatRecord['steps'][number], other: DeepAnalysis['verdict']) => {
      const review = reviewOf(TOGETHER, [steps[0]!, vote]);
      return withDeepAnalysis(withDeepAnalysis(review, 0, losing(other, 0.5)), 1, {
        ...losing('costly', 5),
        finalists: losing('costly', 5).finalists.map((one, place) => ({
          ...one,
          tiles: [],
          number: 1 - place,
        })),
      });
    };
    expect(headlineOf(votes(go, 'a-little-worse'))).toContain('the vote on a second Charleston');
    expect(headlineOf(votes(stopped, 'a-little-worse'))).toContain('the first pass to the right');
    const only = votes(stopped, 'best');
    expect(headlineOf(only)).toMatch(
      /^We found something better only for the vote on a second Charleston, and here it made no difference\. .* Better: stop\./,
    );
    expect(toldOf(only, 1)).toContain(
      'It made no difference here: not all the others voted to continue. Nobody could know that, so the verdict stands.',
    );
    expect(toldOf(votes(go, 'best'), 1)).not.toContain('made no difference');
    const both = votes({ ...go, go: [false, true, false, true] }, 'best');
    expect(toldOf(both, 1)).toContain('It made no difference here: not all the others voted to continue.');
  });

  test('is about a loss that lasts whoever the others are before a slightly larger one that does not', () => {
    const among = (value: number, casual: number): DeepAnalysis => {
      const losses = { casual, typical: value, strong: value };
      const verdicts = {
        casual: casual > 0 ? 'costly' : 'best',
        typical: 'costly',
        strong: 'costly',
      } as const;
      return { ...losing('costly', value), robustness: { verdicts, losses, turns: [] } };
    };
    expect(lessonAfter(among(3.1, 0), among(2.9, 2.4))).toContain('the first pass across');
    expect(lessonAfter(among(9, 3), among(2.9, 2.4))).toContain('the first pass to the right');
    expect(lessonAfter(among(3.1, 0), among(2.9, 0))).toContain('the first pass to the right');
  });

  test('praises nothing beside a choice already shown to be worse, and says so while it is looking', () => {
    expect(headlineOf(review)).toMatch(/^At first look, each of your choices/);
    for (const [verdict, words] of [
      ['costly', 'the one thing to take from this deal is'],
      ['a-little-worse', 'nothing was clearly costly; the surest gain was in'],
    ] as const) {
      expect(lessonAfter(losing(verdict, 2))).toContain(`So far, ${words} the first pass to the right.`);
      expect(lessonAfter(null, losing(verdict, 2))).toContain(`So far, ${words} the first pass across.`);
    }
    expect(lessonAfter(losing('best', 0))).toMatch(/^So far, .* not played on every choice yet/);
    expect(lessonAfter(losing('best', 0), losing('best', 0))).toMatch(/^Well played/);
    const unsure = losing('cant-say', 1);
    expect(lessonAfter(losing('best', 0), unsure)).toBe(
      'We found nothing that was clearly better. For one choice we can’t say whether another was better: the first pass across.',
    );
    expect(lessonAfter(unsure, unsure)).toBe(
      'We found nothing that was clearly better. For 2 choices we can’t say whether another was better.',
    );
  });

  test('leaves a quick loss out once a choice has been played on: tiles and wins are not compared', () => {
    const costly = reviewOf(TOGETHER, [move('first-right', PUNG, ARRIVED), ...steps.slice(1)]);
    expect(headlineOf(costly)).toContain('the first pass to the right');
    // The quick answer stays beside its choice, so the top speaks only of what has been played on.
    expect(headlineOf(withDeepAnalysis(costly, 1, losing('best', 0)))).toMatch(
      /^So far, nothing that we have played on was clearly worse\. .* another one still looks worse\.$/,
    );
  });
});
