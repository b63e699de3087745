// One way in which things go wrong: set up, brought about, healed, judged.
import type { Proof } from '../proof.ts';
import type { Verdict } from './crowd.ts';

export type ProofInput = Parameters<Proof['run']>[0];

export interface Result {
  /** What went wrong how often; a fault that never came about proves nothing. */
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

/** Nobody waits longer for an answer once all is well again, in milliseconds. */
export const ANSWERED_WITHIN_MS = 5000;

/** On a machine where a timer comes later than this, in milliseconds, the time of an answer says nothing. */
export const TOO_BUSY_MS = 250;
