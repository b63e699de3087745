// A long run that shares nothing with the analysis: other worlds, other noise, every alternative to the end.
import {
  createWorldSource,
  type Estimate,
  estimate,
  type OfferedChoice,
  type RaceAlternative,
  RESULT_WIDTH,
} from '../../../shared-engine/index.ts';
import { analyst } from './choices.ts';

/** No analysis uses this seed. */
const SEED = 0x0e_fe_0e_ce;

export interface Reference {
  /** How far one alternative is ahead of another, each by its place, with a 95 % interval. */
  ahead(one: number, other: number): Estimate;
  /** Mean outlook of each. */
  readonly means: readonly number[];
}

export function referenceOf(
  { situation }: OfferedChoice,
  alternatives: readonly RaceAlternative[],
  batches: number,
): Reference {
  const source = createWorldSource(analyst.belief, analyst.playouts, situation, SEED);
  const acts = alternatives.map(
    ({ act }) =>
      () =>
        act,
  );
  const { means } = source.play(0, batches, acts);
  const column = (a: number): Float64Array =>
    Float64Array.from(
      { length: batches },
      (_, b) => means[(b * acts.length + a) * RESULT_WIDTH + situation.seat]!,
    );
  const columns = acts.map((_, a) => column(a));
  return {
    means: columns.map((values) => values.reduce((sum, value) => sum + value, 0) / batches),
    ahead(one, other) {
      const values = columns[one]!.map((value, b) => value - columns[other]![b]!);
      return estimate({ values, controls: values }, null, 0.025);
    },
  };
}
