// Everything that can be wrong with a drill, each a value with a message that names the deal and says what to do.
import type { DrillDeal } from './format.ts';

export const DRILL_PROBLEM_CODES = [
  'not-json',
  'too-large',
  'unsafe-name',
  'unknown-version',
  'not-in-format',
  'bad-card',
  'cannot-play',
  'duplicate-id',
  'more-than-the-set',
  'too-many-copies',
  'too-many-jokers',
  'rack-too-large',
  'cannot-be-scripted',
  'not-a-lesson',
  'impossible-choice',
  'impossible-arrival',
  'unknown-section',
  'impossible-constraint',
  'too-rare',
  'used-up',
] as const;
export type DrillProblemCode = (typeof DRILL_PROBLEM_CODES)[number];

export interface DrillProblem {
  readonly code: DrillProblemCode;
  /** Id of the deal, its number ("5" for the fifth) where it has no usable id, or null for the drill as a whole. */
  readonly deal: string | null;
  /** Fault and what to do, where it is plain which deal is meant. */
  readonly text: string;
  /** Place, fault and what to do. */
  readonly message: string;
}

/** A deal as a teacher knows it: the how-manieth it is, and its title. */
export interface DealPlace {
  /** Its id, or its number where it has no usable one. */
  readonly id: string;
  /** From 1. */
  readonly number: number;
  readonly title: string | null;
}

/** The place of a deal in its drill; one that is looked at alone is the first. */
export function placeOf(
  { id, title }: Pick<DrillDeal, 'id' | 'title'>,
  deals: readonly DrillDeal[] = [],
): DealPlace {
  const found = deals.findIndex((deal) => deal.id === id);
  return { id, number: Math.max(0, found) + 1, title: title ?? null };
}

/** `Deal 2 (Two pairs): it uses …`; null is the drill as a whole. */
export function drillProblem(code: DrillProblemCode, place: DealPlace | null, text: string): DrillProblem {
  return { code, deal: place?.id ?? null, text, message: `${placeName(place)}: ${text}` };
}

function placeName(place: DealPlace | null): string {
  if (place === null) return 'Drill';
  return `Deal ${place.number}${place.title === null ? '' : ` (${place.title})`}`;
}
