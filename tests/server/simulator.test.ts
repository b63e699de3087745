// The simulated evening: whatever a seed thinks of, nothing acknowledged is lost; and whoever plants a bug is caught.
import { describe, expect, test } from 'vitest';
import { PLANTED } from '../simulator/seeded-bugs.ts';
import { simulate } from '../simulator/simulation.ts';

/** Seeds a test, so that a failing one is found within its line of the report. */
const A_TEST = 50;

describe('two servers, one disk, four people', () => {
  test.each(Array.from({ length: 10 }, (_, at) => at * A_TEST))('seeds from %i on', async (from) => {
    let choices = 0;
    for (let at = from; at < from + A_TEST; at++) {
      const outcome = await simulate(`evening ${at}`);
      expect({ seed: `evening ${at}`, faults: outcome.faults }).toEqual({
        seed: `evening ${at}`,
        faults: [],
      });
      choices += outcome.choices;
    }
    expect(choices).toBeGreaterThan(20 * A_TEST);
  });

  test('the same seed twice is the same evening', async () => {
    const [one, other, another] = [await simulate('twice'), await simulate('twice'), await simulate('once')];
    expect(other).toEqual(one);
    expect(another.trace).not.toBe(one.trace);
  });
});

describe('a planted bug', () => {
  test.each(Object.entries(PLANTED))('%s is caught', async (_, assembly) => {
    const found: string[] = [];
    for (let at = 0; at < 40 && found.length === 0; at++) {
      found.push(...(await simulate(`planted ${at}`, assembly)).faults);
    }
    expect(found).not.toEqual([]);
  });
});
