// One kind of fault: set up, caused, healed, and checked.
import type { Proof } from '../proof.ts';
import type { Verdict } from './crowd.ts';

export type ProofInput = Parameters<Proof['run']>[0];

export interface Result {
  /** How often the fault happened; one that never did proves nothing. */
  readonly happened: number;
  /** A figure worth telling. */
  readonly note?: string;
  readonly verdict: Pick<Verdict, 'violations'> & Partial<Verdict>;
}

export interface Scenario {
  /** In words, as a row of the report. */
  readonly title: string;
  run(input: ProofInput): Promise<Result>;
}

/** The longest wait for an answer once the fault has healed, in milliseconds. */
export const ANSWERED_WITHIN_MS = 5000;

/** On a machine where a timer comes later than this, in milliseconds, the time of an answer says nothing. */
export const TOO_BUSY_MS = 250;
