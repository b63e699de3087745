// The proofs about the review in their small size; the full sizes are `npm run prove -- NAME --size full`.
import { describe, expect, it } from 'vitest';
import { proof as advice } from '../prove/proofs/advice.ts';
import { proof as belief } from '../prove/proofs/belief.ts';
import { proof as blame } from '../prove/proofs/blame.ts';
import { proof as coverage } from '../prove/proofs/coverage.ts';
import { proof as exact } from '../prove/proofs/exact.ts';
import { proof as front } from '../prove/proofs/front.ts';
import { proof as habits } from '../prove/proofs/habits.ts';
import { proof as leak } from '../prove/proofs/leak.ts';
import { proof as ledger } from '../prove/proofs/ledger.ts';
import { proof as neighbors } from '../prove/proofs/neighbors.ts';
import { proof as power } from '../prove/proofs/power.ts';
import { proof as repeat } from '../prove/proofs/repeat.ts';
import { proof as robustness } from '../prove/proofs/robustness.ts';
import { proof as story } from '../prove/proofs/story.ts';
import { proof as strength } from '../prove/proofs/strength.ts';
import { proof as words } from '../prove/proofs/words.ts';

const PROOFS = {
  ...{ advice, leak, exact, coverage, blame, power, front, belief, strength, repeat, story, words, ledger },
  ...{ habits, neighbors, robustness },
};

describe('a proof in its small size', () => {
  it.each(Object.entries(PROOFS))(
    'holds: %s',
    async (_, proof) => {
      const rows = await proof.run({ seed: 'quadrille', size: 'small' });
      expect(rows.length).toBeGreaterThan(0);
      expect(rows.filter(({ ok }) => !ok)).toEqual([]);
    },
    240_000,
  );
});
