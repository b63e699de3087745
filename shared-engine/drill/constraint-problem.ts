// Faults of a constraint found before drawing: a reversed range, an unknown section, parts that exclude each other.
import type { Kernel } from '../kernels/index.ts';
import { dealtSize } from '../rules/index.ts';
import { AMOUNTS, rangeOf } from './constraint.ts';
import { impossibleMessage } from './constraint-messages.ts';
import type { Constraint, DrillDeal } from './format.ts';
import { type DealPlace, type DrillProblem, drillProblem } from './problem.ts';
import { samplerFor } from './sampler.ts';

/** The first kind of fault found in the constraint of a deal's rack, or none. */
export function constraintProblems(
  constraint: Constraint,
  { seat, dealer }: DrillDeal,
  kernel: Kernel,
  deal: DealPlace,
): DrillProblem[] {
  const reversed = AMOUNTS.filter((name) => rangeOf(constraint[name]).from > rangeOf(constraint[name]).to);
  if (reversed.length > 0) {
    return reversed.map((name) => {
      const { from, to } = rangeOf(constraint[name]);
      return drillProblem(
        'impossible-constraint',
        deal,
        `"${name}" goes from ${from} to ${to}; swap the two numbers.`,
      );
    });
  }
  const { sections } = kernel.card;
  if (constraint.section !== undefined && !sections.some(({ id }) => id === constraint.section)) {
    const known = sections.map(({ id }) => id).join(', ');
    const text = `the card has no section "${constraint.section}"; choose one of ${known}.`;
    return [drillProblem('unknown-section', deal, text)];
  }
  const size = dealtSize(seat, dealer);
  const sampler = samplerFor(constraint, size, kernel);
  return sampler.ok
    ? []
    : [
        drillProblem(
          'impossible-constraint',
          deal,
          impossibleMessage(constraint, sampler.parts, size, kernel),
        ),
      ];
}
