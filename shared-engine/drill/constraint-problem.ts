// What is wrong with a wish before a rack is drawn: a range upside down, a family unknown, parts that exclude each other.

import type { Kernel } from '../kernels/tiles-to-go/kernel.ts';
import { dealtSize } from '../rules/deal/deal.ts';
import type { Seat } from '../rules/deal/seat.ts';
import { AMOUNTS, rangeOf } from './constraint.ts';
import { impossibleWords } from './constraint-words.ts';
import type { Wish } from './format.ts';
import { type DrillProblem, drillProblem } from './problem.ts';
import { samplerFor } from './sampler.ts';

/** Empty, or the first kind of fault found. */
export function wishProblem(
  wish: Wish,
  seat: Seat,
  dealer: Seat,
  deal: string,
  kernel: Kernel,
): DrillProblem[] {
  const upsideDown = AMOUNTS.filter((name) => rangeOf(wish[name]).from > rangeOf(wish[name]).to);
  if (upsideDown.length > 0) {
    return upsideDown.map((name) => {
      const { from, to } = rangeOf(wish[name]);
      return drillProblem('impossible-wish', deal, `"${name}" goes from ${from} to ${to}; swap them.`);
    });
  }
  const { families } = kernel.card;
  if (wish.family !== undefined && !families.some(({ id }) => id === wish.family)) {
    const known = families.map(({ id }) => id).join(', ');
    const words = `the card has no family "${wish.family}"; choose one of ${known}.`;
    return [drillProblem('unknown-family', deal, words)];
  }
  const size = dealtSize(seat, dealer);
  const sampler = samplerFor(wish, size, kernel);
  return sampler.ok
    ? []
    : [drillProblem('impossible-wish', deal, impossibleWords(wish, sampler.parts, size, kernel))];
}
