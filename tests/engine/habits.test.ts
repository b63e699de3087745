// What keeps costing somebody, over many rounds.
import { describe, expect, it } from 'vitest';
import {
  aimWords,
  allChoices,
  habitCounts,
  headline,
  helpedWords,
  stepLine,
} from '../../client/practice/habits/strings.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { canBeDrawn } from '../../shared-engine/practice/drawn-deal.ts';
import { aimsOver, habitsOf, LEAST_CASES } from '../../shared-engine/practice/habits.ts';
import { countSureMistakes } from '../../shared-engine/practice/mistake-counts.ts';
import { sureChance, usualChance } from '../../shared-engine/practice/named-habits.ts';
import { aimsMet, type StoredChoice } from '../../shared-engine/practice/stored-round.ts';
import { houseKernel, passesOf, records } from '../kit/reviews.ts';
import { storedChoice } from '../kit/stored-rounds.ts';

const best = (part: Partial<StoredChoice>) =>
  storedChoice({ verdict: 'best', loss: -0.2, halfWidth: 0.3, ...part });
const costly = (loss: number, part: Partial<StoredChoice>) =>
  storedChoice({ verdict: 'costly', loss, halfWidth: 0.3, mistakes: ['broken-multiple'], ...part });

/** Rounds in which passing across costs 4 every second time, and nothing else anything. */
function rounds(count: number): { readonly choices: readonly StoredChoice[] }[] {
  return Array.from({ length: count }, (_, nth) => ({
    choices: [
      best({ step: 'first-right' }),
      nth % 2 === 0 ? costly(4, { step: 'first-across' }) : best({ step: 'first-across' }),
      best({ step: 'first-left', kind: 'blind' }),
      best({ step: 'first-left' }),
      best({ step: 'vote', kind: 'vote' }),
      best({ step: 'courtesy-ask', kind: 'ask' }),
    ],
  }));
}

describe('the habits of somebody', () => {
  it('name the kind of mistake that stands out and the step that costs most, drawn a little towards the others', () => {
    const habits = habitsOf(rounds(40));
    expect(habits.perRound).toBeCloseTo(2, 6);
    const [first, ...others] = habits.steps;
    expect(first).toMatchObject({ kind: 'across', cases: 40, isSaid: true });
    expect(first!.perRound).toBeGreaterThan(1.5);
    expect(first!.perRound).toBeLessThan(2);
    for (const { perRound } of others) expect(perRound).toBeLessThan(0.3);
    expect(headline(habits)).toMatch(
      /^Over 40 rounds, one habit stands out: you broke up a pair or more, in the first Charleston\. It cost you about 2\.0 wins in 100 games a round\.$/,
    );
    expect(habitCounts(habits)).toMatch(/^You did so in 20 of 40 rounds\. Our club-player bot .*\.$/);
    expect(stepLine(habits)).toMatch(
      /^Of the steps, passing across cost you most: about 2\.0 wins in 100 games a round\.$/,
    );
    expect(habits.mistakes).toMatchObject([{ kind: 'broken-multiple', cases: 20, isSaid: true }]);
    expect(allChoices(habits)).toMatch(/about 2\.0 wins in 100 games a round \(between 1\.\d and 2\.\d\)/);
  });

  it('say nothing of a kind under eight cases, nor after fewer than eight rounds', () => {
    const few = habitsOf(rounds(LEAST_CASES - 1));
    expect(few.steps.every(({ isSaid }) => !isSaid)).toBe(true);
    expect(headline(few)).toMatch(/too little to tell/);
    expect(stepLine(few)).toBeNull();
    const fewMistakes = habitsOf(rounds(2 * (LEAST_CASES - 1)));
    expect(fewMistakes.named).toEqual([]);
    expect(habitCounts(fewMistakes)).toBeNull();
    expect(headline(fewMistakes)).toBe('Over 14 rounds, no one habit stands out.');
  });

  it('leave out rounds that are not judged to the end and choices that a bot made', () => {
    const unfinished = { choices: [costly(9, {}), storedChoice()] };
    const bots = rounds(10).map(({ choices }) => ({ choices: [...choices, costly(9, { by: 'stand-in' })] }));
    expect(habitsOf([unfinished, ...bots])).toEqual(habitsOf(rounds(10)));
    expect(habitsOf([]).steps).toEqual([]);
    expect(headline(habitsOf([]))).toMatch(/Nothing to add up/);
  });

  it('leave out what the coach helped with, and say apart what that cost', () => {
    const helped = rounds(10).map(({ choices }) => ({
      choices: [...choices, costly(9, { step: 'second-left' })],
      helped: ['second-left' as const],
    }));
    const habits = habitsOf(helped);
    expect({ ...habits, helped: null }).toEqual({ ...habitsOf(rounds(10)), helped: null });
    expect(habits.helped).toEqual({ cases: 10, perCase: 9 });
    expect(helpedWords(habits)).toBe(
      'The coach helped with 10 choices, which are not in these numbers. With help a choice cost about 9.0 wins in 100 games, a pass without it about 0.5 wins in 100 games.',
    );
    expect(helpedWords(habitsOf(helped.slice(0, 1)))).toMatch(
      /with one choice, which is not in these numbers\.$/,
    );
    expect(helpedWords(habitsOf(rounds(10)))).toBeNull();
  });

  it('say how often what was aimed at was within reach, lately and before', () => {
    const met = (said: number, near: number) => ({ aims: { said, near } });
    const rounds = [...Array.from({ length: 10 }, () => met(2, 2)), {}, met(5, 2), met(5, 2)];
    expect(aimWords(aimsOver(rounds))).toBe(
      'Of the 30 sections you aimed at before a pass, 24 were within reach. In your latest rounds it was 20 of 20, before that 4 of 10.',
    );
    expect(aimWords(aimsOver(rounds.slice(0, 4)))).toMatch(/^Of the 8 sections .*reach\.$/);
    expect(aimWords(aimsOver(rounds.slice(0, 3)))).toBeNull();
    // The review of a first pass: what it was near to, and one section that it never was.
    const [record] = records('aims', 1);
    const review = reviewRound(record!, houseKernel);
    const [pass] = passesOf(review);
    const [near] = pass!.sectionsInReach;
    expect(aimsMet(review, { [pass!.step]: [near!, 'no-such-section'] })).toEqual({ said: 2, near: 1 });
    expect(aimsMet(review, {})).toBeNull();
  });

  it('are drawn for where a search can be sure in time, against what is sure choice by choice', () => {
    expect([canBeDrawn('neighbor-fed', false), canBeDrawn('pair-given', false)]).toEqual([false, false]);
    expect([canBeDrawn('committed-too-late', false), canBeDrawn('committed-too-late', true)]).toEqual([
      true,
      false,
    ]);
    const sure = countSureMistakes([
      [costly(4, {}), best({ mistakes: [], leaning: 'continued', kind: 'vote', step: 'vote' })],
      [costly(2, { mistakes: ['broken-multiple', 'tiles-gone'] })],
    ]);
    expect(sure.choices).toEqual({ pass: 2, blind: 0, vote: 1, ask: 0 });
    expect([sure.made['broken-multiple'], sure.made['tiles-gone'], sure.made.continued]).toEqual([2, 1, 0]);
    // A leaning is usual far more often than a mistake beyond doubt.
    expect(sureChance('continued')).toBeLessThan(usualChance('continued') / 3);
  });

  it('never charge a difference that no review told', () => {
    const told = habitsOf([{ choices: [storedChoice({ verdict: 'cant-say', loss: 3, halfWidth: 4 })] }]);
    expect(told.perRound).toBe(0);
  });
});
