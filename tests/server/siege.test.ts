// The siege at its smallest size: the attacks that once got through, on the built server as a process of its own.
import { expect, test } from 'vitest';
import { proof } from '../prove/proofs/siege.ts';

test('AC1 AC2 AC4 AC6 AC7 AC8 LM1 LM6 LM7 RS4 ST8 ST9 WK1 WK3 WK5 WK6 the built server holds against every attack that once got through', async () => {
  const rows = await proof.run({ seed: 'siege', size: 'small' });
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
  expect(rows.length).toBeGreaterThan(31);
}, 240_000);
