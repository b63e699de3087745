// When a kind of mistake is called a habit: never by chance, however often somebody looks.
import { describe, expect, it } from 'vitest';
import { evidenceAgainst } from '../../shared-engine/practice/evidence.ts';
import { LEAST_CASES } from '../../shared-engine/practice/habits.ts';
import { namedHabits } from '../../shared-engine/practice/named-habits.ts';
import type { StoredChoice } from '../../shared-engine/practice/stored-round.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { storedChoice } from '../kit/stored-rounds.ts';

describe('the evidence that somebody errs more often than is usual', () => {
  it('ever reaches twenty, over two hundred looks, for fewer than one in twenty who do not', () => {
    const random = stream('habits', 'players without one');
    const usual = 0.08;
    let told = 0;
    for (let player = 0; player < 1_000; player++) {
      let [cases, most] = [0, 0];
      for (let rounds = 1; rounds <= 200; rounds++) {
        if (random.below(100) < 100 * usual) cases++;
        most = Math.max(most, evidenceAgainst(usual, { cases, rounds }));
      }
      if (most >= 20) told++;
    }
    expect(told).toBeLessThanOrEqual(50);
    expect(told).toBeGreaterThan(0);
  });

  it('is 1 on average at the usual chance, whatever comes', () => {
    // Three rounds at a chance of one in ten, every outcome with its weight.
    const usual = 0.1;
    const mean = [0, 1, 2, 3].reduce(
      (sum, cases) =>
        sum +
        [1, 3, 3, 1][cases]! *
          usual ** cases *
          (1 - usual) ** (3 - cases) *
          evidenceAgainst(usual, { cases, rounds: 3 }),
      0,
    );
    expect(mean).toBeCloseTo(1, 9);
  });

  it('stays a number over ten years of evenings', () => {
    expect(evidenceAgainst(0.05, { cases: 30_000, rounds: 30_000 })).toBeGreaterThan(1e9);
    expect(evidenceAgainst(0.05, { cases: 0, rounds: 30_000 })).toBe(0);
    expect(evidenceAgainst(0.05, { cases: 12_000, rounds: 30_000 })).toBeGreaterThan(1e9);
    expect(evidenceAgainst(0.05, { cases: 1_200, rounds: 30_000 })).toBeLessThan(1);
  });
});

describe('a habit', () => {
  const costly = { verdict: 'costly', loss: 3, halfWidth: 0.5 } as const;
  const rounds = (count: number, second: Partial<StoredChoice> = {}) =>
    Array.from({ length: count }, () => [
      storedChoice({ verdict: 'best', loss: -1 }),
      storedChoice({ verdict: 'best', loss: -1, step: 'second-across', ...second }),
      storedChoice({ verdict: 'best', loss: -1, step: 'vote', kind: 'vote' }),
    ]);

  it('is named where it is clearly more frequent than usual, with the Charleston it belongs to', () => {
    const mistake = { ...costly, mistakes: ['pair-given'] };
    const [habit, ...others] = namedHabits([...rounds(3), ...rounds(20, mistake)], LEAST_CASES);
    expect(habit).toMatchObject({ kind: 'pair-given', part: 'second', made: 20, offered: 23 });
    expect(habit!.usual).toBeLessThan(10);
    expect(others).toEqual([]);
  });

  it('of giving flowers away is seen in the first pass of each round that could', () => {
    const gave = { ...costly, mistakes: ['flower-given'], withFlower: true } as const;
    const often = [...rounds(12, gave), ...rounds(13)];
    expect(namedHabits(often, LEAST_CASES)).toMatchObject([
      { kind: 'flower-given', part: 'second', made: 12, offered: 12 },
    ]);
    // Whoever keeps it at first and gives it away later had a reason to.
    const [held] = rounds(1, { withFlower: true });
    const later = storedChoice({ ...gave, step: 'second-right' });
    expect(
      namedHabits(
        Array.from({ length: 25 }, () => [...held!, later]),
        LEAST_CASES,
      ),
    ).toEqual([]);
  });

  it('is seen in numbers that lean one way in many rounds, of which none is sure', () => {
    const leaning = { step: 'vote', kind: 'vote', verdict: 'cant-say', loss: 0.8, halfWidth: 1 } as const;
    const stopped = rounds(20).map((choices) => [
      ...choices.slice(0, 2),
      storedChoice({ ...leaning, leaning: 'stopped' }),
    ]);
    expect(namedHabits(stopped, LEAST_CASES)).toMatchObject([{ kind: 'stopped', part: 'any', made: 20 }]);
  });

  it('is none under eight cases, with the usual number of them, or where nothing but “another reason” is known', () => {
    const often = (count: number, ...mistakes: readonly string[]) => rounds(count, { ...costly, mistakes });
    expect(namedHabits(often(LEAST_CASES - 1, 'pair-given'), LEAST_CASES)).toEqual([]);
    expect(namedHabits([...often(8, 'pair-given'), ...rounds(600)], LEAST_CASES)).toEqual([]);
    expect(namedHabits(often(40, 'poorer-fit'), LEAST_CASES)).toEqual([]);
    expect(namedHabits(often(40, 'a kind of a later version'), LEAST_CASES)).toEqual([]);
  });
});
