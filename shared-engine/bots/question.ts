// What the open step asks of one seat, in the terms a chooser needs.
import { type MoveStep, PASS_SIZE } from '../rules/exchange/schedule.ts';
import type { SeatView } from '../rules/view/view.ts';

export type Question =
  | { readonly kind: 'pass'; readonly step: MoveStep; readonly needed: number }
  | { readonly kind: 'vote' }
  | { readonly kind: 'ask' };

/** Null when the seat has nothing to answer. */
export function questionTo({ answer, record, stage }: SeatView): Question | null {
  if (answer !== null) return null;
  switch (stage.phase) {
    case 'passing':
      return { kind: 'pass', step: stage.step, needed: PASS_SIZE };
    case 'voting':
      return { kind: 'vote' };
    case 'asking':
      return { kind: 'ask' };
    case 'giving': {
      const needed = stage.counts[record.seat];
      return needed === 0 ? null : { kind: 'pass', step: 'courtesy-pass', needed };
    }
    case 'closed':
      return null;
  }
}
