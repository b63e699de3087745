// What cost a class most: each theme on a choice made for it, and the order by cost.
import { describe, expect, test } from 'vitest';
import {
  type ChoiceReview,
  type ClassEntry,
  costliestMistakes,
  type DeepJudgement,
  type Group,
  type NumberReview,
  type PassReview,
  reviewRound,
  MISTAKE_CATEGORIES,
  type MistakeCategory,
  mistakesOf,
} from '../../shared-engine/index.ts';
import { classOf, deepJudgement } from '../kit/classes.ts';
import { described, drillOf } from '../kit/drills.ts';
import { houseKernel, move, passesOf, records, reviewOf } from '../kit/reviews.ts';

const basis = { closely: 24, arrivals: 36, smallLoss: 0.25 };
const pair: Group = { face: 'bam-3', count: 2 };
const other: Group = { face: 'east', count: 3 };

/** A real pass review, turned into one that cost a tile and in which nothing speaks for a theme. */
const [real] = passesOf(
  reviewOf(
    [
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
      'red',
      'flower',
    ],
    [move('first-right', ['crak-7', 'dot-8', 'north'], ['bam-2', 'dot-5', 'west'])],
  ),
);
const PLAIN: PassReview = {
  ...real!,
  loss: 1,
  played: { ...real!.played, gift: 'nothing-special' },
  best: { ...real!.best, gift: 'nothing-special' },
  parts: { ...real!.parts, formed: [], broken: [], brokenByBest: [], familiesKept: 2, familiesKeptByBest: 2 },
};
const pass = (parts: Partial<PassReview['parts']>, extra: Partial<PassReview> = {}): PassReview => ({
  ...PLAIN,
  ...extra,
  parts: { ...PLAIN.parts, ...parts },
});
const gave = (gift: PassReview['played']['gift'], best: typeof gift = 'nothing-special'): PassReview =>
  pass({}, { played: { ...PLAIN.played, gift }, best: { ...PLAIN.best, gift: best } });
const number = (kind: NumberReview['kind'], played: number, best: number): NumberReview => ({
  kind,
  step: kind === 'vote' ? 'vote' : kind === 'ask' ? 'courtesy-ask' : 'first-left',
  by: 'owner',
  toGo: 6,
  spare: 3,
  options: [],
  played,
  best,
  loss: 0.5,
  words: ['', ''],
  judgement: { depth: 'quick', verdict: 'not-looked-at' },
});

describe('a costly choice stands under', () => {
  test.each<[string, ChoiceReview, readonly MistakeCategory[]]>([
    ['a pair broken', pass({ broken: [pair] }), ['broken-multiple']],
    ['a new pair broken', pass({ broken: [pair], formed: [pair] }), ['new-multiple']],
    [
      'one of each broken',
      pass({ broken: [pair, other], formed: [other] }),
      ['new-multiple', 'broken-multiple'],
    ],
    ['a pair given', gave('pair'), ['pair-given']],
    ['like numbers given', gave('like-numbers'), ['like-numbers-given']],
    ['neighbours given', gave('neighbours'), ['neighbours-given']],
    ['a flower given', gave('flower'), ['flower-given']],
    ['too many families', pass({ familiesKept: 4 }), ['too-many-families']],
    ['too few families', pass({ familiesKept: 0 }), ['too-few-families']],
    ['nothing else', PLAIN, ['poorer-fit']],
    ['what the best pass did too', pass({ broken: [pair], brokenByBest: [pair] }), ['poorer-fit']],
    ['a gift the best pass gives too', gave('pair', 'pair'), ['poorer-fit']],
    ['too many unseen', number('blind', 3, 1), ['too-many-unseen']],
    ['too few unseen', number('blind', 0, 2), ['too-few-unseen']],
    ['gone on', number('vote', 1, 0), ['went-on']],
    ['stopped', number('vote', 0, 1), ['stopped']],
    ['too many asked for', number('ask', 3, 0), ['asked-too-many']],
    ['too few asked for', number('ask', 0, 3), ['asked-too-few']],
  ])('%s', (_, choice, themes) => {
    expect(mistakesOf(choice, basis)).toEqual(themes);
    expect(mistakesOf({ ...choice, loss: 0.249 }, basis)).toEqual([]);
  });

  test('every theme has words of its own and is met above', () => {
    expect(new Set(Object.values(MISTAKE_CATEGORIES)).size).toBe(Object.keys(MISTAKE_CATEGORIES).length);
    expect(Object.values(MISTAKE_CATEGORIES).every((words) => /^[A-Z][a-z ]+$/.test(words))).toBe(true);
  });
});

describe('once the deeper judgement is there', () => {
  const deep = (choice: ChoiceReview, verdict: DeepJudgement['verdict']): ChoiceReview => ({
    ...choice,
    judgement: deepJudgement(verdict),
  });

  test('it decides which choices have themes', () => {
    const broken = pass({ broken: [pair] }, { loss: 0 });
    expect(mistakesOf(broken, basis)).toEqual([]);
    expect(mistakesOf(deep(broken, 'better-exists'), basis)).toEqual(['broken-multiple']);
    for (const verdict of ['as-good', 'too-close'] as const) {
      expect(mistakesOf(deep(pass({ broken: [pair] }), verdict), basis)).toEqual([]);
    }
  });

  test('the order of the themes is by points of outlook, as soon as all have them', () => {
    const review = (choices: readonly ChoiceReview[]): ClassEntry => {
      const [first] = records('themes in points', 1);
      return { record: first!, review: { ...reviewRound(first!, houseKernel), choices }, aims: [] };
    };
    const often = [gave('flower'), gave('flower')].map((choice) => ({ ...choice, loss: 0.3 }));
    const once = { ...gave('pair'), loss: 0.9 };
    const order = (choices: readonly ChoiceReview[]) =>
      costliestMistakes([review(choices)]).map(({ category, totalPoints }) => [category, totalPoints]);
    expect(order([once, ...often])).toEqual([
      ['pair-given', null],
      ['flower-given', null],
    ]);
    expect(order([once, ...often].map((choice) => deep(choice, 'better-exists')))).toEqual([
      ['flower-given', 4],
      ['pair-given', 2],
    ]);
    expect(order([once, ...often.map((choice) => deep(choice, 'better-exists'))])).toEqual([
      ['pair-given', null],
      ['flower-given', 4],
    ]);
  });
});

describe('over a class', () => {
  const styles = ['random', 'random', 'random', 'casual', 'casual', 'strong'] as const;
  const pupils = classOf(drillOf([described({ pairs: { from: 2 } }, 'themes')]), styles);
  const costs = costliestMistakes(pupils);

  test('the costliest theme comes first, with choices, pupils and the losses of the reviews', () => {
    expect(costs.length).toBeGreaterThan(3);
    expect(costs.map(({ total }) => total)).toEqual(costs.map(({ total }) => total).sort((a, b) => b - a));
    for (const { category, label, choices, players: count, total, loss } of costs) {
      const mine = pupils.map(({ review }) =>
        review!.choices.filter((choice) => choice.by === 'owner' && mistakesOf(choice, basis).includes(category)),
      );
      expect(label).toBe(MISTAKE_CATEGORIES[category]);
      expect(choices).toBe(mine.flat().length);
      expect(count).toBe(mine.filter((one) => one.length > 0).length);
      expect(total).toBeCloseTo(
        mine.flat().reduce((sum, choice) => sum + choice.loss, 0),
        9,
      );
      expect(Math.abs(loss.mean - total / choices)).toBeLessThan(0.001);
    }
  });

  test('what a stand-in chose is no misunderstanding of the class', () => {
    const standIn = pupils.map((entry): ClassEntry => {
      const steps = entry.record.steps.map((step) =>
        step.kind === 'move' ? { ...step, by: ['stand-in', 'bot', 'bot', 'bot'] as const } : step,
      );
      const record = { ...entry.record, steps: steps.slice(0, 3) };
      return { ...entry, record, review: reviewRound(record, houseKernel) };
    });
    expect(costliestMistakes(standIn)).toEqual([]);
  });

  test('a class without reviews has no themes', () => {
    expect(costliestMistakes(pupils.map((entry) => ({ ...entry, review: null })))).toEqual([]);
  });
});
