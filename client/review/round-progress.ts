// How far a rack came from step to step: the numbers of a chart, and the same in words.
import type { Ledger, PassReview, Review } from '../../shared-engine/index.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { DEEP } from './deep-strings.ts';

export interface ProgressPoint {
  readonly name: string;
  readonly value: number;
  /** Half the width of the interval, 0 for what is known exactly. */
  readonly halfWidth: number;
}

export interface RoundProgress {
  /** Wins in 100 games, or tiles to go. */
  readonly kind: 'wins' | 'toGo';
  readonly points: readonly ProgressPoint[];
}

/** Wins after each pass once luck and choices are known, or every pass has been played on; before that the tiles to go. */
export function roundProgress({ choices, toGoStart, ledger }: Review): RoundProgress {
  if (ledger !== null) return { kind: 'wins', points: ledgerPoints(ledger) };
  const passes = choices.filter((choice): choice is PassReview => choice.kind === 'pass');
  const wins = passes.flatMap(({ step, analysis }) => {
    const own = analysis.depth === 'deep' ? analysis.finalists[analysis.played] : undefined;
    return own ? [{ name: STEP_NAMES[step], ...own.winProbability }] : [];
  });
  if (wins.length > 1 && wins.length === passes.length) return { kind: 'wins', points: wins };
  const toGo = passes.map(({ step, toGoAfter }) => ({
    name: STEP_NAMES[step],
    value: toGoAfter,
    halfWidth: 0,
  }));
  return { kind: 'toGo', points: [{ name: DEEP.start, value: toGoStart, halfWidth: 0 }, ...toGo] };
}

/** What the seat could expect when it was dealt, after each pass, and at the close, of which a sentence tells as well. */
function ledgerPoints({ start, close, entries }: Ledger): readonly ProgressPoint[] {
  const passes = entries.flatMap(({ kind, step }, n) => {
    const next = entries[n + 1];
    return kind === 'pass' && next ? [{ name: STEP_NAMES[step], ...next.value }] : [];
  });
  return [{ name: DEEP.start, ...start }, ...passes, { name: DEEP.close, ...close }];
}

/** The chart for those who do not see it. */
export function progressDescription({ kind, points }: RoundProgress): string {
  const what = kind === 'wins' ? 'Wins in 100 games' : 'Tiles away';
  const figures = points.map(({ name, value }) => `${name} ${kind === 'wins' ? value.toFixed(1) : value}`);
  return `${what}: ${figures.join(', ')}.`;
}
