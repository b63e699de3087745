// The steps of the exchange in their order, and for each pass its direction and whether it may be blind.
import type { Direction } from '../deal/seat.ts';

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

/** Every step in order. The second Charleston is left out after a stop, the courtesy pass where nobody agreed on a tile. */
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

/** The step after each pass. What follows the vote and the courtesy steps depends on their outcomes: see `evolve`. */
export const AFTER_PASS: Readonly<Record<PassStep, PassStep | 'vote' | 'courtesy-ask'>> = {
  'first-right': 'first-across',
  'first-across': 'first-left',
  'first-left': 'vote',
  'second-left': 'second-across',
  'second-across': 'second-right',
  'second-right': 'courtesy-ask',
};
