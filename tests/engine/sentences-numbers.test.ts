// The sentences of a review: every number in them is a number of the review, and their tone is kind.
import { describe, expect, test } from 'vitest';
import type { ChoiceReview, Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { addTo, bagOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { numbersIn, numbersInText, shownAs } from '../kit/numbers-in-text.ts';
import { houseKernel, records } from '../kit/reviews.ts';

const REVIEWS: readonly Review[] = records('words', 50).map((record) => reviewRound(record, houseKernel));
const CHOICES: readonly { readonly review: Review; readonly choice: ChoiceReview }[] = REVIEWS.flatMap(
  (review) => review.choices.map((choice) => ({ review, choice })),
);

describe('numbers', () => {
  test('every number in the two sentences of a choice is a number of that choice', () => {
    let said = 0;
    for (const { review, choice } of CHOICES) {
      const known = shownAs(numbersIn(choice));
      for (const sentence of choice.sentences) {
        for (const number of numbersInText(sentence, Object.values(review.sections))) {
          said++;
          expect(known, sentence).toContain(number);
        }
      }
    }
    expect(said).toBeGreaterThan(1000);
  });

  test('every number of the lesson is a number of a choice', () => {
    for (const review of REVIEWS) {
      const known = shownAs(numbersIn(review.choices));
      for (const number of numbersInText(review.lesson, Object.values(review.sections))) {
        expect(known, review.lesson).toContain(number);
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
  const every = REVIEWS.flatMap((review) => [
    review.lesson,
    review.method,
    ...review.choices.flatMap(({ sentences }) => sentences),
  ]);

  test('nobody is scolded and nothing is called certain', () => {
    for (const sentence of every) {
      expect(sentence).not.toMatch(/mistake|blunder|wrong|error|bad\b|fail|correct|should have|must/i);
    }
  });

  test('no choice is called the best, only as good as the best we found', () => {
    for (const { choice } of CHOICES) {
      for (const sentence of choice.sentences) expect(sentence).not.toMatch(/\bbest\b/i);
    }
    for (const { lesson } of REVIEWS)
      expect(lesson.replace('the best we found', '')).not.toMatch(/\bbest\b/i);
  });

  test('each part is one or two whole sentences of readable length, without a gap in them', () => {
    for (const { choice } of CHOICES) {
      for (const sentence of choice.sentences) {
        expect(sentence).toMatch(/^[A-Z].*[^.]\.$/);
        expect(sentence.replaceAll(/\d\.\d/g, '').split('. ').length).toBeLessThan(3);
        expect(sentence).not.toMatch(/undefined|null|NaN|\[object| {2}| ,|,,|;;/);
        expect(sentence.length).toBeLessThan(360);
      }
    }
  });
});

describe('what a sentence says was computed', () => {
  test('a pass is called safer, or against a rule of thumb, only where its risk is graded so', () => {
    let against = 0;
    for (const { choice } of CHOICES) {
      if (choice.kind !== 'pass' || !choice.sentences[1].includes('against the rule of thumb')) continue;
      against++;
      expect(choice.best.risk).not.toBe('none');
    }
    expect(against).toBeGreaterThan(5);
    for (const { choice } of CHOICES) {
      if (choice.kind !== 'pass' || !choice.sentences[1].includes('the safer one')) continue;
      expect(choice.best.risk).not.toBe(choice.played.risk);
      expect(choice.loss).toBeGreaterThan(0);
    }
  });

  test('the lesson is about the largest loss of all, or praise', () => {
    for (const { basis, choices, lesson } of REVIEWS) {
      const largest = Math.max(...choices.map(({ loss }) => loss));
      expect(lesson.startsWith('At first look, the one thing')).toBe(largest >= basis.smallLoss);
      expect(lesson.startsWith('At first look, each')).toBe(largest < basis.smallLoss);
    }
    expect(new Set(REVIEWS.map(({ lesson }) => lesson.slice(0, 19))).size).toBe(2);
  });

  test('a group that had just been made is named when the pass could have been better', () => {
    let named = 0;
    for (const { review, choice } of CHOICES) {
      if (choice.kind !== 'pass' || choice.loss < review.basis.smallLoss) continue;
      const formed = choice.parts.formed.length > 0;
      expect(choice.sentences[1].includes('had just made')).toBe(formed);
      if (formed) named++;
    }
    expect(named).toBeGreaterThan(5);
  });

  test('a reason given for the better pass is true of it and not of the pass played', () => {
    const reasons = { groups: 0, sections: 0, toGo: 0, fit: 0 };
    for (const { review, choice } of CHOICES) {
      if (choice.kind !== 'pass' || choice.loss < review.basis.smallLoss) continue;
      const { best, parts, played, sentences } = choice;
      if (/stays? whole/.test(sentences[1])) {
        reasons.groups++;
        expect(parts.groupsKeptByBest).toBeGreaterThan(parts.groupsKept);
      } else if (sentences[1].includes('sections within reach')) {
        reasons.sections++;
        expect(parts.sectionsKeptByBest).toBeGreaterThan(parts.sectionsKept);
      } else if (sentences[1].includes('leaves the tiles kept')) {
        reasons.toGo++;
        expect(best.toGo).toBeLessThan(played.toGo);
      } else {
        reasons.fit++;
        expect(sentences[1]).toContain('which keeps tiles that fit better');
      }
    }
    expect(Math.min(reasons.groups, reasons.sections, reasons.toGo)).toBeGreaterThan(0);
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
