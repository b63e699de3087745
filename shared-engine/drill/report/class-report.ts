// The report of a class about one deal of a drill: a value without names.
import type { CompiledCard } from '../../card/index.ts';
import type { DrillDeal } from '../format.ts';
import { analysisIn, type FrozenSpread, type StoredAnalyses, spreadOfFrozen } from './anonymity.ts';
import type { ClassEntry } from './entry.ts';
import { type ClassMean, classMean } from './mean.ts';
import { costliestMistakes, frozenMistakes, type MistakeCost } from './mistake-costs.ts';
import { type StepSpread, spreadsOf } from './spread.ts';

export const CLASS_REPORT_FORMAT = 'quadrille-class-report/2';

export interface ClassReport {
  readonly format: typeof CLASS_REPORT_FORMAT;
  /** Id and title of the deal. */
  readonly deal: string;
  readonly title: string | null;
  readonly players: number;
  /** Choices still being analyzed: before that no cost is told. */
  readonly pending: number;
  /** Tiles to go as dealt and at the close, over the players who have come there. */
  readonly toGoStart: ClassMean | null;
  readonly toGoEnd: ClassMean | null;
  readonly steps: readonly StepSpread[];
  /** Costliest first; none while choices are still being analyzed, because their order would change. */
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
  const toGo = entries.flatMap((entry) => entry.toGo ?? []);
  const pending = pendingIn(steps);
  return {
    format: CLASS_REPORT_FORMAT,
    deal: id,
    title: title ?? null,
    players: entries.length,
    pending,
    toGoStart: classMean(toGo.map(({ start }) => start)),
    toGoEnd: classMean(toGo.map(({ end }) => end)),
    steps,
    mistakes: pending === 0 ? costliestMistakes(entries) : [],
    sections: sectionsNamed(steps, card),
  };
}

function pendingIn(steps: readonly StepSpread[]): number {
  return steps.reduce((sum, { pending }) => sum + pending, 0);
}

/** What is told of the steps of a deal in an anonymous class. */
export interface FrozenDeal {
  /** Those who were dealt the deal. */
  readonly players: number;
  readonly frozen: readonly FrozenSpread[];
  readonly analyses: StoredAnalyses;
}

/** The report of an anonymous class: it holds what was frozen and what follows from that, nothing of a single review. */
export function anonymousReport(
  { id, title }: Pick<DrillDeal, 'id' | 'title'>,
  { players, frozen, analyses }: FrozenDeal,
  card: Pick<CompiledCard, 'sections'>,
): ClassReport {
  const steps = frozen.map((spread) => spreadOfFrozen(spread, analyses));
  const pending = pendingIn(steps);
  const alike = frozen.flatMap(({ cells }) =>
    cells.flatMap((cell) => {
      const analyzed = analysisIn(cell, analyses);
      if (analyzed === null) return [];
      return [{ count: cell.count, loss: analyzed.loss?.value ?? 0, mistakes: analyzed.mistakes }];
    }),
  );
  return {
    format: CLASS_REPORT_FORMAT,
    deal: id,
    title: title ?? null,
    players,
    pending,
    toGoStart: null,
    toGoEnd: null,
    steps,
    mistakes: pending === 0 ? frozenMistakes(alike) : [],
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
