// Whether a seat's choice is legal, answerable from that seat's own knowledge, so the page and the server agree.
import { type Bag, takeFrom } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import type { Choice } from './command.ts';
import { type RoundRefusal, refuse } from './refusal.ts';
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
export function objection(facing: Facing, choice: Choice): RoundRefusal | null {
  if (facing.phase === 'closed') return refuse('round-closed');
  if (stepOf(facing) !== choice.step) return refuse('wrong-step');
  switch (choice.kind) {
    case 'seal':
      return sealObjection(facing, choice);
    case 'take-back':
      return facing.answered ? null : refuse('nothing-to-take-back');
    case 'vote':
      return facing.answered ? refuse('already-answered') : null;
    case 'ask':
      if (facing.answered) return refuse('already-answered');
      return isWholeUpTo(choice.count, PASS_SIZE) ? null : refuse('bad-number');
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

function sealObjection(facing: Open, choice: Choice & { kind: 'seal' }): RoundRefusal | null {
  if (facing.phase !== 'passing' && facing.phase !== 'giving') return refuse('wrong-step');
  const needed = facing.phase === 'passing' ? PASS_SIZE : facing.count;
  if (needed === 0) return refuse('nothing-to-give');
  if (facing.answered) return refuse('already-answered');
  return passObjection(facing.rack, choice.step, needed, choice.tiles, choice.blind);
}

/** The tiles of one pass against one rack: rules C1, C2 and B1. */
export function passObjection(
  rack: Bag,
  step: MoveStep,
  needed: number,
  tiles: readonly Face[],
  blind: number,
): RoundRefusal | null {
  if (!isWholeUpTo(blind, needed) || tiles.length + blind !== needed) return refuse('wrong-count');
  if (blind > 0 && !MOVES[step].blind) return refuse('blind-not-allowed');
  if (tiles.includes('joker')) return refuse('joker-in-pass');
  if (takeFrom(rack, tiles) === null) return refuse('tile-not-held');
  return null;
}

function isWholeUpTo(value: number, most: number): boolean {
  return Number.isInteger(value) && value >= 0 && value <= most;
}
