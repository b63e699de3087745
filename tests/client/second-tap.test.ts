// The second tap of two quick ones chooses nothing that has come to the place of the first.
import { expect, it } from 'vitest';
import { appearing, DEAF_MS, isSecondTap } from '../../client/ui/second-tap.ts';

it('a tap just after a question has come to the place of another is not heard, and one that was meant for it is', () => {
  const vote = appearing({ shown: '1/first-left', deafUntil: 0 }, '1/vote', 1_000 + DEAF_MS);
  // A phone that was busy drawing the question may tell of a tap late; what counts is when it was made.
  expect([980, 1_200, 1_317].map((at) => isSecondTap(vote, at))).toEqual([true, true, true]);
  expect(isSecondTap(vote, 1_000 + DEAF_MS)).toBe(false);
  // Drawing the same question again later keeps nobody from answering it.
  expect(appearing(vote, '1/vote', 9_000)).toBe(vote);
});
