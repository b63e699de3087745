// The choices that a comparison does not tell apart from the best: the best is among them, and they are few.

import { type Alternative, alternativesTo } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import { analyze } from '../../../shared-engine/analysis/comparison/analyze.ts';
import { DEEP_BUDGET, SHALLOW_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import type { RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { longRunOf } from '../analysis/long-run.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 10, full: 120 };
const BATCHES: Record<Size, number> = { small: 32, full: 256 };

/** Alternatives that the long run follows to the end: the best-looking ones and the finalists. */
const FOLLOWED = 24;

/** Ten choices say little, and are looked at briefly. */
const BARS: Record<Size, number> = { small: 0.6, full: 0.975 };
const MOST = 5;

export const proof: Proof = {
  summary: 'The best choice of a long run is among those told as best, and those are few.',
  async run({ seed, size }) {
    const sizes: number[] = [];
    let holds = 0;
    let near = 0;
    for (const decision of choicesFrom(`${seed} tie`, CHOICES[size])) {
      const { offered, subject } = decision;
      const budget = size === 'full' ? DEEP_BUDGET : SHALLOW_BUDGET;
      const { finalists } = analyze(analyst, offered, { subject, budget })!;
      const known = finalists.map(({ alternative }) => alternative);
      const others = alternativesIn(decision)
        .slice(0, FOLLOWED)
        .filter((other) => !isAmong(other, known));
      const followed = [...known, ...others];
      const longRun = longRunOf(offered, followed, BATCHES[size]);
      const winner = longRun.means.indexOf(Math.max(...longRun.means));
      const best = finalists.flatMap(({ amongBest }, n) => (amongBest ? [n] : []));
      sizes.push(best.length);
      if (best.includes(winner)) holds++;
      const lead = Math.min(...best.map((n) => longRun.means[winner]! - longRun.means[n]!));
      if (lead <= 0.25) near++;
    }
    sizes.sort((a, b) => a - b);
    const median = sizes[Math.floor(sizes.length / 2)]!;
    return [
      {
        what: `choices that have the best of ${BATCHES[size] * 8} other deals among their best`,
        value: shareText(holds, sizes.length),
        bar: `at least ${BARS[size] * 100} %`,
        ok: holds >= BARS[size] * sizes.length,
      },
      {
        what: 'choices that have one within a quarter of a win in 100 of it among their best',
        value: shareText(near, sizes.length),
        bar: 'reported',
        ok: true,
      },
      { what: 'median number of the best', value: median, bar: `at most ${MOST}`, ok: median <= MOST },
    ];
  },
};

function isAmong(
  { action }: { readonly action: readonly number[] },
  known: readonly { readonly action: readonly number[] }[],
): boolean {
  return known.some((other) => other.action.join() === action.join());
}

/** Everything that could have been chosen, best tiles left first. */
function alternativesIn({ offered, subject }: RecordedDecision): readonly Alternative[] {
  return alternativesTo(offered, subject, analyst.leaf)?.alternatives ?? [];
}
