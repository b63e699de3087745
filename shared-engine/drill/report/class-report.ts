// One drill deal, many pupils → the report of the class, as a value without names.
import type { CompiledCard } from '../../card/compiled.ts';
import type { DrillDeal } from '../format.ts';
import { type ClassMean, classMean } from './class-mean.ts';
import type { ClassEntry } from './entry.ts';
import { type StepSpread, spreadsOf } from './spread.ts';
import { costliestThemes, type ThemeCost } from './themes.ts';

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

/** The order of the entries makes no difference. */
export function classReport(
  { id, title }: Pick<DrillDeal, 'id' | 'title'>,
  entries: readonly ClassEntry[],
  { families }: Pick<CompiledCard, 'families'>,
): ClassReport {
  const steps = spreadsOf(
    entries,
    families.map((family) => family.id),
  );
  const aimed = new Set(steps.flatMap(({ aims }) => aims.map(({ family }) => family)));
  const reviews = entries.flatMap(({ review }) => review ?? []);
  return {
    format: CLASS_REPORT_FORMAT,
    deal: id,
    title: title ?? null,
    pupils: entries.length,
    reviewed: reviews.length,
    toGoStart: classMean(reviews.map(({ toGoStart }) => toGoStart)),
    toGoEnd: classMean(reviews.map(({ toGoEnd }) => toGoEnd)),
    steps,
    themes: costliestThemes(entries),
    families: Object.fromEntries(
      families.filter((family) => aimed.has(family.id)).map((family) => [family.id, family.name]),
    ),
  };
}
