// How many verdicts are others where the neighbors are casual, typical or strong players instead of a little of each, and
// where the games after the exchange are a race.
import { analyze } from '../../../shared-engine/analysis/comparison/analyze.ts';
import {
  type Budget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import {
  createRobustness,
  NEIGHBOR_STYLES,
  type Robustness,
} from '../../../shared-engine/analysis/comparison/robustness.ts';
import type { Verdict } from '../../../shared-engine/analysis/comparison/verdict.ts';
import { analyst, choicesFrom, simd } from '../analysis/choices.ts';
import { shareText } from '../analysis/proportions.ts';
import { racingAnalyst } from '../analysis/racing.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 6, full: 600 };
/** Rounds whose games the racing play is fitted to; in the small size that would be most of the work. */
const RACES: Record<Size, number> = { small: 0, full: 5000 };
const BUDGETS: Record<Size, Budget> = { small: SHALLOW_BUDGET, full: DEEP_BUDGET };

/** A choice told to be costly may be as good as any among other people; more often than this, styles would have to be asked. */
const MOST_OPPOSITE = 0.05;

interface Found extends Robustness {
  readonly verdict: Verdict;
  /** Null where no racing play was fitted. */
  readonly racing: Verdict | null;
}

export const proof: Proof = {
  summary: 'Few verdicts turn into their opposite among casual, typical or strong neighbors.',
  async run({ seed, size }) {
    const robustnessOf = createRobustness(analyst, simd);
    const racer = RACES[size] > 0 ? racingAnalyst(`${seed} race`, RACES[size]) : null;
    const found = choicesFrom(`${seed} robustness`, CHOICES[size]).map(({ offered, subject }): Found => {
      const terms = { subject, budget: BUDGETS[size] };
      const { verdict } = analyze(analyst, offered, terms)!;
      const racing = racer && analyze(racer, offered, terms)!.verdict;
      return { verdict, racing, ...robustnessOf(offered, verdict, terms)! };
    });
    const costly = found.filter(({ verdict }) => verdict === 'costly');
    const holds = (each: Found) => each.turns.length === 0;
    const opposite = found.filter(({ verdict, verdicts }) =>
      NEIGHBOR_STYLES.some((style) => isOpposite(verdict, verdicts[style])),
    ).length;
    return [
      ...racingRows(found),
      reported(
        'verdicts that are the same among all three',
        shareText(found.filter(holds).length, found.length),
      ),
      reported('of those costly', shareText(costly.filter(holds).length, costly.length)),
      ...NEIGHBOR_STYLES.map((style) =>
        reported(
          `verdicts that are others among ${style} neighbors`,
          shareText(found.filter(({ turns }) => turns.includes(style)).length, found.length),
        ),
      ),
      {
        what: 'verdicts that turn into their opposite among one of them: costly, and best or just as good',
        value: shareText(opposite, found.length),
        bar: size === 'small' ? 'at most one' : `at most ${MOST_OPPOSITE * 100} %`,
        ok: size === 'small' ? opposite <= 1 : opposite <= MOST_OPPOSITE * found.length,
      },
    ];
  },
};

function racingRows(found: readonly Found[]): readonly ProofRow[] {
  const others = found.filter(({ verdict, racing }) => racing !== null && racing !== verdict);
  const opposite = others.filter(({ verdict, racing }) => isOpposite(verdict, racing!)).length;
  if (found.every(({ racing }) => racing === null)) return [];
  return [
    reported(
      'verdicts that are others where nobody looks at what lies open after the exchange',
      `${shareText(others.length, found.length)}; opposite ${opposite}`,
    ),
  ];
}

function reported(what: string, value: string): ProofRow {
  return { what, value, bar: 'reported', ok: true };
}

function isOpposite(one: Verdict, other: Verdict): boolean {
  const isFine = (verdict: Verdict) => verdict === 'best' || verdict === 'just-as-good';
  return (one === 'costly' && isFine(other)) || (other === 'costly' && isFine(one));
}
