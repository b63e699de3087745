// One drill deal, many pupils → the report of the class, as a value without names.
import type { CompiledCard } from '../../card/compiled.ts';
import type { DrillDeal } from '../format.ts';
import { discreetSpread } from './anonymity.ts';
import type { ClassEntry } from './entry.ts';
import { type ClassMean, classMean } from './mean.ts';
import { costliestThemes, type ThemeCost } from './mistake-categories.ts';
import { type StepSpread, spreadsOf } from './spread.ts';

export const CLASS_REPORT_FORMAT = 'quadrille-class-report/1';

export interface ClassReport {
  readonly format: typeof CLASS_REPORT_FORMAT;
  /** Id and title of the deal. */
  readonly deal: string;
  readonly title: string | null;
  readonly pupils: number;
  readonly reviewed: number;
  /** Tiles to go as dealt and at the close, over the pupils reviewed. */
  readonly toGoStart: ClassMean | null;
  readonly toGoEnd: ClassMean | null;
  readonly steps: readonly StepSpread[];
  /** Costliest first. */
  readonly themes: readonly ThemeCost[];
  /** Names of the families that were named as aims, by id. */
  readonly families: Readonly<Record<string, string>>;
}

/**
 * Where no pupil may be told from the others: whether no pupil at this seat has this step still to come. Null where
 * single pupils may be shown.
 */
export type Discretion = ((spread: Pick<StepSpread, 'seat' | 'step'>) => boolean) | null;

/** The order of the entries makes no difference. */
export function classReport(
  { id, title }: Pick<DrillDeal, 'id' | 'title'>,
  entries: readonly ClassEntry[],
  { families }: Pick<CompiledCard, 'families'>,
  discretion: Discretion = null,
): ClassReport {
  const spreads = spreadsOf(
    entries,
    families.map((family) => family.id),
  );
  const steps = discretion ? spreads.map((spread) => discreetSpread(spread, discretion(spread))) : spreads;
  const aimed = new Set(steps.flatMap(({ aims }) => aims.map(({ family }) => family)));
  const reviewed = entries.filter(({ review }) => review !== null);
  // The sums of one pupil are that pupil's.
  const told = discretion && reviewed.length === 1 ? [] : reviewed;
  const reviews = told.flatMap(({ review }) => review ?? []);
  return {
    format: CLASS_REPORT_FORMAT,
    deal: id,
    title: title ?? null,
    pupils: entries.length,
    reviewed: reviewed.length,
    toGoStart: classMean(reviews.map(({ toGoStart }) => toGoStart)),
    toGoEnd: classMean(reviews.map(({ toGoEnd }) => toGoEnd)),
    steps,
    themes: costliestThemes(told),
    families: Object.fromEntries(
      families.filter((family) => aimed.has(family.id)).map((family) => [family.id, family.name]),
    ),
  };
}
