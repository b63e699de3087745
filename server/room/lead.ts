// How a teacher leads a table of a class: before which step it is held, and for which seats a bot chooses meanwhile.
import { openStep, type Round, type Seat, STEPS, type Step, viewFor } from '../../shared-engine/index.ts';

export interface Lead {
  /** Nobody answers this step or a later one; null where nothing is held. */
  readonly holdBefore: Step | null;
  /** Seats whose owner a bot replaces until the teacher gives the seat back. */
  readonly standIn: readonly Seat[];
  /** Whether each step waits until the class goes on from the teacher's choice (rule L1); missing where it does not. */
  readonly oneLine?: boolean;
  /** Whether nobody has the card beside the rack; missing where everybody may. */
  readonly cardClosed?: boolean;
}

export const UNLED: Lead = { holdBefore: null, standIn: [] };

/** Whether the open step of the round waits for the teacher. */
export function isHeld(round: Round, lead: Lead): boolean {
  const { holdBefore } = lead;
  if (isAheadOfLine(round, lead)) return true;
  const step = openStep(viewFor(round, { kind: 'watcher' }).stage);
  if (step === null || holdBefore === null) return false;
  return STEPS.indexOf(step) >= STEPS.indexOf(holdBefore);
}

/** Whether this table has a step behind it that the class has not gone on from (rule L1). */
export function isAheadOfLine({ phase, settled, own = [] }: Round, { oneLine = false }: Lead): boolean {
  return oneLine && phase !== 'closed' && settled.length > own.length;
}

/** Whether nothing is left to do in this round but to close it. */
export function isPlayedOut(round: Round): boolean {
  return round.phase === 'giving' && round.counts.every((count) => count === 0);
}
