// The sentences of a review: every number in them is a number of the review, and their tone is kind.
import { describe, expect, test } from 'vitest';
import { BASIS } from '../../shared-engine/analysis/review/basis.ts';
import type { ChoiceReview, NumberReview, Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import {
  DEEP_METHOD,
  LEDGER_METHOD,
  METHOD,
  methodParts,
  REDUCED_BUDGET,
} from '../../shared-engine/analysis/review/sentences/method.ts';
import { firstNumberAnswer } from '../../shared-engine/analysis/review/sentences/number.ts';
import { addTo, bagOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { numbersIn, numbersInText, shownAs } from '../kit/numbers-in-text.ts';
import { houseKernel, records, toldOf } from '../kit/reviews.ts';

const REVIEWS: readonly Review[] = records('words', 50).map((record) => reviewRound(record, houseKernel));

interface Told {
  readonly review: Review;
  readonly choice: ChoiceReview;
  readonly sentences: readonly string[];
  readonly text: string;
}

const CHOICES: readonly Told[] = REVIEWS.flatMap((review) =>
  review.choices.map((choice, nth) => ({
    review,
    choice,
    sentences: review.story.choices[nth]!.sentences,
    text: toldOf(review, nth),
  })),
);

describe('numbers', () => {
  test('every number in the sentences of a choice is a number of that choice', () => {
    let said = 0;
    for (const { review, choice, text } of CHOICES) {
      const lost = choice.kind === 'pass' ? choice.sectionsInReach.length - choice.parts.sectionsKept : 0;
      const known = shownAs([...numbersIn(choice), lost]);
      for (const number of numbersInText(text, Object.values(review.sections))) {
        said++;
        expect(known, text).toContain(number);
      }
    }
    expect(said).toBeGreaterThan(400);
  });

  test('every number of the headline is a number of a choice', () => {
    for (const { choices, sections, story } of REVIEWS) {
      const known = shownAs(numbersIn(choices));
      for (const number of numbersInText(story.headline.join(' '), Object.values(sections))) {
        expect(known, story.headline.join(' ')).toContain(number);
      }
    }
  });

  test('every number in the method is in the basis, or a number of tiles asked for', () => {
    const { basis, method } = REVIEWS[0]!;
    const known = new Set([...numbersIn(basis), 0, 1, 2, 3]);
    for (const number of numbersInText(method, [])) expect(known).toContain(number);
    expect(method).toContain(String(basis.passesTried));
    expect(method).toContain(String(basis.arrivals));
  });

  test('numbers are found in a text, but not in the names of tiles and sections', () => {
    expect(numbersInText('You passed 3 bam and 9 dot; both of 12, 0.4 tiles', [])).toEqual([12, 0.4, 2]);
    expect(numbersInText('left Hands of 2026 near, 5 to go', ['Hands of 2026'])).toEqual([5]);
  });
});

describe('tone', () => {
  const every = REVIEWS.flatMap(({ method, story }) => [
    method,
    ...story.headline,
    ...story.choices.flatMap(({ sentences }) => sentences),
  ]);

  test('nobody is scolded and nothing is called certain', () => {
    for (const sentence of every) {
      expect(sentence).not.toMatch(/mistake|blunder|wrong|error|bad\b|fail|correct|should have|must/i);
    }
  });

  test('no choice is called the best, only as good as the best we found', () => {
    for (const sentence of every) {
      expect(sentence.replaceAll(/as good as the best\b|Best is /g, '')).not.toMatch(/\bbest\b/i);
    }
  });

  test('no sentence is longer than 25 words, and each is whole and without a gap', () => {
    const single = every.flatMap((text) => text.split(/(?<=[.!?]) (?=[A-Z])/));
    for (const sentence of single) {
      expect(sentence).toMatch(/^[A-Z].*[^.]\.$/);
      expect(sentence).not.toMatch(/undefined|null|NaN|\[object| {2}| ,|,,|;;/);
      expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(25);
    }
  });
});

describe('what a sentence says was computed', () => {
  test('a pass is called against a rule of thumb only where its risk is graded so', () => {
    let against = 0;
    for (const { choice, text } of CHOICES) {
      if (choice.kind !== 'pass' || !text.includes('Against the rule of thumb')) continue;
      against++;
      expect(choice.best.risk).not.toBe('none');
      expect(choice.best.risk).not.toBe(choice.played.risk);
    }
    expect(against).toBeGreaterThan(5);
  });

  test('the headline is about the largest loss of all, or praise, and called a first look', () => {
    for (const { choices, story } of REVIEWS) {
      const [first] = story.headline;
      const largest = Math.max(...choices.map(({ loss }) => loss));
      expect(first!.startsWith('At first look, the one thing')).toBe(largest >= BASIS.smallLoss);
      expect(first!.startsWith('At first look, each')).toBe(largest < BASIS.smallLoss);
      if (largest >= BASIS.smallLoss) expect(choices[story.opened]!.loss).toBe(largest);
    }
    expect(new Set(REVIEWS.map(({ story }) => story.headline[0]!.slice(0, 19))).size).toBe(2);
  });

  test('a pass for which something better is told is not praised for what it kept', () => {
    for (const { choice, text } of CHOICES) {
      if (choice.loss >= BASIS.smallLoss) expect(text).not.toMatch(/you kept|your pass gave/i);
    }
  });

  test('a group that had just been made is named where the pass broke it and the better one does not', () => {
    let named = 0;
    for (const { choice, text } of CHOICES) {
      if (choice.kind !== 'pass' || choice.loss < BASIS.smallLoss) continue;
      const { broken, brokenByBest, formed } = choice.parts;
      const lost = broken.filter(({ face }) => !brokenByBest.some((group) => group.face === face));
      const made = lost.some(({ face }) => formed.some((group) => group.face === face));
      expect(
        /\b(The (pair|pung|kong) of [^:]+ was new|You (broke up|gave away) a new [^:]+): /.test(text),
        text,
      ).toBe(made);
      if (made) named++;
    }
    expect(named).toBeGreaterThan(5);
  });

  test('a reason given for the better pass is true of it and not of the pass played', () => {
    const reasons = { groups: 0, sections: 0, toGo: 0, fit: 0 };
    for (const { choice, text } of CHOICES) {
      if (choice.kind !== 'pass' || choice.loss < BASIS.smallLoss) continue;
      const { best, parts, played } = choice;
      if (/then stays? together/.test(text)) {
        reasons.groups++;
        expect(parts.broken.some(({ face }) => !best.tiles.includes(face))).toBe(true);
      }
      if (text.includes('sections within a tile of')) {
        reasons.sections++;
        expect(parts.sectionsKeptByBest).toBeGreaterThan(parts.sectionsKept);
        expect(text).toContain(
          `the pass made keeps ${parts.sectionsKept === 0 ? 'none' : parts.sectionsKept}.`,
        );
      }
      if (text.includes('The tiles kept are then')) {
        reasons.toGo++;
        expect(best.toGo).toBeLessThan(played.toGo);
      }
      if (text.includes('It fits better')) reasons.fit++;
    }
    expect(Math.min(reasons.groups, reasons.sections + reasons.toGo, reasons.fit)).toBeGreaterThan(0);
  });

  test('a number that nothing beats at first look is told by the others', () => {
    const told = new Set<string>();
    for (const { choice, text } of CHOICES) {
      if (choice.kind === 'pass' || choice.loss > 0) continue;
      const others =
        choice.kind !== 'vote' ? 'no other number' : choice.played === 1 ? 'stopping' : 'continuing';
      const [, words] = /At first look, (.+?) (?:came|did not come) out better\./.exec(text) ?? [];
      expect(words, text).toBe(others);
      told.add(others);
    }
    expect(told.size).toBeGreaterThan(1);
    const vote = CHOICES.map(({ choice }) => choice).find(
      (choice): choice is NumberReview => choice.kind === 'vote',
    )!;
    expect(firstNumberAnswer({ ...vote, played: 0, loss: 0 })).toEqual([
      'At first look, continuing did not come out better.',
    ]);
  });

  test('passing and keeping what is named turns the pass played into the better one', () => {
    for (const { choice } of CHOICES) {
      if (choice.kind !== 'pass') continue;
      const { betterToGive, betterToKeep } = choice.parts;
      const turned = addTo(takeFrom(bagOf(choice.played.tiles), betterToKeep)!, betterToGive);
      expect(turned).toEqual(bagOf(choice.best.tiles));
      expect(betterToGive.some((face) => betterToKeep.includes(face))).toBe(false);
    }
  });
});

test('the method of a review falls into the parts it was put together from, and stays whole in other words', () => {
  const kinds = (...texts: string[]) => methodParts(texts.join(' ')).map(({ kind }) => kind);
  expect(REVIEWS[0] && methodParts(REVIEWS[0].method).map(({ kind }) => kind)).toEqual(['quick']);
  expect(kinds(METHOD, DEEP_METHOD, REDUCED_BUDGET, LEDGER_METHOD)).toEqual([
    'quick',
    'deep',
    'ledger',
    'reduced',
  ]);
  expect(methodParts(`${METHOD} As it was.`)).toEqual([
    { kind: 'whole', text: `${METHOD} As it was.`, points: [] },
  ]);
});

test('every long part of the method comes in points of at most four sentences, and nothing of it is left out', () => {
  const parts = methodParts([METHOD, DEEP_METHOD, LEDGER_METHOD].join(' '));
  for (const { text, points } of parts) {
    expect(points.flatMap(({ sentences }) => sentences).join(' ')).toBe(text);
    expect(Math.max(...points.map(({ sentences }) => sentences.length))).toBeLessThanOrEqual(4);
  }
  expect(parts.map(({ points }) => points.length)).toEqual([3, 6, 4]);
});
