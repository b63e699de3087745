// The proof of the bots' strength in its small size; the full size is `npm run prove -- bots --size full`.
import { expect, it } from 'vitest';
import { proof } from '../prove/proofs/bots.ts';

it('strong bots end near a hand, styles are in order, and guarded ones pass fewer risky tiles', async () => {
  const rows = await proof.run({ seed: 'quadrille', size: 'small' });
  expect(rows.length).toBeGreaterThanOrEqual(10);
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
});
