// What racks that were answered come to: how many of each kind, what the passes cost together, which are worth another look.
import { choiceVerdict, hasBetter, inTenths, type Verdict } from '../../../shared-engine/index.ts';
import type { AnsweredRack, RackAnswer } from './model.ts';

export type PassAnswer = Extract<RackAnswer, { readonly kind: 'pass' }>;
export type SectionsAnswer = Extract<RackAnswer, { readonly kind: 'sections' }>;

/** All that a first answer may say, the best first. */
const FIRST_VERDICTS: readonly Verdict[] = ['best', 'just-as-good', 'a-little-worse', 'costly'];

/** How many of the two sections that were named are among the closest. */
export type SectionsMet = 'both' | 'one' | 'neither';

export interface PassSum {
  /** The verdicts that were given, the best first. */
  readonly counts: readonly { readonly verdict: Verdict; readonly count: number }[];
  /** How many tiles closer the best passes come than those made, all racks together. */
  readonly cost: number;
  readonly racks: number;
  /** The rack that makes at least half of it; null where there is none, or no other rack. */
  readonly most: { readonly nth: number; readonly cost: number } | null;
}

export function verdictOf({ review: { choices } }: PassAnswer): Verdict {
  return choiceVerdict(choices[0]!);
}

/** In tiles; what a first answer counts. */
export function costOf({ review: { choices } }: PassAnswer): number {
  return choices[0]!.loss;
}

export function passSum(answered: readonly AnsweredRack[]): PassSum {
  const passes = answered.flatMap(({ nth, answer }) => (answer.kind === 'pass' ? [{ nth, answer }] : []));
  // As they are shown, so that whoever adds them up comes to the same.
  const costs = passes.map(({ nth, answer }) => ({ nth, cost: Number(inTenths(costOf(answer))) }));
  const cost = Math.round(10 * costs.reduce((sum, one) => sum + one.cost, 0)) / 10;
  const [most] = costs.toSorted((a, b) => b.cost - a.cost);
  return {
    counts: FIRST_VERDICTS.map((verdict) => ({
      verdict,
      count: passes.filter(({ answer }) => verdictOf(answer) === verdict).length,
    })).filter(({ count }) => count > 0),
    cost,
    racks: passes.length,
    most: most !== undefined && passes.length > 1 && most.cost > 0 && 2 * most.cost >= cost ? most : null,
  };
}

export function sectionsMet({ named, distances }: SectionsAnswer): SectionsMet {
  const met = distances.filter(({ id, inReach }) => inReach && named.includes(id)).length;
  if (met === 0) return 'neither';
  return met < named.length ? 'one' : 'both';
}

/** How often which, those that never came left out. */
export function metCounts(
  answered: readonly AnsweredRack[],
): readonly { readonly met: SectionsMet; readonly count: number }[] {
  const all = answered.flatMap(({ answer }) => (answer.kind === 'sections' ? [sectionsMet(answer)] : []));
  return (['both', 'one', 'neither'] as const)
    .map((met) => ({ met, count: all.filter((one) => one === met).length }))
    .filter(({ count }) => count > 0);
}

/** The racks of which something better is told, what costs most first; and the others in the order asked. */
export function sortedOut(answered: readonly AnsweredRack[]): {
  readonly again: readonly AnsweredRack[];
  readonly rest: readonly AnsweredRack[];
} {
  const again = answered.filter(({ answer }) => isWorthALook(answer));
  return {
    again: again.toSorted((a, b) => worth(b.answer) - worth(a.answer)),
    rest: answered.filter(({ answer }) => !isWorthALook(answer)),
  };
}

function isWorthALook(answer: RackAnswer): boolean {
  return answer.kind === 'pass' ? hasBetter(verdictOf(answer)) : sectionsMet(answer) === 'neither';
}

function worth(answer: RackAnswer): number {
  return answer.kind === 'pass' ? costOf(answer) : 0;
}
