// The claim about the bots' strength, at its small size; the full size is `npm run prove -- bots --size full`.
import { expect, it } from 'vitest';
import { proof } from '../prove/proofs/bots.ts';

it('strong bots end near a hand, styles stand in order, guarded ones give less away', async () => {
  const rows = await proof.run({ seed: 'quadrille', size: 'small' });
  expect(rows.length).toBeGreaterThanOrEqual(10);
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
});
