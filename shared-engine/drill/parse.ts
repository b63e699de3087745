// Reads a drill: from what JSON.parse returned to one that can be dealt, or to every problem found in it.
import { z } from 'zod';
import type { Kernel } from '../kernels/index.ts';
import { termsFrom } from '../rules/index.ts';
import { boundsProblem } from './bounds.ts';
import { constraintProblems } from './constraint-problem.ts';
import {
  askedWaysSchema,
  DRILL_LIMITS,
  type Drill,
  type DrillDeal,
  drillDealSchema,
  drillSchema,
} from './format.ts';
import { rackProblems } from './manual.ts';
import { type DrillProblem, drillProblem } from './problem.ts';
import { scriptedRacks, scriptProblems } from './scripted.ts';
import { structureProblems } from './structure.ts';

export type ParsedDrill =
  | { readonly ok: true; readonly drill: Drill }
  | { readonly ok: false; readonly problems: readonly DrillProblem[] };

/** More problems than this would help nobody. */
const MAX_PROBLEMS = 60;

/** The drill with its deals not parsed yet, so that a fault in one deal hides none in another. */
const frameSchema = drillSchema.extend({
  ways: askedWaysSchema.exactOptional(),
  deals: z.array(z.unknown()).min(1).max(DRILL_LIMITS.deals).readonly(),
});

/**
 * Takes what JSON.parse returned; never throws. Each deal of an accepted drill can be dealt, unless the racks of a
 * constraint are too rare to find, which only drawing tells.
 */
export function parseDrill(json: unknown, kernel: Kernel): ParsedDrill {
  const unreadable = boundsProblem(json);
  if (unreadable !== null) return { ok: false, problems: [unreadable] };
  const frame = frameSchema.safeParse(json);
  if (!frame.success) return rejected(structureProblems(frame.error.issues, null));

  const problems: DrillProblem[] = [];
  const { ways: asked, ...file } = frame.data;
  const fixed = termsFrom(asked ?? {}, 'class');
  if (!fixed.ok) problems.push(drillProblem('cannot-play', null, fixed.message));
  const deals: DrillDeal[] = [];
  frame.data.deals.forEach((unread, index) => {
    const read = drillDealSchema.safeParse(unread);
    if (read.success) deals.push(read.data);
    else problems.push(...structureProblems(read.error.issues, nameOf(unread, index)));
  });
  for (const id of duplicates(deals.map((deal) => deal.id))) {
    problems.push(drillProblem('duplicate-id', id, 'two deals have this id; rename one.'));
  }
  for (const deal of deals) {
    problems.push(...scriptProblems(deal, frame.data.form), ...dealProblems(deal, kernel));
  }
  if (!fixed.ok || problems.length > 0) return rejected(problems);
  const { secondCharleston, blindPasses, courtesy, cardHelp, passLog } = fixed.terms;
  const ways = { secondCharleston, blindPasses, courtesy, cardHelp, passLog };
  return { ok: true, drill: { ...file, ...(asked && { ways }), deals } };
}

function dealProblems(deal: DrillDeal, kernel: Kernel): readonly DrillProblem[] {
  const { tiles } = deal;
  switch (tiles.kind) {
    case 'random':
      return [];
    case 'manual':
      return rackProblems(scriptedRacks(tiles.racks, deal), deal.dealer, deal.id);
    case 'sampled':
      return constraintProblems(tiles.constraint, deal, kernel);
  }
}

function rejected(problems: readonly DrillProblem[]): ParsedDrill {
  return { ok: false, problems: problems.slice(0, MAX_PROBLEMS) };
}

function nameOf(unread: unknown, index: number): string {
  const named = z.object({ id: drillDealSchema.shape.id }).safeParse(unread);
  return named.success ? named.data.id : String(index + 1);
}

function duplicates(ids: readonly string[]): string[] {
  return [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))];
}
