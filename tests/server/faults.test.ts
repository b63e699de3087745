// A small size of the faults that `prove -- faults` brings about: nothing acknowledged is lost, nobody is told too much.
import { expect, test } from 'vitest';
import { killed } from '../prove/faults/file-faults.ts';
import { backpressure, malformed } from '../prove/faults/hostile-clients.ts';
import { badBots, unreleasedFile } from '../prove/faults/in-process.ts';

test.each(
  [killed, malformed, backpressure, badBots, unreleasedFile].map(
    (scenario) => [scenario.title, scenario] as const,
  ),
)('nothing acknowledged is lost and nobody is told too much: %s', async (_, scenario) => {
  const { happened, verdict } = await scenario.run({ seed: 'in the tests', size: 'small' });
  expect(verdict.violations).toEqual([]);
  expect(happened).toBeGreaterThan(0);
});
