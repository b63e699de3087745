// Each kind of problem in a card, with its pattern, its group and a message that says what to do.
import { describe, expect, test } from 'vitest';
import { parseCard } from '../../shared-engine/card/parse.ts';
import { CARD_PROBLEM_CODES, type CardProblem } from '../../shared-engine/card/problem.ts';
import { BAD_CARDS } from '../kit/bad-cards.ts';
import { cardOf, GOOD_PATTERN } from '../kit/card-files.ts';

function problemsOf(json: unknown): readonly CardProblem[] {
  const parsed = parseCard(json);
  return parsed.ok ? [] : parsed.problems;
}

describe('each problem names the place and what to do', () => {
  test.each(BAD_CARDS)(
    'a card with $title gets one problem with place and advice',
    ({ json, code, pattern, group, says }) => {
      expect(problemsOf(json)).toEqual([{ code, pattern, group, message: says }]);
    },
  );

  test('the bad cards of these tests have every kind of card problem', () => {
    expect(new Set(BAD_CARDS.map(({ code }) => code))).toEqual(new Set(CARD_PROBLEM_CODES));
  });
});

test('problems of several patterns, of structure and of meaning, are reported together', () => {
  const problems = problemsOf(
    cardOf(
      { ...GOOD_PATTERN, id: 'short', groups: GOOD_PATTERN.groups.slice(1) },
      { ...GOOD_PATTERN, id: 'odd', points: 'many', groups: [{ size: 0, tile: { flower: true } }] },
      { ...GOOD_PATTERN, id: 'lost', section: 'nowhere', where: { n: { from: 9, to: 9 } } },
    ),
  );
  expect(problems.map(({ pattern, group, code }) => `${pattern} ${group} ${code}`).sort()).toEqual([
    'lost 2 number-out-of-range',
    'lost null unknown-section',
    'odd 1 not-in-format',
    'odd null not-in-format',
    'short null not-14-tiles',
  ]);
});

test('a card without problems is accepted unchanged', () => {
  const json = cardOf(GOOD_PATTERN, { ...GOOD_PATTERN, id: 'second', where: { n: { numbers: [2, 4] } } });
  expect(parseCard(json)).toEqual({ ok: true, card: json });
});
