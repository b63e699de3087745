// First stage: the field is halved on shared worlds; nothing that is shown rests on these worlds.
import { RESULT_WIDTH } from '../playout/batch.ts';
import type { Alternative } from './alternatives.ts';
import type { Budget } from './budget.ts';
import type { WorldSource } from './worlds.ts';

export interface Screened {
  /** Alternatives that stay, most promising first; the one chosen is among them. */
  readonly finalists: readonly Alternative[];
  /** Outlook right after the step, by finalist and batch of the last round: knowledge of the luck of arrivals. */
  readonly luck: readonly Float64Array[];
}

/** The chosen alternative stays in every round, whatever its place. */
export function screen(
  source: WorldSource,
  seat: number,
  alternatives: readonly Alternative[],
  chosen: Alternative,
  { field, rounds }: Budget,
): Screened {
  let staying = withChosen(alternatives.slice(0, field), chosen);
  const sums = new Map<Alternative, number>();
  let luck: Float64Array[] = [];
  let first = 0;
  for (const { batches, stay } of rounds) {
    const racing = staying;
    const { means } = source.play(
      first,
      batches,
      racing.map(
        ({ act }) =>
          () =>
            act,
      ),
    );
    first += batches;
    luck = racing.map(() => new Float64Array(batches));
    for (const [a, alternative] of racing.entries()) {
      let sum = sums.get(alternative) ?? 0;
      for (let b = 0; b < batches; b++) {
        const at = (b * racing.length + a) * RESULT_WIDTH + seat;
        sum += means[at]!;
        luck[a]![b] = means[at + 4]!;
      }
      sums.set(alternative, sum);
    }
    const order = racing.map((_, a) => a).sort((x, y) => sums.get(racing[y]!)! - sums.get(racing[x]!)!);
    const kept = order.filter((a, place) => place < stay || racing[a] === chosen);
    staying = kept.map((a) => racing[a]!);
    luck = kept.map((a) => luck[a]!);
  }
  return { finalists: staying, luck };
}

function withChosen(field: readonly Alternative[], chosen: Alternative): readonly Alternative[] {
  return field.includes(chosen) ? field : [...field, chosen];
}
