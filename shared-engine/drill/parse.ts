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
import { type DealPlace, type DrillProblem, drillProblem, placeOf } from './problem.ts';
import { scriptedRacks, scriptProblems } from './scripted.ts';
import { structureProblems } from './structure.ts';

export type ParsedDrill =
  | { readonly ok: true; readonly drill: Drill }
  | { readonly ok: false; readonly problems: readonly DrillProblem[] };

/** More problems than this would help nobody. */
const MAX_PROBLEMS = 60;

/** A deal that is in the format, and where it stands. */
interface Found {
  readonly deal: DrillDeal;
  readonly place: DealPlace;
}

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
  const found: Found[] = [];
  frame.data.deals.forEach((unread, index) => {
    const read = drillDealSchema.safeParse(unread);
    if (read.success) found.push({ deal: read.data, place: numbered(placeOf(read.data), index) });
    else problems.push(...structureProblems(read.error.issues, unreadPlace(unread, index)));
  });
  problems.push(...duplicateProblems(found));
  for (const { deal, place } of found) {
    problems.push(...scriptProblems(deal, frame.data.form, place), ...dealProblems(deal, kernel, place));
  }
  if (!fixed.ok || problems.length > 0) return rejected(problems);
  const { secondCharleston, blindPasses, courtesy, cardHelp, passLog } = fixed.terms;
  const ways = { secondCharleston, blindPasses, courtesy, cardHelp, passLog };
  return { ok: true, drill: { ...file, ...(asked && { ways }), deals: found.map(({ deal }) => deal) } };
}

function dealProblems(deal: DrillDeal, kernel: Kernel, place: DealPlace): readonly DrillProblem[] {
  const { tiles } = deal;
  switch (tiles.kind) {
    case 'random':
      return [];
    case 'manual':
      return rackProblems(scriptedRacks(tiles.racks, deal), deal.dealer, place);
    case 'sampled':
      return constraintProblems(tiles.constraint, deal, kernel, place);
  }
}

function rejected(problems: readonly DrillProblem[]): ParsedDrill {
  return { ok: false, problems: problems.slice(0, MAX_PROBLEMS) };
}

function numbered(place: DealPlace, index: number): DealPlace {
  return { ...place, number: index + 1 };
}

/** Of a deal that is not in the format: its id and title where at least those can be read. */
function unreadPlace(unread: unknown, index: number): DealPlace {
  const { id, title } = drillDealSchema.shape;
  const named = z.object({ id }).safeParse(unread);
  const titled = z.object({ title }).safeParse(unread);
  return {
    id: named.success ? named.data.id : String(index + 1),
    number: index + 1,
    title: (titled.success && titled.data.title) || null,
  };
}

/** One for each id that several deals have, at the second of them. */
function duplicateProblems(found: readonly Found[]): DrillProblem[] {
  return found.flatMap(({ deal, place }, index) => {
    const same = found.filter(({ deal: other }) => other.id === deal.id);
    if (same[1] !== found[index]) return [];
    const text = `it has the id "${deal.id}", as deal ${same[0]!.place.number} has; rename one.`;
    return [drillProblem('duplicate-id', place, text)];
  });
}
