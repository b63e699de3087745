// How a teacher leads a table of a class: before which step it is held, and for which seats a bot chooses meanwhile.
import { openStep, type Round, type Seat, STEPS, type Step, viewFor } from '../../shared-engine/index.ts';

export interface Lead {
  /** Nobody answers this step or a later one; null where nothing is held. */
  readonly holdBefore: Step | null;
  /** Seats whose owner a bot replaces until the teacher gives the seat back. */
  readonly standIn: readonly Seat[];
}

export const UNLED: Lead = { holdBefore: null, standIn: [] };

/** Whether the open step of the round waits for the teacher. */
export function isHeld(round: Round, { holdBefore }: Lead): boolean {
  const step = openStep(viewFor(round, { kind: 'watcher' }).stage);
  if (step === null || holdBefore === null) return false;
  return STEPS.indexOf(step) >= STEPS.indexOf(holdBefore);
}
