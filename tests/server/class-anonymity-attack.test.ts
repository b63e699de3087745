// The attack on an anonymous class at its smallest size: everything is fetched after every choice, twice, and compared.
import { expect, test } from 'vitest';
import { proof } from '../prove/proofs/anonymity.ts';

test('AN1 whoever fetches everything after every choice cannot tell who chose what, by difference neither', async () => {
  const rows = await proof.run({ seed: 'quadrille', size: 'small' });
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
}, 240_000);
