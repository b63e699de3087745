// What each step of the exchange is called, and what it asks.
import {
  MOVES,
  type MoveStep,
  type NumberReview,
  type SeatStep,
  STEPS,
  type Step,
  type Table,
} from '../../shared-engine/index.ts';
import { capitalize, tileCount } from '../tiles/tile-names.ts';
import type { OpenPass } from './open-pass.ts';
import { nameOf } from './seat-names.ts';

export const STEP_NAMES: Readonly<Record<Step, string>> = {
  'first-right': 'First right',
  'first-across': 'First across',
  'first-left': 'First left',
  vote: 'Second Charleston?',
  'second-left': 'Second left',
  'second-across': 'Second across',
  'second-right': 'Second right',
  'courtesy-ask': 'Courtesy',
  'courtesy-pass': 'Courtesy pass',
};

/** Steps as the strip shows them: the courtesy counts as one. */
export const STRIP_STEPS: readonly { readonly step: Step; readonly label: string; readonly part: string }[] =
  [
    { step: 'first-right', label: 'right', part: 'First' },
    { step: 'first-across', label: 'across', part: 'First' },
    { step: 'first-left', label: 'left', part: 'First' },
    { step: 'vote', label: 'second?', part: 'Vote' },
    { step: 'second-left', label: 'left', part: 'Second' },
    { step: 'second-across', label: 'across', part: 'Second' },
    { step: 'second-right', label: 'right', part: 'Second' },
    { step: 'courtesy-ask', label: 'courtesy', part: 'Courtesy' },
  ];

export type StepState = 'done' | 'now' | 'upcoming' | 'skipped';

/** How far the round is, step by step; `open` is null once it is closed. */
export function stepState(step: Step, open: Step | null, stopped: boolean): StepState {
  if (stopped && step.startsWith('second')) return 'skipped';
  if (open === null) return 'done';
  const shownOpen = open === 'courtesy-pass' ? 'courtesy-ask' : open;
  const at = STEPS.indexOf(step);
  const now = STEPS.indexOf(shownOpen);
  return at < now ? 'done' : at === now ? 'now' : 'upcoming';
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
export function passTitle(table: Table, pass: OpenPass): string {
  return `${capitalize(countWord(pass.needed))} ${pass.needed === 1 ? 'tile' : 'tiles'} for ${nameOf(table, pass.to)}`;
}

/** What is missing before the pass can go. */
export function chooseMore(needed: number, chosen: number): string {
  const missing = needed - chosen;
  if (missing <= 0) return '';
  return missing === needed
    ? `Choose ${countWord(needed)} ${needed === 1 ? 'tile' : 'tiles'} on your rack.`
    : `Choose ${countWord(missing)} more ${missing === 1 ? 'tile' : 'tiles'}.`;
}

export const BLIND_QUESTION = 'Pass blind? How many, without looking?';
export const VOTE_QUESTION = 'Second Charleston?';
export const VOTE_ABOUT =
  'Three more passes, left, across and right, if all four want them. Nobody sees your answer until all have answered.';

export function courtesyQuestion(across: string): string {
  return `Courtesy: how many tiles would you like to swap with ${across}?`;
}

export function courtesyAbout(across: string): string {
  return `${across} names a number at the same time. The smaller number counts for both of you.`;
}

/** What one option of a choice among a few numbers is called. */
export function optionName(kind: NumberReview['kind'], value: number): string {
  if (kind === 'vote') return value === 1 ? 'Continue' : 'I’d stop';
  if (kind === 'blind') return value === 0 ? 'None blind' : `${value} blind`;
  return value === 0 ? 'No tiles' : tileCount(value);
}
