// How a teacher controls a table of a class: before which step it is held, and for which seats a bot chooses meanwhile.
import { type Round, type Seat, STEPS, type Step, stepOf } from '../../shared-engine/index.ts';

export interface TeacherControls {
  /** Nobody answers this step or a later one; null where nothing is held. */
  readonly holdBefore: Step | null;
  /** Seats for whose holders a bot chooses until the teacher gives them back. */
  readonly standIn: readonly Seat[];
  /** Whether each step waits until the class advances by the teacher's choice (rule L1); missing where it does not. */
  readonly guided?: boolean;
  /** Whether nobody has the card beside the rack; missing where everybody may. */
  readonly cardClosed?: boolean;
  /** Whether the coach may be asked at this table; missing where it may not. */
  readonly coach?: true;
  /** Whether the class has ended; missing before that. */
  readonly classOver?: true;
  /** Whether friends play one deal here without a teacher (rule SD2); missing where they do not. */
  readonly amongFriends?: true;
}

export const NO_CONTROLS: TeacherControls = { holdBefore: null, standIn: [] };

/** Whether the open step of the round waits for the teacher. */
export function isHeld(round: Round, controls: TeacherControls): boolean {
  const { holdBefore } = controls;
  if (isAheadOfClass(round, controls)) return true;
  const step = stepOf(round);
  if (step === null || holdBefore === null) return false;
  return STEPS.indexOf(step) >= STEPS.indexOf(holdBefore);
}

/** Whether this table has finished a step from which the class has not advanced (rule L1). */
export function isAheadOfClass(
  { phase, resolved, actualSteps = [] }: Round,
  { guided = false }: TeacherControls,
): boolean {
  return guided && phase !== 'closed' && resolved.length > actualSteps.length;
}

/** Whether nothing is left to do in this round but to close it. */
export function isPlayedOut(round: Round): boolean {
  return round.phase === 'giving' && round.counts.every((count) => count === 0);
}
