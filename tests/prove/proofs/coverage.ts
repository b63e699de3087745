// Do 95 % intervals hold what a long run finds in 95 of 100 choices?
import { analyze } from '../../../shared-engine/analysis/comparison/analyze.ts';
import {
  type Budget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { longRunOf } from '../analysis/long-run.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

interface Amount {
  readonly choices: number;
  readonly batches: number;
}

const SHALLOW_AMOUNTS: Record<Size, Amount> = {
  small: { choices: 20, batches: 32 },
  full: { choices: 2_000, batches: 48 },
};
const DEEP_AMOUNTS: Record<Size, Amount | null> = { small: null, full: { choices: 50, batches: 480 } };

/** A few dozen choices say little: at 95 % one in seven hardly ever misses. */
const BARS = { small: [0.85, 1], full: [0.935, 0.965] } as const;

export const proof: Proof = {
  summary: '95 % intervals of the loss hold what a long run of other deals finds.',
  async run({ seed, size }) {
    const deep = DEEP_AMOUNTS[size];
    return [
      row(seed, 'shallow', SHALLOW_BUDGET, SHALLOW_AMOUNTS[size], BARS[size]),
      ...(deep === null ? [] : [row(`${seed} deep`, 'deep', DEEP_BUDGET, deep, BARS.small)]),
    ];
  },
};

function row(
  seed: string,
  name: string,
  budget: Budget,
  { choices, batches }: Amount,
  [low, high]: readonly [number, number],
): ProofRow {
  let held = 0;
  let trials = 0;
  for (const { offered, subject } of choicesFrom(seed, choices)) {
    const { bestAlternative, chosen } = analyze(analyst, offered, { subject, budget })!;
    if (bestAlternative === null) continue;
    const truth = longRunOf(offered, [bestAlternative.alternative, chosen.alternative], batches).difference(
      0,
      1,
    );
    // The long run errs as well: the interval of the difference of two independent means.
    const halfWidth = Math.sqrt(bestAlternative.difference.halfWidth ** 2 + truth.halfWidth ** 2);
    trials++;
    if (Math.abs(bestAlternative.difference.value - truth.value) <= halfWidth + 1e-9) held++;
  }
  const share = held / trials;
  return {
    what: `${name} budget: choices whose interval holds a run of ${batches * 8} other deals`,
    value: shareText(held, trials),
    bar: `${low * 100}–${high * 100} %`,
    ok: share >= low && share <= high,
  };
}
