// The steps of the exchange in their order, and for each pass its direction and whether it may be blind.
import type { Direction } from '../deal/seat.ts';
import type { ExchangeTerms } from './terms.ts';

export const PASS_STEPS = [
  'first-right',
  'first-across',
  'first-left',
  'second-left',
  'second-across',
  'second-right',
] as const;
export type PassStep = (typeof PASS_STEPS)[number];

/** Steps in which tiles move. */
export const MOVE_STEPS = [...PASS_STEPS, 'courtesy-pass'] as const;
export type MoveStep = (typeof MOVE_STEPS)[number];

/** Every step in order. Which of them a round has depends on its terms and on how the table votes and asks: `stepAfter`. */
export const STEPS = [
  'first-right',
  'first-across',
  'first-left',
  'vote',
  'second-left',
  'second-across',
  'second-right',
  'courtesy-ask',
  'courtesy-pass',
] as const;
export type Step = (typeof STEPS)[number];

export interface MoveRule {
  readonly toward: Direction;
  /** Whether arriving tiles may be passed on blind (rule B1). */
  readonly blind: boolean;
}

export const MOVES: Readonly<Record<MoveStep, MoveRule>> = {
  'first-right': { toward: 'right', blind: false },
  'first-across': { toward: 'across', blind: false },
  'first-left': { toward: 'left', blind: true },
  'second-left': { toward: 'left', blind: false },
  'second-across': { toward: 'across', blind: false },
  'second-right': { toward: 'right', blind: true },
  'courtesy-pass': { toward: 'across', blind: false },
};

/** Tiles in a compulsory pass (rule C1) and the most that a courtesy pass may ask for (rule Y1). */
export const PASS_SIZE = 3;

/** Whether arriving tiles may be passed on blind in this step (rules B1, W3). */
export function mayPassBlind(step: MoveStep, { blindPasses }: Pick<ExchangeTerms, 'blindPasses'>): boolean {
  return MOVES[step].blind && blindPasses;
}

/** Whether a round by these terms can have this step at all (rules W2, W4). */
export function hasStep(step: Step, { secondCharleston, courtesy }: ExchangeTerms): boolean {
  if (step === 'vote') return secondCharleston === 'by-vote';
  if (step.startsWith('second-')) return secondCharleston !== 'none';
  return courtesy !== 'none' || !step.startsWith('courtesy-');
}
