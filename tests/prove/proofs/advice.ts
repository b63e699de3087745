// What a review tells to be better, taken instead of what was passed, in the deals as they really were: by the chance at the
// close, where all four play the exchange on as the analysis has them do. No game is played out.
import type { Alternative } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import { analyze } from '../../../shared-engine/analysis/comparison/analyze.ts';
import {
  type ComparisonBudget,
  DEEP_BUDGET,
  SHALLOW_BUDGET,
} from '../../../shared-engine/analysis/comparison/budget.ts';
import { hasBetter } from '../../../shared-engine/analysis/review/choice-verdict.ts';
import type { StyleName } from '../../../shared-engine/policy/styles.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { analyst, roundOf } from '../analysis/choices.ts';
import { differenceOf, differenceText, shareText } from '../analysis/proportions.ts';
import { passOf, worthInTrueDeal } from '../analysis/true-deal.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { sampleOf } from '../statistics/student.ts';

/** The steady one passes what the judge prefers, as far as a bot can know it: there advice has little left to gain. */
const STYLES: Record<Size, readonly StyleName[]> = {
  small: ['typical'],
  full: ['typical', 'strong', 'steady'],
};
/** Deals of each style, one pass of each seat in it. */
const DEALS: Record<Size, number> = { small: 5, full: 500 };
const BUDGETS: Record<Size, ComparisonBudget> = { small: SHALLOW_BUDGET, full: DEEP_BUDGET };

interface Advised {
  /** By so much the review says that another pass is better; null where it tells of nothing better. */
  readonly told: number | null;
  /** By so much it was in the true deal, in wins in 100 games; 0 where nothing better is told. */
  readonly gained: number;
}

export const proof: Proof = {
  summary:
    'What the review tells to be better is worth more in the deals as they really were, at their close.',
  async run({ seed, size, tell }) {
    return STYLES[size].flatMap((style) => {
      const rows = rowsOf(style, seed, size);
      for (const row of rows) tell?.(row);
      return rows;
    });
  },
};

function rowsOf(style: StyleName, seed: string, size: Size): readonly ProofRow[] {
  const deals = Array.from({ length: DEALS[size] }, (_, deal) =>
    advisedIn(style, `${seed} ${style} ${deal}`, deal, BUDGETS[size]),
  );
  // The four seats of a deal make one number, so that the numbers are independent.
  const gains = deals.map((seats) => meanGain(seats));
  const all = deals.flat();
  const told = all.filter((advised) => advised.told !== null);
  const { low, high } = differenceOf(gains);
  const held = { small: high >= 0, full: low > 0 }[size];
  // A few deals can only show that it is not worse.
  const bar = { small: '99 % interval not below 0', full: '99 % interval above 0' }[size];
  return [
    {
      what: `${style} bots: a pass as the review advises minus what was passed, wins in 100 games, paired by deal`,
      value: differenceText(gains),
      bar: style === 'steady' ? 'reported' : bar,
      ok: style === 'steady' || held,
    },
    {
      what: `${style} bots: passes of which something better is told; what it gains on average, told and in the true deals`,
      value: `${shareText(told.length, all.length)}${told.length < 2 ? '' : `; ${meanTold(told).toFixed(2)}, ${meanGain(told).toFixed(2)}`}`,
      bar: 'reported',
      ok: true,
    },
  ];
}

function meanTold(advised: readonly Advised[]): number {
  return sampleOf(advised.map(({ told }) => told ?? 0)).mean;
}

function meanGain(advised: readonly Advised[]): number {
  return sampleOf(advised.map(({ gained }) => gained)).mean;
}

function advisedIn(
  style: StyleName,
  name: string,
  deal: number,
  budget: ComparisonBudget,
): readonly Advised[] {
  const round = roundOf(style, name, deal);
  return SEATS.map((seat) => {
    const decision = passOf(round, seat, deal + seat);
    const terms = { subject: 'tiles', budget } as const;
    const { verdict, chosen, bestAlternative } = analyze(analyst, decision.offered, terms)!;
    if (bestAlternative === null || !hasBetter(verdict)) return { told: null, gained: 0 };
    const passes: readonly Alternative[] = [bestAlternative.alternative, chosen.alternative];
    const [better, passed] = worthInTrueDeal(round, decision, passes, deal);
    return { told: bestAlternative.difference.value, gained: better! - passed! };
  });
}
