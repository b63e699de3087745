// Coverage, blame and power on one set of choices: the long runs that all three compare with are most of the work.
import type { Proof, ProofRow } from '../proof.ts';
import { proof as blame } from './blame.ts';
import { proof as coverage } from './coverage.ts';
import { proof as power } from './power.ts';

export const proof: Proof = {
  summary: 'The claims of coverage, power and blame, on the same choices in one go.',
  async run(input) {
    const rows: ProofRow[] = [];
    for (const each of [coverage, power, blame]) {
      for (const row of await each.run(input)) {
        input.tell?.(row);
        rows.push(row);
      }
    }
    return rows;
  },
};
