// The report of a class about one deal of a drill: a value without names.
import type { CompiledCard } from '../../card/index.ts';
import type { DrillDeal } from '../format.ts';
import { anonymizedSpread } from './anonymity.ts';
import type { ClassEntry } from './entry.ts';
import { type ClassMean, classMean } from './mean.ts';
import { costliestMistakes, type MistakeCost } from './mistake-categories.ts';
import { type StepSpread, spreadsOf } from './spread.ts';

export const CLASS_REPORT_FORMAT = 'quadrille-class-report/1';

export interface ClassReport {
  readonly format: typeof CLASS_REPORT_FORMAT;
  /** Id and title of the deal. */
  readonly deal: string;
  readonly title: string | null;
  readonly players: number;
  readonly reviewed: number;
  /** Tiles to go as dealt and at the close, over the players reviewed. */
  readonly toGoStart: ClassMean | null;
  readonly toGoEnd: ClassMean | null;
  readonly steps: readonly StepSpread[];
  /** Costliest first. */
  readonly mistakes: readonly MistakeCost[];
  /** Names of the sections that players aimed at, by id. */
  readonly sections: Readonly<Record<string, string>>;
}

/**
 * Whether every player at the seat has chosen at the step, which anonymous choices wait for. Null where the report may
 * show what one player alone chose.
 */
export type Anonymity = ((spread: Pick<StepSpread, 'seat' | 'step'>) => boolean) | null;

/** The order of the entries makes no difference. */
export function classReport(
  { id, title }: Pick<DrillDeal, 'id' | 'title'>,
  entries: readonly ClassEntry[],
  { sections }: Pick<CompiledCard, 'sections'>,
  anonymity: Anonymity = null,
): ClassReport {
  const spreads = spreadsOf(
    entries,
    sections.map((section) => section.id),
  );
  const steps = anonymity ? spreads.map((spread) => anonymizedSpread(spread, anonymity(spread))) : spreads;
  const aimed = new Set(steps.flatMap(({ aims }) => aims.map(({ section }) => section)));
  const reviewed = entries.filter(({ review }) => review !== null);
  // Sums over a single player would show that player's own figures.
  const shown = anonymity && reviewed.length === 1 ? [] : reviewed;
  const reviews = shown.flatMap(({ review }) => review ?? []);
  return {
    format: CLASS_REPORT_FORMAT,
    deal: id,
    title: title ?? null,
    players: entries.length,
    reviewed: reviewed.length,
    toGoStart: classMean(reviews.map(({ toGoStart }) => toGoStart)),
    toGoEnd: classMean(reviews.map(({ toGoEnd }) => toGoEnd)),
    steps,
    mistakes: costliestMistakes(shown),
    sections: Object.fromEntries(
      sections.filter((section) => aimed.has(section.id)).map((section) => [section.id, section.name]),
    ),
  };
}
