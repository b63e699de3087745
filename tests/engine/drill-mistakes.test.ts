// The kinds of mistake that cost a class most: each one on a choice made for it, and their order by cost.
import { describe, expect, test } from 'vitest';
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import {
  MISTAKE_CATEGORIES,
  type MistakeCategory,
} from '../../shared-engine/analysis/review/mistake-categories.ts';
import { mistakesOf } from '../../shared-engine/analysis/review/mistakes.ts';
import type {
  ChoiceReview,
  NumberReview,
  PassReview,
  RackGroup,
} from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import type { ChoiceWhy } from '../../shared-engine/analysis/why/choice-why.ts';
import type { ClassEntry } from '../../shared-engine/drill/report/entry.ts';
import { costliestMistakes } from '../../shared-engine/drill/report/mistake-costs.ts';
import { storedChoices } from '../../shared-engine/practice/stored-round.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { classOf, entryOf, sampleDeepAnalysis } from '../kit/classes.ts';
import { drillOf, sampledDeal } from '../kit/drills.ts';
import { houseKernel, move, passesOf, records, reviewOf } from '../kit/reviews.ts';

const pair: RackGroup = { face: 'bam-3', count: 2 };
const other: RackGroup = { face: 'east', count: 3 };

/** A real review of a pass, changed into one that cost a tile and fits no kind of mistake in particular. */
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
  played: { ...real!.played, risk: 'none' },
  best: { ...real!.best, risk: 'none' },
  parts: { ...real!.parts, formed: [], broken: [], brokenByBest: [], sectionsKept: 2, sectionsKeptByBest: 2 },
};
const pass = (parts: Partial<PassReview['parts']>, extra: Partial<PassReview> = {}): PassReview => ({
  ...PLAIN,
  ...extra,
  parts: { ...PLAIN.parts, ...parts },
});
const gave = (risk: PassReview['played']['risk'], best: typeof risk = 'none'): PassReview =>
  pass({}, { played: { ...PLAIN.played, risk }, best: { ...PLAIN.best, risk: best } });
const number = (kind: NumberReview['kind'], played: number, best: number): NumberReview => ({
  kind,
  step: kind === 'vote' ? 'vote' : kind === 'ask' ? 'courtesy-ask' : 'first-left',
  by: 'player',
  toGo: 6,
  spare: 3,
  options: [],
  played,
  best,
  anotherStopped: false,
  askedAcross: null,
  loss: 1,
  analysis: { depth: 'quick', verdict: 'pending' },
});

describe('a costly choice counts as', () => {
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
    ['three tiles of one suit given', gave('same-suit'), ['same-suit-given']],
    ['a flower given', gave('flower'), ['flower-given']],
    ['sections let go too soon', pass({ sectionsKept: 0 }), ['committed-too-soon']],
    ['sections kept early', pass({ sectionsKept: 4 }), ['poorer-fit']],
    [
      'sections kept for too long',
      pass({ sectionsKept: 4 }, { step: 'second-across' }),
      ['committed-too-late'],
    ],
    ['sections let go late', pass({ sectionsKept: 0 }, { step: 'second-right' }), ['poorer-fit']],
    ['nothing else', PLAIN, ['poorer-fit']],
    [
      'what the best pass did too',
      pass(
        { groups: [pair], broken: [pair] },
        { best: { ...PLAIN.best, tiles: ['bam-3', 'dot-5', 'west'], risk: 'none' } },
      ),
      ['poorer-fit'],
    ],
    ['a gift the best pass gives too', gave('pair', 'pair'), ['poorer-fit']],
    ['too many blind', number('blind', 3, 1), ['too-many-blind']],
    ['too few blind', number('blind', 0, 2), ['too-few-blind']],
    ['continued', number('vote', 1, 0), ['continued']],
    ['stopped', number('vote', 0, 1), ['stopped']],
    ['too many asked for', number('ask', 3, 0), ['asked-too-many']],
    ['too few asked for', number('ask', 0, 3), ['asked-too-few']],
  ])('%s', (_, choice, themes) => {
    expect(mistakesOf(choice)).toEqual(themes);
    expect(mistakesOf({ ...choice, loss: 0.499 })).toEqual([]);
  });

  test('every kind of mistake has a label of its own and is met in the cases above', () => {
    expect(new Set(Object.values(MISTAKE_CATEGORIES)).size).toBe(Object.keys(MISTAKE_CATEGORIES).length);
    expect(Object.values(MISTAKE_CATEGORIES).every((words) => /^[A-Z][a-z ]+$/.test(words))).toBe(true);
  });
});

/** Reasons in which nothing stands out. */
const NO_REASON: ChoiceWhy = {
  deals: 64,
  reason: null,
  keep: [],
  pass: [],
  sections: {},
  sectionsKept: { played: 2, named: 2 },
  toGo: { played: 4, named: 4 },
  lacking: { played: 2, named: 2 },
  gone: { played: 1, named: 1 },
  farther: null,
  idleJokers: { played: 0.2, named: 0.2 },
  toGoKept: { played: 4, named: 4 },
  handsNear: { played: 3, named: 3 },
  points: { played: 8, named: 8 },
  concealed: { played: 0.2, named: 0.2 },
};

describe('after the deep analysis', () => {
  const deep = (
    choice: ChoiceReview,
    verdict: DeepAnalysis['verdict'],
    why: Partial<ChoiceWhy> = {},
  ): ChoiceReview => ({
    ...choice,
    analysis: { ...sampleDeepAnalysis(verdict), why: { ...NO_REASON, ...why } },
  });
  const because = (keep: Face, given: Face): Partial<ChoiceWhy> => ({
    reason: { keep, pass: given, share: 0.8 },
  });

  test('the deep analysis decides which choices were mistakes, and a tile is blamed only where it made most of the loss', () => {
    const broken = pass({ groups: [pair], broken: [pair] }, { loss: 0 });
    expect(mistakesOf(broken)).toEqual([]);
    expect(mistakesOf(deep(broken, 'costly', because('bam-3', 'west')))).toEqual(['broken-multiple']);
    expect(mistakesOf(deep(broken, 'costly'))).toEqual(['poorer-fit']);
    expect(mistakesOf(deep(broken, 'costly', because('dot-9', 'bam-1')))).toEqual(['poorer-fit']);
    for (const verdict of ['just-as-good', 'a-little-worse', 'cant-say'] as const) {
      expect(mistakesOf(deep(broken, verdict, because('bam-3', 'west')))).toEqual([]);
    }
  });

  test.each<[string, Partial<ChoiceWhy>, Partial<PassReview>, readonly MistakeCategory[]]>([
    ['a flower that was of own use', because('flower', 'dot-9'), {}, ['flower-given']],
    ['a lone wind kept', because('dot-9', 'west'), { rack: ['west', 'dot-9'] }, ['lone-honor-kept']],
    ['a pair of winds kept', because('dot-9', 'west'), { rack: ['west', 'west'] }, ['poorer-fit']],
    ['sections let go early', { sectionsKept: { played: 1, named: 3 } }, {}, ['committed-too-soon']],
    [
      'sections kept late',
      { sectionsKept: { played: 3, named: 1 } },
      { step: 'courtesy-pass' },
      ['committed-too-late'],
    ],
    ['pairs', { lacking: { played: 2.6, named: 2.1 } }, {}, ['pairs-chased']],
    ['tiles that are gone', { gone: { played: 1.5, named: 1.1 } }, {}, ['tiles-gone']],
    ['jokers for pairs', { idleJokers: { played: 0.9, named: 0.5 } }, {}, ['jokers-for-pairs']],
    ['a concealed hand', { concealed: { played: 0.8, named: 0.5 } }, {}, ['concealed-chased']],
    [
      'several',
      { lacking: { played: 3, named: 2 }, concealed: { played: 1, named: 0 } },
      {},
      ['pairs-chased', 'concealed-chased'],
    ],
  ])('the reasons of a pass are kinds of mistake: %s', (_, why, extra, categories) => {
    expect(mistakesOf(deep(pass({}, extra), 'costly', why))).toEqual(categories);
  });

  test('the aim said before a pass is left where a better pass would have kept it', () => {
    const lost = pass({}, { sectionsInReach: ['stairs', 'garden'], sectionsInReachAfter: ['garden'] });
    const kept = { ...lost, sectionsInReachAfterBest: ['stairs', 'garden'] };
    expect(mistakesOf(kept, ['stairs'])).toEqual(['aim-left']);
    expect(mistakesOf(kept, ['garden'])).toEqual(['poorer-fit']);
    expect(mistakesOf({ ...kept, sectionsInReachAfterBest: ['garden'] }, ['stairs'])).toEqual(['poorer-fit']);
    const ends = (named: number) => deep(lost, 'costly', { sections: { stairs: { played: 0.3, named } } });
    expect(mistakesOf(ends(0.5), ['garden', 'stairs'])).toEqual(['aim-left']);
    expect(mistakesOf(ends(0.3), ['stairs'])).toEqual(['poorer-fit']);
    // The class report and the stored round know what was said.
    const [record] = records('aims', 1);
    const review = { ...reviewRound(record!, houseKernel), choices: [kept] };
    const left = { ...review, choices: [ends(0.5)] };
    const of = (section: string) =>
      costliestMistakes([
        { ...entryOf(record!, left), aims: [{ step: kept.step, sections: [section] }] },
      ]).map(({ category }) => category);
    expect([of('stairs'), of('garden')]).toEqual([['aim-left'], ['poorer-fit']]);
    const [stored] = storedChoices(left, { [kept.step]: ['stairs'] });
    expect(stored!.mistakes).toEqual(['aim-left']);
  });

  test('a gift is blamed where most of the loss went through the neighbor', () => {
    const analysis = { ...sampleDeepAnalysis('costly'), why: NO_REASON };
    const through = (value: number): ChoiceReview => ({
      ...gave('pair'),
      analysis: {
        ...analysis,
        finalists: analysis.finalists.map((one, place) => ({
          ...one,
          giveaway: { value: place === 0 ? value : 0.2, halfWidth: 0.1 },
        })),
      },
    });
    expect(mistakesOf(through(1.2))).toEqual(['pair-given', 'neighbor-fed']);
    expect(mistakesOf(through(1.1))).toEqual(['poorer-fit']);
  });

  test.each<[NumberReview, number, MistakeCategory]>([
    [number('vote', 1, 1), 0, 'continued'],
    [number('vote', 0, 0), 1, 'stopped'],
    [number('blind', 2, 3), 1, 'too-many-blind'],
    [number('ask', 1, 0), 2, 'asked-too-few'],
  ])('a number is compared with the one that the deep analysis names: %#', (choice, better, category) => {
    const analysis = sampleDeepAnalysis('costly');
    const finalists = analysis.finalists.map((one, place) => ({
      ...one,
      tiles: [],
      number: place === 0 ? choice.played : better,
    }));
    expect(mistakesOf({ ...choice, analysis: { ...analysis, finalists } })).toEqual([category]);
  });

  test('a pass is compared with the one that the deep analysis names', () => {
    const analysis = { ...sampleDeepAnalysis('costly'), why: { ...NO_REASON, ...because('bam-3', 'west') } };
    const parts = { groups: [pair], broken: [pair], brokenByBest: [pair], sectionsKeptByBest: 0 };
    const against = (tiles: PassReview['best']['tiles']) => {
      const finalists = analysis.finalists.map((one, place) => (place === 1 ? { ...one, tiles } : one));
      return mistakesOf(pass(parts, { analysis: { ...analysis, finalists } }));
    };
    expect(against(['bam-1', 'dot-5', 'west'])).toEqual(['broken-multiple']);
    expect(against(['bam-3', 'dot-5', 'west'])).toEqual(['poorer-fit']);
  });

  test('the kinds of mistake are in the order of wins lost, of choices that have been analyzed', () => {
    const [first] = records('themes in points', 1);
    const whole = reviewRound(first!, houseKernel);
    const own = whole.choices.filter(({ kind, by }) => kind === 'pass' && by === 'player').slice(0, 2);
    const ask = { ...number('ask', 0, 3), loss: 2 };
    const at = (choice: ChoiceReview, step: ChoiceReview['step']) => ({ ...choice, step }) as ChoiceReview;
    const played = (choice: ChoiceReview) => deep(choice, 'costly', because('flower', 'west'));
    const often = own.map((choice) => at(gave('flower'), choice.step));
    const order = (choices: readonly ChoiceReview[]) =>
      costliestMistakes([entryOf(first!, { ...whole, choices })]).map(({ category, totalWinsLost }) => [
        category,
        totalWinsLost,
      ]);
    expect(order(often)).toEqual([]);
    expect(order([played(ask), ...often.map(played)])).toEqual([
      ['flower-given', 4],
      ...(whole.choices.some(({ kind, by }) => kind === 'ask' && by === 'player')
        ? [['asked-too-few', 2]]
        : []),
    ]);
  });
});

describe('the mistakes of a class', () => {
  const styles = ['random', 'random', 'random', 'casual', 'casual', 'strong'] as const;
  const players = classOf(drillOf([sampledDeal({ pairs: { from: 2 } }, 'themes')]), styles);
  const costs = costliestMistakes(players);

  test('the costliest kind comes first, with its choices, its players and the losses of their analyses', () => {
    expect(costs.length).toBeGreaterThan(2);
    const totals = costs.map(({ totalWinsLost }) => totalWinsLost);
    expect(totals).toEqual([...totals].sort((a, b) => b - a));
    for (const { category, label, choices, players: count, totalWinsLost } of costs) {
      const mine = players.map(({ review }) =>
        review.choices.filter((choice) => choice.by === 'player' && mistakesOf(choice).includes(category)),
      );
      expect(label).toBe(MISTAKE_CATEGORIES[category]);
      expect(choices).toBe(mine.flat().length);
      expect(count).toBe(mine.filter((one) => one.length > 0).length);
      expect(totalWinsLost).toBeCloseTo(
        mine.flat().reduce((sum, choice) => sum + choice.loss * 4, 0),
        2,
      );
    }
  });

  test('a choice of a stand-in is not counted as a mistake of the class', () => {
    const standIn = players.map((entry): ClassEntry => {
      const steps = entry.record.steps.map((step) =>
        step.kind === 'move' ? { ...step, by: ['stand-in', 'bot', 'bot', 'bot'] as const } : step,
      );
      const record = { ...entry.record, steps: steps.slice(0, 3) };
      return { ...entry, record };
    });
    expect(costliestMistakes(standIn)).toEqual([]);
  });

  test('a class without analyses has no mistakes', () => {
    expect(costliestMistakes(players.map((entry) => ({ ...entry, analyses: null })))).toEqual([]);
  });
});
