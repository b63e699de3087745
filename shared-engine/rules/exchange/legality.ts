// Whether a seat's choice is legal, answerable from that seat's own knowledge, so the page and the server agree.
import { type Bag, takeFrom } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import type { Choice } from './command.ts';
import { type RoundRejection, reject } from './rejection.ts';
import { MOVES, type MoveStep, PASS_SIZE, type PassStep } from './schedule.ts';

/** What one seat faces: the step and its own rack and answer, nothing of anybody else. */
export type Facing =
  | {
      readonly phase: 'passing';
      readonly step: PassStep;
      readonly rack: Bag;
      readonly answered: boolean;
    }
  | { readonly phase: 'voting'; readonly answered: boolean }
  | { readonly phase: 'asking'; readonly answered: boolean }
  | { readonly phase: 'giving'; readonly rack: Bag; readonly count: number; readonly answered: boolean }
  | { readonly phase: 'closed' };

/** Null when the choice is legal, otherwise the first reason against it. */
export function objection(facing: Facing, choice: Choice): RoundRejection | null {
  if (facing.phase === 'closed') return reject('round-closed');
  if (stepOf(facing) !== choice.step) return reject('wrong-step');
  switch (choice.kind) {
    case 'pass':
      return stepObjection(facing, choice);
    case 'withdraw':
      return facing.answered ? null : reject('nothing-to-withdraw');
    case 'vote':
      return facing.answered ? reject('already-answered') : null;
    case 'ask':
      if (facing.answered) return reject('already-answered');
      return isWholeUpTo(choice.count, PASS_SIZE) ? null : reject('bad-number');
  }
}

type Open = Exclude<Facing, { phase: 'closed' }>;

function stepOf(facing: Open): Choice['step'] {
  switch (facing.phase) {
    case 'passing':
      return facing.step;
    case 'voting':
      return 'vote';
    case 'asking':
      return 'courtesy-ask';
    case 'giving':
      return 'courtesy-pass';
  }
}

function stepObjection(facing: Open, choice: Choice & { kind: 'pass' }): RoundRejection | null {
  if (facing.phase !== 'passing' && facing.phase !== 'giving') return reject('wrong-step');
  const needed = facing.phase === 'passing' ? PASS_SIZE : facing.count;
  if (needed === 0) return reject('nothing-to-give');
  if (facing.answered) return reject('already-answered');
  return passObjection(facing.rack, choice.step, needed, choice.tiles, choice.blind);
}

/** The tiles of one pass against one rack: rules C1, C2 and B1. */
export function passObjection(
  rack: Bag,
  step: MoveStep,
  needed: number,
  tiles: readonly Face[],
  blind: number,
): RoundRejection | null {
  if (!isWholeUpTo(blind, needed) || tiles.length + blind !== needed) return reject('wrong-count');
  if (blind > 0 && !MOVES[step].blind) return reject('blind-not-allowed');
  if (tiles.includes('joker')) return reject('joker-in-pass');
  if (takeFrom(rack, tiles) === null) return reject('tile-not-held');
  return null;
}

function isWholeUpTo(value: number, most: number): boolean {
  return Number.isInteger(value) && value >= 0 && value <= most;
}
