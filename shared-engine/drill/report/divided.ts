// The steps at which players are most divided: what a teacher talks about when the group meets again.
import type { Step } from '../../rules/index.ts';
import { DRILL_LIMITS, type Drill } from '../format.ts';
import type { ClassReport } from './class-report.ts';
import type { ChoiceKind } from './entry.ts';
import type { StepSpread } from './spread.ts';

/** How many steps open a meeting. */
const MOST_STEPS = 3;

export interface DividedStep {
  /** Id and title of the deal. */
  readonly deal: string;
  readonly title: string | null;
  readonly step: Step;
  readonly kind: ChoiceKind;
  readonly players: number;
  /** How often two players taken at random chose otherwise, 0–1. */
  readonly division: number;
}

/**
 * The most divided first, from what is told alone. Passes count where everybody held one rack: from different racks
 * people pass differently without being of two minds.
 */
export function dividedSteps(deals: readonly ClassReport[]): readonly DividedStep[] {
  const steps = deals.flatMap(({ deal, title, steps: spreads }) =>
    spreads
      .filter(({ kind, rack }) => kind !== 'pass' || rack !== null)
      .map((spread): DividedStep => {
        const { step, kind, players } = spread;
        return { deal, title, step, kind, players, division: divisionOf(spread) };
      }),
  );
  return steps
    .filter(({ division }) => division > 0)
    .sort((a, b) => b.division - a.division)
    .slice(0, MOST_STEPS);
}

/** Choices that are not told one by one count as all different. */
function divisionOf({ choices }: Pick<StepSpread, 'choices'>): number {
  return 1 - choices.reduce((sum, { share }) => sum + share * share, 0);
}

/** A guided drill of the deals with these steps, the most divided first; null where there are none. */
export function drillOfDivided(steps: readonly DividedStep[], played: Drill): Drill | null {
  const ids = [...new Set(steps.map(({ deal }) => deal))];
  const deals = ids.flatMap((id) => played.deals.filter((deal) => deal.id === id));
  if (deals.length === 0) return null;
  const title = `${played.title}: talk about it`.slice(0, DRILL_LIMITS.title);
  return { ...played, title, form: 'guided', deals };
}
