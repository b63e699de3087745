// What each step of the exchange is called, and what it asks.
import {
  MOVES,
  type MoveStep,
  type SeatStep,
  STEPS,
  type Step,
  type Table,
} from '../../shared-engine/index.ts';
import type { OpenPass } from './pending-decision.ts';
import { capital, nameOf } from './seat-names.ts';

export const STEP_NAMES: Readonly<Record<Step, string>> = {
  'first-right': 'First right',
  'first-across': 'First across',
  'first-left': 'First left',
  vote: 'Go on?',
  'second-left': 'Second left',
  'second-across': 'Second across',
  'second-right': 'Second right',
  'courtesy-ask': 'Courtesy',
  'courtesy-pass': 'Courtesy pass',
};

/** Steps as the strip shows them: the courtesy counts as one. */
export const STRIP: readonly { readonly step: Step; readonly label: string; readonly part: string }[] = [
  { step: 'first-right', label: 'right', part: 'First' },
  { step: 'first-across', label: 'across', part: 'First' },
  { step: 'first-left', label: 'left', part: 'First' },
  { step: 'vote', label: 'vote', part: '' },
  { step: 'second-left', label: 'left', part: 'Second' },
  { step: 'second-across', label: 'across', part: 'Second' },
  { step: 'second-right', label: 'right', part: 'Second' },
  { step: 'courtesy-ask', label: 'last', part: '' },
];

export type StripState = 'done' | 'now' | 'to come' | 'left out';

/** How far the round is, step by step; `open` is null once it is closed. */
export function stripState(step: Step, open: Step | null, stopped: boolean): StripState {
  if (stopped && step.startsWith('second')) return 'left out';
  if (open === null) return 'done';
  const shownOpen = open === 'courtesy-pass' ? 'courtesy-ask' : open;
  const at = STEPS.indexOf(step);
  const now = STEPS.indexOf(shownOpen);
  return at < now ? 'done' : at === now ? 'now' : 'to come';
}

export function wasStopped(steps: readonly Pick<SeatStep, 'kind'>[] | readonly SeatStep[]): boolean {
  return (steps as readonly SeatStep[]).some((step) => step.kind === 'vote' && !step.go.every(Boolean));
}

const COUNT_WORDS = ['no', 'one', 'two', 'three'] as const;

export function countWord(count: number): string {
  return COUNT_WORDS[count] ?? String(count);
}

/** `Pass right to Ines`. */
export function passButton(step: MoveStep, to: string): string {
  return `Pass ${MOVES[step].toward} to ${to}`;
}

/** `Three tiles for Ines`. */
export function passWish(table: Table, pass: OpenPass): string {
  return `${capital(countWord(pass.needed))} ${pass.needed === 1 ? 'tile' : 'tiles'} for ${nameOf(table, pass.to)}`;
}

/** What is missing before the pass can go. */
export function stillToChoose(needed: number, chosen: number): string {
  const missing = needed - chosen;
  if (missing <= 0) return '';
  return missing === needed
    ? `Choose ${countWord(needed)} on your rack.`
    : `Choose ${countWord(missing)} more.`;
}

export const BLIND_QUESTION = 'Send on arriving tiles unseen?';
export const VOTE_QUESTION = 'Go on with a second Charleston?';
export const VOTE_ABOUT =
  'It is played only when all four want it. Nobody sees your answer before all have given theirs.';

export function askQuestion(across: string): string {
  return `How many tiles would you like to swap with ${across}?`;
}

export function askAbout(across: string): string {
  return `${across} says a number at the same time; the smaller one holds for both of you.`;
}
