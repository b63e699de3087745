// What a review says of a pass beside another one: what changes, what goes blind all the same, what is told a second time.
import { describe, expect, test } from 'vitest';
import { touchedBy } from '../../shared-engine/analysis/review/groups.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
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
import { analysisWith } from '../kit/made-up-analyses.ts';
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
    expect(instead(['dot-1'], ['red'], 2)).toBe('pass a red dragon instead, and 2 blind as before');
    expect(instead(['dot-1', 'east'], ['red', 'east'], 1)).toBe(
      'pass a red dragon instead of 1 dot, and 1 blind as before',
    );
  });
});

test('tiles that came back are named, whichever copies they are', () => {
  const told = (...returned: readonly Face[]) =>
    returnedSentence({ ...pass, parts: { ...pass.parts, returned } });
  expect(told('south')).toEqual(['You had passed the south wind before, and more of that kind came in.']);
  expect(told('south', 'south')).toEqual([
    'You had passed the south wind before, and more of that kind came in.',
  ]);
  expect(told('bam-9', 'south', 'south')).toEqual([
    'You had passed 9 bam and the south wind before, and more of those kinds came in.',
  ]);
  expect(told()).toEqual([]);
});

test('sections that are farther away after a pass had a use for something in it', () => {
  const names = { stairs: 'Stairs', garden: 'Garden', winds: 'Two winds', suit: 'One suit' };
  const told = (
    before: readonly string[],
    after: readonly string[],
    sectionTiles: Readonly<Record<string, readonly Face[]>>,
  ) =>
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
  const many = (where: string) =>
    `Hands in 4 sections of the card were within reach; in ${where} of those the closest hands use a tile passed here.`;
  expect(told(['stairs', 'garden'], ['garden'], { stairs: ['dot-8', 'crak-7'] })).toEqual([
    'Your pass gave 7 crak and 8 dot, which your closest hands in Stairs use.',
  ]);
  const both = (garden: readonly Face[], winds: readonly Face[]) =>
    told(four, ['stairs', 'suit'], { garden, winds });
  expect(both(['crak-7', 'north'], ['crak-7', 'north'])).toEqual([
    'Your pass gave 7 crak and the north wind, which your closest hands in Garden and Two winds use.',
  ]);
  expect(both(['crak-7'], ['crak-7', 'north'])).toEqual([
    'Your closest hands use tiles given here: 7 crak (Garden and Two winds); the north wind (Two winds).',
  ]);
  expect(both(['crak-7', 'dot-8'], ['north'])).toEqual([
    'Your closest hands use tiles given here: 7 crak and 8 dot (Garden); the north wind (Two winds).',
  ]);
  // Beside praise it would read as blame.
  const praised = passFacts(
    {
      ...pass,
      analysis: analysisWith(pass, [[-1_000, 500]]),
      parts: { ...pass.parts, groupCount: 0, sectionTiles: { stairs: ['dot-8'] } },
      sectionsInReach: ['stairs', 'garden'],
      sectionsInReachAfter: ['garden'],
    },
    names,
  );
  expect(praised[0]).toBe('Your pass did give 8 dot, which your closest hands in Stairs use.');
  expect(told(four, ['suit'], {})).toEqual([many('3')]);
  expect(told(four, [], {})).toEqual([many('all')]);
  expect(told(four, four, {})).toEqual([]);
});

test('tiles that are named for a section put it out of reach, alone or only together', () => {
  const named = { alone: 0, together: 0 };
  for (const { rack, toGoBefore, sectionsInReach, sectionsInReachAfter, parts, played } of records(
    'section tiles',
    6,
  ).flatMap((record) => passesOf(reviewRound(record, houseKernel)))) {
    const lost = sectionsInReach.filter((id) => !sectionsInReachAfter.includes(id));
    expect(Object.keys(parts.sectionTiles).toSorted()).toEqual(lost.toSorted());
    for (const [id, tiles] of Object.entries(parts.sectionTiles)) {
      const index = houseKernel.card.sections.findIndex((one) => one.id === id);
      const isLostBy = (faces: readonly Face[]): boolean => {
        const given = played.tiles.filter((tile) => faces.includes(tile));
        return toGoBySection(houseKernel, takeFrom(bagOf(rack), given)!)[index]! > toGoBefore + 1;
      };
      expect(isLostBy(tiles)).toBe(true);
      const alone = tiles.filter((face) => isLostBy([face]));
      named[alone.length > 0 ? 'alone' : 'together']++;
      if (alone.length > 0) expect(alone).toEqual(tiles);
    }
  }
  expect(named.alone).toBeGreaterThan(5);
  expect(named.together).toBeGreaterThan(0);
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
    // Both break a rule, and not the same: both are told, the own in the headline too.
    const flower = 'You gave a flower; by the rule of thumb a flower is kept.';
    const both = beside(['dot-8', 'east', 'flower'], ['dot-8', 'east', 'north'], COSTLY);
    const like = beside(['dot-3', 'east', 'flower'], ['dot-3', 'east', 'bam-3'], COSTLY);
    expect(passReasons(both, {})).toEqual([
      flower,
      'The better pass does break up your pair of north winds.',
    ]);
    expect(passReasons(like, {})).toEqual([
      flower,
      'Against another rule of thumb, the better pass gives like numbers: 3 bam and 3 dot.',
    ]);
    expect(headlineOf([like], {}).at(-1)).toBe(flower);
    // Who passes a pair instead needs not be told that like numbers are nearly as risky.
    const milder = beside(['crak-7', 'dot-7', 'east'], ['dot-8', 'bam-1', 'bam-1'], COSTLY);
    expect(passReasons(milder, {})).toContain(
      'You gave like numbers, 7 crak and 7 dot, by the rule of thumb nearly as risky to pass as a pair.',
    );
    expect(headlineOf([milder], {}).join(' ')).not.toContain('like numbers');
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
      ...{
        deals: 48,
        reason: null,
        farther: null,
        keep: [],
        pass: [],
        sections: {},
        sectionsKept: even,
        toGoKept: even,
        toGo: even,
        handsNear: even,
      },
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
    const ends = 'Either way your rack ends about 2.0 away on average.';
    const part =
      'Part of what is lost probably goes to the player on the left: the east wind helps there more than 4 dot.';
    expect(reasons(0.8)).toEqual([part, ends]);
    // Within what chance may be.
    const shown = 'The two differ in one tile; how the racks end does not show why it matters.';
    expect(reasons(0.55)).toEqual([shown, ends]);
    // Of passes that differ in several tiles it is said that no one reason was found.
    const several = beside(['crak-7', 'dot-8', 'east'], ['crak-7', 'dot-4', 'bam-5'], [2_000, 1_500]);
    expect(passReasons({ ...several, analysis: { ...several.analysis, why } }, {})).toEqual([
      'We found no one reason for that.',
      ends,
    ]);
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
      'At least a little better: pass 4 dot instead of an east wind.',
      'That brings about 2 more wins in 100 games, but perhaps only 0.5.',
      reason,
    ]);
  });
});
