// Which choice the headline speaks of, as a reader of the losses told expects, and what it says of a larger one.
import { describe, expect, test } from 'vitest';
import type { Robustness } from '../../shared-engine/analysis/comparison/robustness.ts';
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import type { ChoiceReview, NumberReview } from '../../shared-engine/analysis/review/review.ts';
import { headlineOf } from '../../shared-engine/analysis/review/sentences/headline.ts';
import { othersBeside } from '../../shared-engine/analysis/review/sentences/neighbors.ts';
import { numberFacts } from '../../shared-engine/analysis/review/sentences/number.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { analysisWith } from '../kit/made-up-analyses.ts';
import { move, passesOf, reviewOf } from '../kit/reviews.ts';

const START: readonly Face[] = [
  ...(['bam-1', 'bam-1', 'bam-5', 'crak-2', 'crak-7', 'crak-9', 'dot-3'] as const),
  ...(['dot-4', 'dot-8', 'east', 'north', 'north', 'flower'] as const),
];
const vote = (go: readonly [boolean, boolean, boolean, boolean]) =>
  ({ kind: 'vote', go, by: ['player', 'bot', 'bot', 'bot'] }) as const;
const choicesWith = (go: readonly [boolean, boolean, boolean, boolean]): readonly ChoiceReview[] =>
  reviewOf(START, [
    move('first-right', ['crak-7', 'dot-8', 'east'], ['bam-2', 'dot-5', 'west']),
    move('first-across', ['bam-2', 'dot-5', 'west'], ['crak-4', 'dot-7', 'red']),
    vote(go),
  ]).choices;
const CHOICES = choicesWith([true, true, true, true]);
const STOPPED = choicesWith([true, true, false, true]);

/** By so many thousandths of a win the best alternative is better, give or take. */
type Loss = readonly [value: number, halfWidth: number];
const [NONE, COSTLY_4, COSTLY_7, LITTLE_5]: readonly Loss[] = [
  [-1_000, 500],
  [4_000, 900],
  [7_000, 900],
  [5_200, 4_500],
] as const;

function headline(
  choices: readonly ChoiceReview[],
  losses: readonly Loss[],
  among: readonly (Robustness['verdicts'] | null)[] = [],
): string {
  const deep = choices.map((choice, nth): ChoiceReview => {
    const analysis = analysisWith(choice, [losses[nth]!]);
    return { ...choice, analysis: { ...analysis, robustness: robust(among[nth] ?? null) } };
  });
  return headlineOf(deep, {}).join(' ');
}

function robust(verdicts: Robustness['verdicts'] | null): Robustness | undefined {
  return verdicts === null
    ? undefined
    : { verdicts, losses: { casual: 0, typical: 0, strong: 0 }, turns: [] };
}

const EVERYWHERE = { casual: 'a-little-worse', typical: 'costly', strong: 'costly' } as const;
const STRONG_ONLY = { casual: 'best', typical: 'cant-say', strong: 'costly' } as const;

describe('the headline', () => {
  test('speaks of the largest loss of those that are costly whoever the others are', () => {
    const both = [EVERYWHERE, EVERYWHERE];
    const told = headline(CHOICES, [COSTLY_4!, COSTLY_7!, NONE!], both);
    expect(told).toContain('The one thing to take from this deal is the first pass across.');
    expect(told).not.toMatch(/cost more|depends/);
    expect(headline(CHOICES, [COSTLY_7!, COSTLY_4!, NONE!], both)).toContain(
      'is the first pass to the right.',
    );
  });

  test('says why a larger loss is not the one it speaks of', () => {
    expect(headline(CHOICES, [COSTLY_4!, COSTLY_7!, NONE!], [EVERYWHERE, STRONG_ONLY])).toMatch(
      /is the first pass to the right\. .* The first pass across probably cost more, about 7 wins, but only among strong players was something surely better\.$/,
    );
    expect(headline(CHOICES, [COSTLY_4!, LITTLE_5!, NONE!])).toMatch(
      /The first pass across probably cost more, about 5 wins, but that is less sure\.$/,
    );
    expect(headline(STOPPED, [COSTLY_4!, NONE!, COSTLY_7!])).toMatch(
      /The vote on a second Charleston could have cost more, about 7 wins, but here it made no difference\.$/,
    );
    // What reads as the same number is not larger.
    expect(headline(STOPPED, [COSTLY_4!, NONE!, [4_400, 900]])).not.toContain('cost more');
  });

  test('names at most three groups that were kept, and never three of four', () => {
    const [pass] = passesOf(
      reviewOf(START, [move('first-right', ['crak-7', 'dot-8', 'east'], ['bam-2', 'dot-5', 'west'])]),
    );
    const kept = (...faces: readonly Face[]) => {
      const groups = faces.map((face) => ({ face, count: 2 }));
      const parts = {
        ...pass!.parts,
        groups,
        groupCount: faces.length,
        groupsKept: faces.length,
        broken: [],
      };
      return headline([{ ...pass!, parts }], [NONE!]);
    };
    expect(kept('bam-1', 'north')).toMatch(
      / You kept the pair of 1 bam and the pair of north winds together\.$/,
    );
    expect(kept('bam-1', 'bam-2', 'bam-3', 'north')).toMatch(/ You kept all 4 of your pairs together\.$/);
  });

  test('says of how many choices nothing is known where nothing is costly, and not beside what is', () => {
    const little: Loss = [700, 420];
    const unsure: Loss = [300, 1_500];
    const rest = 'For one choice we can’t say whether another was better: the first pass across.';
    expect(headline(CHOICES, [little, unsure, NONE!])).toMatch(new RegExp(` ${rest}$`));
    expect(headline(CHOICES, [COSTLY_4!, unsure, NONE!])).not.toContain('can’t say');
    expect(headline(CHOICES, [little, NONE!, NONE!])).not.toContain('can’t say');
  });

  test('says among whom its verdict is sure where it is not so whoever the others are', () => {
    const depends = 'This depends on the others: only among';
    expect(headline(CHOICES, [COSTLY_4!, NONE!, NONE!], [STRONG_ONLY])).toContain(
      `That brings about 4 more wins in 100 games. ${depends} strong players is it surely better.`,
    );
    const two = { casual: 'costly', typical: 'just-as-good', strong: 'a-little-worse' } as const;
    expect(headline(CHOICES, [COSTLY_4!, NONE!, NONE!], [two])).toContain(
      `${depends} easy-going and strong players is it surely better.`,
    );
  });
});

describe('beside praise', () => {
  const isNumber = (choice: ChoiceReview): choice is NumberReview => choice.kind === 'vote';
  const voted = CHOICES.find(isNumber)!;
  const judged = (verdict: DeepAnalysis['verdict'], others: number) => {
    const analysis = { ...sampleDeepAnalysis(verdict), others: { value: others, halfWidth: 0.3 } };
    return othersBeside({ ...voted, analysis }, analysis);
  };

  test('nothing is said that speaks for the other vote', () => {
    expect(judged('best', -1.4)).toEqual([]);
    expect(judged('just-as-good', -1.4)).toEqual([]);
    expect(judged('best', 4)).toEqual([
      expect.stringMatching(/ would give the other three about 4 wins in 100 games between them\.$/),
    ]);
    expect(judged('cant-say', -1.4)).toHaveLength(1);
  });

  test('a rule of thumb that was broken is told where we can’t say as well', () => {
    const analysis = sampleDeepAnalysis('cant-say');
    const blind = { ...voted, kind: 'blind', step: 'first-left', spare: 8, played: 1, analysis } as const;
    const rule = 'With 3 passers or more the rule of thumb is to pass nothing blind';
    expect(numberFacts(blind).at(-1)).toBe(`${rule}; we can’t say whether that was better here.`);
    expect(numberFacts({ ...blind, played: 0 }).at(-1)).toBe(`${rule}, as you did.`);
  });
});
