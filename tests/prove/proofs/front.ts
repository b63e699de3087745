// Among the alternatives shown as best is one that no other legal choice beats by much, and those shown are few.
import { type Alternative, alternativesTo } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import { analyze } from '../../../shared-engine/analysis/comparison/analyze.ts';
import { DEEP_BUDGET, SHALLOW_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import type { RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { longRunOf } from '../analysis/long-run.ts';
import { percent, shareText } from '../analysis/proportions.ts';
import type { Proof, Size } from '../proof.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

const CHOICES: Record<Size, number> = { small: 8, full: 400 };
/** Batches for every legal alternative, and then others, more of them, for the best of those and the ones shown. */
const FIRST: Record<Size, number> = { small: 4, full: 48 };
const LONG: Record<Size, number> = { small: 32, full: 480 };
const FOLLOWED = 12;

/** In wins in 100 games. */
const CLOSE = 0.25;
const BARS: Record<Size, number> = { small: 0.4, full: 0.97 };
const MOST_SHOWN = 5;

export const proof: Proof = {
  summary: 'One of those shown as best is within a quarter of a win of the best of all legal choices.',
  async run({ seed, size }) {
    const budget = size === 'full' ? DEEP_BUDGET : SHALLOW_BUDGET;
    const sizes: number[] = [];
    let close = 0;
    for (const decision of choicesFrom(`${seed} front`, CHOICES[size])) {
      const { offered, subject } = decision;
      const { finalists } = analyze(analyst, offered, { subject, budget })!;
      const shown = finalists.filter(({ amongBest }) => amongBest).map(({ alternative }) => alternative);
      const others = promising(decision, shown, size);
      const { means } = longRunOf(offered, [...shown, ...others], LONG[size], FIRST[size]);
      const best = Math.max(...means.slice(0, shown.length));
      sizes.push(shown.length);
      if (Math.max(...means) - best <= CLOSE) close++;
    }
    sizes.sort((a, b) => a - b);
    const median = sizes[Math.floor(sizes.length / 2)]!;
    const small = size === 'small';
    const { low } = wilson(close, sizes.length, NORMAL_POINT['95']);
    return [
      {
        what: `choices that show one within ${CLOSE} of the best of a long run over all legal ones`,
        value: shareText(close, sizes.length),
        bar: `${small ? '' : 'Wilson lower bound '}at least ${percent(BARS[size])} %`,
        ok: (small ? close / sizes.length : low) >= BARS[size],
      },
      {
        what: 'median number shown as best',
        value: median,
        bar: `at most ${MOST_SHOWN}`,
        ok: median <= MOST_SHOWN,
      },
    ];
  },
};

/** Of all legal alternatives that are not shown, those that come out best in a run of their own. */
function promising(
  { offered, subject }: RecordedDecision,
  shown: readonly Alternative[],
  size: Size,
): readonly Alternative[] {
  const known = new Set(shown.map(({ action }) => action.join()));
  const all = alternativesTo(offered, subject, analyst.leaf)!.alternatives;
  const others = all.filter(({ action }) => !known.has(action.join()));
  if (others.length === 0) return [];
  const { means } = longRunOf(offered, others, FIRST[size]);
  return others
    .map((alternative, n) => ({ alternative, mean: means[n]! }))
    .sort((a, b) => b.mean - a.mean)
    .slice(0, FOLLOWED)
    .map(({ alternative }) => alternative);
}
