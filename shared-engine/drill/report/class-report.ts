// The report of a class about one deal of a drill: a value without names.
import type { CompiledCard } from '../../card/index.ts';
import type { DrillDeal } from '../format.ts';
import { type FrozenSpread, spreadOfFrozen } from './anonymity.ts';
import type { ClassEntry } from './entry.ts';
import { type ClassMean, classMean } from './mean.ts';
import { costliestMistakes, frozenMistakes, type MistakeCost } from './mistake-costs.ts';
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

/** The order of the entries makes no difference. */
export function classReport(
  { id, title }: Pick<DrillDeal, 'id' | 'title'>,
  entries: readonly ClassEntry[],
  card: Pick<CompiledCard, 'sections'>,
): ClassReport {
  const steps = spreadsOf(
    entries,
    card.sections.map((section) => section.id),
  );
  const reviews = entries.flatMap(({ review }) => review ?? []);
  return {
    format: CLASS_REPORT_FORMAT,
    deal: id,
    title: title ?? null,
    players: entries.length,
    reviewed: reviews.length,
    toGoStart: classMean(reviews.map(({ toGoStart }) => toGoStart)),
    toGoEnd: classMean(reviews.map(({ toGoEnd }) => toGoEnd)),
    steps,
    mistakes: costliestMistakes(entries),
    sections: sectionsNamed(steps, card),
  };
}

/**
 * The report of an anonymous class: it holds what was frozen and what follows from that, nothing of a single review.
 * `players` is the number of those who were dealt the deal.
 */
export function anonymousReport(
  { id, title }: Pick<DrillDeal, 'id' | 'title'>,
  players: number,
  frozen: readonly FrozenSpread[],
  card: Pick<CompiledCard, 'sections'>,
): ClassReport {
  const steps = frozen.map(spreadOfFrozen);
  return {
    format: CLASS_REPORT_FORMAT,
    deal: id,
    title: title ?? null,
    players,
    reviewed: 0,
    toGoStart: null,
    toGoEnd: null,
    steps,
    mistakes: frozenMistakes(frozen),
    sections: sectionsNamed(steps, card),
  };
}

function sectionsNamed(
  steps: readonly StepSpread[],
  { sections }: Pick<CompiledCard, 'sections'>,
): Readonly<Record<string, string>> {
  const aimed = new Set(steps.flatMap(({ aims }) => aims.map(({ section }) => section)));
  return Object.fromEntries(
    sections.filter(({ id }) => aimed.has(id)).map((section) => [section.id, section.name]),
  );
}
