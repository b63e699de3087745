// The simulated evening: under every drawn fault nothing acknowledged is lost, and every seeded bug is caught.
import { describe, expect, test } from 'vitest';
import { SEEDED_BUGS } from '../simulator/seeded-bugs.ts';
import { simulate } from '../simulator/simulation.ts';

/** Seeds a test, so that a report of failures says where to look. */
const SEEDS_PER_TEST = 20;

describe('two simulated servers on one disk with four people', () => {
  test.each(Array.from({ length: 12 }, (_, at) => at * SEEDS_PER_TEST))(
    'DL1 DL2 DL8 ID1 ST1 ST2 ST4 keep every invariant under the faults of 20 seeds from %i on',
    async (from) => {
      let choices = 0;
      for (let at = from; at < from + SEEDS_PER_TEST; at++) {
        const outcome = await simulate(`evening ${at}`);
        expect({ seed: `evening ${at}`, violations: outcome.violations }).toEqual({
          seed: `evening ${at}`,
          violations: [],
        });
        choices += outcome.choices;
      }
      expect(choices).toBeGreaterThan(20 * SEEDS_PER_TEST);
    },
  );

  test('repeat an evening exactly for the same seed, and only for it', async () => {
    const [one, other, another] = [await simulate('twice'), await simulate('twice'), await simulate('once')];
    expect(other).toEqual(one);
    expect(another.trace).not.toBe(one.trace);
  });
});

describe('a seeded bug', () => {
  test.each(Object.entries(SEEDED_BUGS))('is caught by the invariants: %s', async (_, assembly) => {
    const found: string[] = [];
    for (let at = 0; at < 40 && found.length === 0; at++) {
      found.push(...(await simulate(`planted ${at}`, assembly)).violations);
    }
    expect(found).not.toEqual([]);
  });
});
