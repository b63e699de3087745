// A small size of the faults that `prove -- faults` brings about: nothing acknowledged is lost, nobody is told too much.
import { expect, test } from 'vitest';
import { cutOff, malformed } from '../prove/faults/hostile-clients.ts';
import { badBots, firstVersion } from '../prove/faults/in-process.ts';
import { killed } from '../prove/faults/file-faults.ts';

test.each(
  [killed, malformed, cutOff, badBots, firstVersion].map((scenario) => [scenario.what, scenario] as const),
)('%s', async (_, scenario) => {
  const { happened, verdict } = await scenario.run({ seed: 'in the tests', size: 'small' });
  expect(verdict.faults).toEqual([]);
  expect(happened).toBeGreaterThan(0);
});
