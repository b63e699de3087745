// The rules of thumb about a number (common practice, no source) beside what the numbers of a review say.
import { describe, expect, test } from 'vitest';
import type { NumberReview } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { houseKernel, move, records, reviewOf } from '../kit/reviews.ts';

/** Racks a little short of a hand, where a third passer may still be worth more than an arriving tile. */
const NEAR: readonly (readonly Face[])[] = [
  [
    ...(['bam-2', 'bam-7', 'dot-5', 'dot-5', 'dot-5', 'dot-5', 'east'] as const),
    ...(['north', 'white', 'white', 'white', 'white', 'flower'] as const),
  ],
  [
    ...(['bam-3', 'bam-5', 'bam-5', 'bam-5', 'bam-8', 'bam-9', 'dot-3'] as const),
    ...(['dot-5', 'dot-5', 'dot-5', 'dot-8', 'dot-8', 'flower'] as const),
  ],
  [
    ...(['bam-3', 'south', 'west', 'west', 'west', 'west', 'green'] as const),
    ...(['green', 'green', 'white', 'flower', 'flower', 'flower'] as const),
  ],
  [
    ...(['bam-5', 'bam-7', 'crak-2', 'crak-2', 'crak-2', 'dot-5', 'dot-5'] as const),
    ...(['dot-5', 'dot-5', 'flower', 'flower', 'flower', 'flower'] as const),
  ],
];

const near = NEAR.map((rack) =>
  reviewOf(rack, [
    move('first-left', rack.slice(0, 3), rack.slice(0, 3)),
    { kind: 'ask', asked: [3, 3, 3, 3], agreed: [3, 3, 3, 3], by: ['player', 'bot', 'bot', 'bot'] },
  ]),
);
const played = records('rules', 30).map((record) => reviewRound(record, houseKernel));
const NUMBERS = [...near, ...played].flatMap(({ choices }) =>
  choices.filter((choice): choice is NumberReview => choice.kind !== 'pass'),
);

/** How far the best number that follows the rule is behind the best of all, in tiles. */
function behind({ kind, options, spare }: NumberReview): number {
  const follows = (value: number): boolean =>
    kind === 'ask' ? value === Math.min(3, spare) : value > 0 === spare < 3;
  const most = Math.max(...options.map(({ nearness }) => nearness));
  return Math.min(...options.filter(({ value }) => follows(value)).map(({ nearness }) => most - nearness));
}

describe.each(['blind', 'ask'] as const)('the rule of thumb about a number (%s)', (kind) => {
  const choices = NUMBERS.filter((choice) => choice.kind === kind);

  test('is cited each time, as a rule of thumb', () => {
    expect(choices.length).toBeGreaterThan(30);
    for (const { sentences } of choices) expect(sentences[1]).toContain('the rule of thumb, to ');
  });

  test('is said to agree where a number that follows it is as good as the best, to a tenth', () => {
    for (const choice of choices) {
      expect(choice.sentences[1].endsWith('agrees.'), choice.sentences[1]).toBe(
        Math.round(behind(choice) * 10) === 0,
      );
    }
  });

  test('is contradicted somewhere, where the numbers point the other way', () => {
    expect(
      choices.filter(({ sentences }) => sentences[1].endsWith('points the other way here.')),
    ).not.toEqual([]);
  });
});

test('no rule of thumb is cited about the vote, for there is none', () => {
  const votes = NUMBERS.filter(({ kind }) => kind === 'vote');
  expect(votes.length).toBeGreaterThan(20);
  for (const { sentences } of votes) expect(sentences[1]).not.toContain('rule of thumb');
});
