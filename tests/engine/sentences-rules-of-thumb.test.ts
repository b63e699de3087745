// The rules of thumb about a number (common practice, no source) beside what the numbers of a review say.
import { describe, expect, test } from 'vitest';
import { NO_DEEP_ANALYSIS } from '../../shared-engine/analysis/review/analysis.ts';
import type { NumberReview } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { numberFacts } from '../../shared-engine/analysis/review/sentences/number.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { houseKernel, move, records, reviewOf, toldOf } from '../kit/reviews.ts';

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
const NUMBERS = [...near, ...played].flatMap((review) =>
  review.choices.flatMap((choice, nth) =>
    choice.kind === 'pass' ? [] : [{ choice, told: toldOf(review, nth) }],
  ),
);

/** A number that follows the rule. */
function follows({ kind, spare }: NumberReview, value: number): boolean {
  return kind === 'ask' ? value === Math.min(3, spare) : value > 0 === spare < 3;
}

describe.each(['blind', 'ask'] as const)('the rule of thumb about a number (%s)', (kind) => {
  const numbers = NUMBERS.filter(({ choice }) => choice.kind === kind);

  test('is cited each time, as a rule of thumb', () => {
    expect(numbers.length).toBeGreaterThan(30);
    for (const { told } of numbers) expect(told).toMatch(/[Tt]he rule of thumb is to .+\.$/);
  });

  test('is what it would have done with so many passers, and said to have been followed where it was', () => {
    for (const { choice, told } of numbers) {
      const { spare, played } = choice;
      const blind =
        spare < 3
          ? 'With fewer than 3 passers the rule of thumb is to pass blind'
          : 'With 3 passers or more the rule of thumb is to pass nothing blind';
      const ask = 'The rule of thumb is to ask for as many as that, 3 at most';
      expect(told).toContain(kind === 'blind' ? blind : ask);
      expect(told.includes(', as you did'), told).toBe(follows(choice, played));
    }
  });
});

test('a rule of thumb that would gain nothing is said to gain nothing, and one that was followed to its cost is said to be', () => {
  const none = NUMBERS.filter(({ told }) => /; here that was (no|not clearly) better\.$/.test(told));
  expect(none.length).toBeGreaterThan(0);
  // From a quarter of a tile on another number is told.
  for (const { choice, told } of none) {
    expect(choice.loss).toBeLessThan(0.25);
    expect(told.endsWith('; here that was no better.')).toBe(choice.loss === 0);
  }
  for (const { choice } of NUMBERS) {
    if (choice.kind === 'vote' || !follows(choice, choice.played)) continue;
    const told = numberFacts({ ...choice, loss: 0.6, analysis: NO_DEEP_ANALYSIS });
    expect(told.at(-1)).toMatch(/, as you did; here something else was better\.$/);
  }
});

test('a rule of thumb that another number than its own beats is said to be beaten', () => {
  const told = (kind: 'blind' | 'ask', spare: number, played: number, better: number) => {
    const { choice } = NUMBERS.find((one) => one.choice.kind === kind) as { choice: NumberReview };
    return numberFacts({ ...choice, spare, played, best: better, loss: 0.6, analysis: NO_DEEP_ANALYSIS }).at(
      -1,
    );
  };
  const ask = 'The rule of thumb is to ask for as many as that, 3 at most';
  expect(told('ask', 3, 2, 1)).toBe(`${ask}; here asking for 1 was better than 2.`);
  expect(told('ask', 1, 2, 3)).toBe(`${ask}; here asking for 3 was better than 2.`);
  expect(told('ask', 3, 2, 3)).toBe(`${ask}.`);
  expect(told('blind', 4, 1, 2)).toMatch(/ nothing blind; here passing 2 blind was better than 1\.$/);
  expect(told('blind', 4, 1, 0)).toMatch(/ pass nothing blind\.$/);
});

test('no rule of thumb is cited about the vote, for there is none', () => {
  const votes = NUMBERS.filter(({ choice }) => choice.kind === 'vote');
  expect(votes.length).toBeGreaterThan(20);
  for (const { told } of votes) expect(told).not.toContain('rule of thumb');
});
