// A small size of the faults that `prove -- faults` causes: nothing acknowledged is lost, nobody is told too much.
import { expect, test } from 'vitest';
import { killed } from '../prove/faults/file-faults.ts';
import { backpressure, malformed } from '../prove/faults/hostile-clients.ts';
import { badBots, unreleasedFile } from '../prove/faults/in-process.ts';
import type { Scenario } from '../prove/faults/scenario.ts';

function small(scenario: Scenario): () => Promise<void> {
  return async () => {
    const { happened, verdict } = await scenario.run({ seed: 'in the tests', size: 'small' });
    expect(verdict.violations).toEqual([]);
    expect(happened).toBeGreaterThan(0);
  };
}

test('DL1 ST2 nothing acknowledged is lost when the server is killed at random points', small(killed));

test('DL4 damaged, deep and random frames disturb no table', small(malformed));

test(
  'DL5 a connection whose client reads nothing is closed before 64 KiB and one message wait',
  small(backpressure),
);

test('SC3 bots that throw, hang or answer nonsense hold up no round, among all other faults', small(badBots));

test('a file of an unreleased version is rejected in words and left as it was', small(unreleasedFile));
