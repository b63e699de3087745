// What a review says of a pass beside another one: what changes, what goes blind all the same, what is told a second time.
import { describe, expect, test } from 'vitest';
import { touchedBy } from '../../shared-engine/analysis/review/groups.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { deepVerdict } from '../../shared-engine/analysis/review/sentences/deep-verdict.ts';
import { headlineOf } from '../../shared-engine/analysis/review/sentences/headline.ts';
import { insteadPhrase } from '../../shared-engine/analysis/review/sentences/instead.ts';
import {
  passFacts,
  passReasons,
  returnedSentence,
} from '../../shared-engine/analysis/review/sentences/pass.ts';
import { toGoBySection } from '../../shared-engine/kernels/tiles-to-go/by-section.ts';
import { riskGrade } from '../../shared-engine/policy/pass-risk.ts';
import { bagOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { analysisWith, askedAmong } from '../kit/made-up-analyses.ts';
import { houseKernel, move, passesOf, records, reviewOf } from '../kit/reviews.ts';

const START: readonly Face[] = [
  ...(['bam-1', 'bam-1', 'bam-5', 'crak-2', 'crak-7', 'crak-9', 'dot-3'] as const),
  ...(['dot-4', 'dot-8', 'east', 'north', 'north', 'flower'] as const),
];
const review = reviewOf(START, [
  move('first-left', ['crak-7', 'dot-8', 'north'], ['bam-2', 'dot-5', 'west']),
]);
const [pass] = passesOf(review) as [ReturnType<typeof passesOf>[number]];

/** What is told to do instead of passing `played`. */
function instead(played: readonly Face[], best: readonly Face[], blind = 0): string {
  const [own, other] = [played, best].map((tiles) => ({ ...pass.played, tiles }));
  return insteadPhrase({ ...pass, blind, played: own!, best: other! });
}

describe('what to do instead', () => {
  test('names what changes and what it changes with, and the whole pass where every tile does', () => {
    expect(instead(['crak-1', 'dot-1', 'west'], ['crak-1', 'dot-1', 'dot-7'])).toBe(
      'pass 7 dot instead of a west wind',
    );
    expect(instead(['crak-3', 'dot-5', 'dot-6'], ['bam-3', 'crak-9', 'dot-5'])).toBe(
      'pass 3 bam and 9 crak instead of 3 crak and 6 dot',
    );
    expect(instead(['crak-3', 'dot-5', 'dot-6'], ['bam-3', 'crak-9', 'east'])).toBe(
      'pass 3 bam, 9 crak and an east wind',
    );
  });

  test('says of a pass with blind tiles that they are passed all the same', () => {
    expect(instead(['dot-1'], ['red'], 2)).toBe('pass a red dragon instead, with the same 2 blind');
    expect(instead(['dot-1', 'east'], ['red', 'east'], 1)).toBe(
      'pass a red dragon instead of 1 dot, with the same 1 blind',
    );
  });
});

describe('the verdict in words', () => {
  /** One alternative is named; the others are far behind, except the last. */
  function said(named: readonly [number, number], last: readonly [number, number] = [-3_000, 100]) {
    const analysis = analysisWith(pass, [named, [-3_000, 100], last]);
    return { verdict: analysis.verdict, told: deepVerdict({ ...pass, analysis }, analysis).slice(-2) };
  }

  test('says how much better another choice may be at most, on one scale from just as good to can’t say', () => {
    expect(said([400, 500])).toEqual({
      verdict: 'just-as-good',
      told: ['None of the 3 others we compared is better by more than 1 win in 100 games.'],
    });
    expect(said([-100, 1_400])).toEqual({
      verdict: 'cant-say',
      told: [
        'We found nothing that is surely better.',
        'None of the 3 others we compared is better by more than 1.3 wins in 100 games.',
      ],
    });
    expect(said([600, 800]).told).toEqual([
      'That brought about 0.6 more wins in 100 games, which may be luck.',
      'Chance may hide more, but none of the 3 others we compared is better by more than 1.4 wins in 100 games.',
    ]);
  });

  test('says of what is costly among nobody that it may be less, and that it is unsure where nothing is sure', () => {
    const milder = (...verdicts: readonly number[]) => {
      const among = verdicts.map((verdict) => [verdict, 500] as const);
      const analysis = askedAmong(analysisWith(pass, [[1_600, 500]]), among);
      return deepVerdict({ ...pass, analysis }, analysis).slice(0, 2);
    };
    const brings = 'That brings about 1.6 more wins in 100 games';
    const [best, same, little, costly] = [0, 1, 2, 3];
    expect(milder(costly, best, best)[1]).toBe(`${brings}, most likely more than 1.`);
    expect(milder(little, same, same)).toEqual([
      expect.stringMatching(/^A little better: pass /),
      `${brings}, perhaps fewer.`,
    ]);
    expect(milder(best, same, same)).toEqual([
      expect.stringMatching(/^Perhaps better: pass /),
      'That brought about 1.6 more wins in 100 games.',
    ]);
  });

  test('says of what is only a little better why it is neither just as good nor costly', () => {
    const little = (...values: Parameters<typeof said>): string => {
      const { verdict, told } = said(...values);
      expect(verdict).toBe('a-little-worse');
      return told.at(-1)!;
    };
    expect(little([700, 420])).toBe('That brings about 0.7 more wins in 100 games, perhaps up to 1.2.');
    // It takes another choice to bring more: that one is named.
    expect(said([500, 300], [200, 1_250]).told).toEqual([
      'That brings about 0.5 more wins in 100 games.',
      expect.stringMatching(/^Another choice perhaps brings up to 1\.5: pass .+\.$/),
    ]);
    expect(little([2_400, 1_450])).toBe(
      'That brings about 2.4 more wins in 100 games, but perhaps only 0.9.',
    );
    expect(little([1_500, 1_450])).toBe(
      'That brings about 1.5 more wins in 100 games, but perhaps hardly any.',
    );
    expect(said([3_000, 1_000])).toEqual({
      verdict: 'costly',
      told: [expect.stringMatching(/^Better: /), 'That brings about 3 more wins in 100 games.'],
    });
    // The same number may be told of what is only a little better.
    expect(said([1_500, 400])).toEqual({
      verdict: 'costly',
      told: [
        expect.stringMatching(/^Better: /),
        'That brings about 1.5 more wins in 100 games, most likely more than 1.',
      ],
    });
  });
});

test('tiles that came back are named without how many, for of some the pass has fewer', () => {
  const returned: readonly Face[] = ['bam-9', 'south', 'south'];
  expect(returnedSentence({ ...pass, parts: { ...pass.parts, returned } })).toEqual([
    'You had passed 9 bam and the south wind before, and such tiles came back.',
  ]);
});

test('sections that are farther away after a pass had a use for something in it', () => {
  const names = { stairs: 'Stairs', garden: 'Garden', winds: 'Two winds', suit: 'One suit' };
  const told = (before: readonly string[], after: readonly string[], sectionTiles: readonly Face[] = []) =>
    passFacts(
      {
        ...pass,
        parts: { ...pass.parts, groupCount: 0, sectionTiles },
        sectionsInReach: before,
        sectionsInReachAfter: after,
      },
      names,
    );
  const four = Object.keys(names);
  const gave = 'Your pass gave tiles that';
  const many = (where: string) =>
    `Your rack was close to 4 sections; in ${where} of them your closest hands use a tile given here.`;
  expect(told(['stairs', 'garden'], ['garden'])).toEqual([`${gave} your closest hands in Stairs use.`]);
  expect(told(four, ['stairs', 'suit'])).toEqual([`${gave} your closest hands in Garden and Two winds use.`]);
  expect(told(four, ['stairs', 'suit'], ['crak-7', 'north'])).toEqual([
    'Your pass gave 7 crak and the north wind, which your closest hands in Garden and Two winds use.',
  ]);
  expect(told(four, ['suit'])).toEqual([many('3')]);
  expect(told(four, [])).toEqual([many('all')]);
  expect(told(four, four)).toEqual([]);
});

test('a tile that is named for a section puts it out of reach alone, and each section that is lost has one', () => {
  let named = 0;
  for (const { rack, toGoBefore, sectionsInReach, sectionsInReachAfter, parts, played } of records(
    'section tiles',
    6,
  ).flatMap((record) => passesOf(reviewRound(record, houseKernel)))) {
    if (parts.sectionTiles.length === 0) continue;
    const lost = sectionsInReach.filter((id) => !sectionsInReachAfter.includes(id));
    const lostBy = parts.sectionTiles.map((face) => {
      const kept = takeFrom(
        bagOf(rack),
        played.tiles.filter((tile) => tile === face),
      )!;
      const bySection = toGoBySection(houseKernel, kept);
      const away = (id: string) => bySection[houseKernel.card.sections.findIndex((one) => one.id === id)]!;
      return lost.filter((id) => away(id) > toGoBefore + 1);
    });
    named++;
    expect(lostBy.every((sections) => sections.length > 0)).toBe(true);
    expect(new Set(lostBy.flat()).size).toBe(lost.length);
  }
  expect(named).toBeGreaterThan(5);
});

test('a pair that is given whole is not told twice, one that is broken up is', () => {
  const { parts, played } = pass;
  const facts = (tiles: readonly Face[], risk: typeof played.risk) =>
    passFacts(
      {
        ...pass,
        sectionsInReachAfter: pass.sectionsInReach,
        played: { ...played, tiles, risk },
        parts: { ...parts, broken: parts.groups.filter(({ face }) => tiles.includes(face)) },
      },
      {},
    );
  expect(facts(['north', 'north', 'crak-2'], 'pair')).toEqual([
    'You gave a pair of north winds, by the rule of thumb the riskiest thing to pass.',
  ]);
  expect(facts(['north', 'crak-7', 'crak-2'], 'none')).toEqual(['You broke up your pair of north winds.']);
});

describe('a pass beside the one that is named', () => {
  const COSTLY = [3_000, 1_000] as const;
  const CANT_SAY = [600, 800] as const;

  /** The pass of `tiles`, told to be worse than `named` by so much, or perhaps worse. */
  function beside(tiles: readonly Face[], named: readonly Face[], values: readonly [number, number]) {
    const { parts, played } = pass;
    const own = {
      ...pass,
      sectionsInReachAfter: pass.sectionsInReach,
      played: { ...played, tiles, risk: riskGrade(tiles) },
      parts: { ...parts, broken: touchedBy(parts.groups, tiles) },
    };
    const made = analysisWith(own, [values]);
    const finalists = made.finalists.map((one, place) => (place === 1 ? { ...one, tiles: named } : one));
    const analysis = { ...made, finalists };
    return { ...own, analysis };
  }

  test('has its own fault told first, by name, and then what the better one gives up', () => {
    expect(passReasons(beside(['bam-1', 'bam-1', 'dot-8'], ['crak-7', 'east', 'north'], COSTLY), {})).toEqual(
      [
        'Your pair of 1 bam then stays together.',
        'You gave a pair of 1 bam, by the rule of thumb the riskiest thing to pass.',
        'The better pass does break up your pair of north winds.',
      ],
    );
    expect(passReasons(beside(['crak-2', 'dot-8', 'east'], ['dot-8', 'dot-4', 'dot-3'], COSTLY), {})).toEqual(
      [],
    );
    expect(
      passReasons(beside(['crak-2', 'dot-8', 'east'], ['crak-9', 'dot-8', 'flower'], COSTLY), {}),
    ).toEqual(['Against the rule of thumb, the better pass gives a flower.']);
  });

  test('is not blamed by a rule of thumb that the one named breaks as well', () => {
    const kept = 'You kept both of your pairs together.';
    const facts = (named: readonly Face[]) =>
      passFacts(beside(['dot-8', 'east', 'flower'], named, CANT_SAY), {});
    expect(facts(['crak-2', 'dot-8', 'flower'])).toEqual([kept]);
    expect(facts(['crak-2', 'dot-8', 'east'])).toEqual([
      kept,
      'You gave a flower; by the rule of thumb a flower is kept.',
    ]);
  });

  test('is told with the part of its loss that surely goes to a neighbor where nothing else stands out', () => {
    const even = { played: 2, named: 2 };
    const why = {
      ...{ deals: 48, reason: null, keep: [], pass: [], sections: {}, sectionsKept: even, toGo: even },
      ...{ lacking: even, gone: even, idleJokers: even, points: even, concealed: even },
    };
    const reasons = (more: number) => {
      const choice = beside(['crak-7', 'dot-8', 'east'], ['crak-7', 'dot-4', 'dot-8'], [2_000, 1_500]);
      const finalists = choice.analysis.finalists.map((one, place) => ({
        ...one,
        giveaway: { value: place === 0 ? more : 0, halfWidth: 0.4 },
      }));
      return passReasons({ ...choice, analysis: { ...choice.analysis, finalists, why } }, {});
    };
    const left = [
      'Not only your closest hands count: those a little farther away do too.',
      'Either way your rack ends about 2.0 away on average.',
    ];
    const part =
      'Part of what is lost probably goes to the player on the left: the east wind helps there more than 4 dot.';
    expect(reasons(0.8)).toEqual([part, ...left]);
    // Within what chance may be.
    expect(reasons(0.55)).toEqual(left);
  });

  test('is told with the tile that helps the neighbor where most of the loss goes there, in the headline too', () => {
    const choice = beside(['crak-7', 'dot-8', 'east'], ['crak-7', 'dot-4', 'dot-8'], [2_000, 1_500]);
    const finalists = choice.analysis.finalists.map((one, place) => ({
      ...one,
      giveaway: { value: place === 0 ? 1.3 : 0.1, halfWidth: 0.4 },
    }));
    const fed = { ...choice, analysis: { ...choice.analysis, finalists } };
    const reason =
      'Most of what is lost probably goes to the player on the left: the east wind helps there more than 4 dot.';
    expect(passReasons(fed, {})).toEqual([reason]);
    expect(headlineOf([fed], {}).slice(2)).toEqual([
      'A little better: pass 4 dot instead of an east wind.',
      'That brings about 2 more wins in 100 games, but perhaps only 0.5.',
      reason,
    ]);
  });
});
