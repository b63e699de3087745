// Whether a seat's choice is legal; decided from that seat's own knowledge, so that the page and the server agree.
import { type Bag, takeFrom } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import type { Choice } from './command.ts';
import type { PendingDecision } from './pending-decision.ts';
import { type RoundRejection, reject, rejectCount } from './rejection.ts';
import { PASS_SIZE, type Step } from './schedule.ts';

/** What a choice of one seat is checked against; it says nothing of any other seat. */
export interface ChoiceContext {
  /** The open step; null once the round is closed. */
  readonly step: Step | null;
  /** What that step asks of the seat, whether it has answered or not; null where it asks nothing. */
  readonly decision: PendingDecision | null;
  readonly answered: boolean;
  readonly rack: Bag;
}

/** Null when the choice is legal, otherwise the first reason against it. */
export function objection(context: ChoiceContext, choice: Choice): RoundRejection | null {
  const { step, answered } = context;
  if (step === null) return reject('round-closed');
  if (step !== choice.step) return reject('wrong-step');
  switch (choice.kind) {
    case 'pass':
      return passObjectionIn(context, choice);
    case 'withdraw':
      return answered ? null : reject('nothing-to-withdraw');
    case 'vote':
      return answered ? reject('already-answered') : null;
    case 'ask':
      if (answered) return reject('already-answered');
      return isWholeUpTo(choice.count, PASS_SIZE) ? null : reject('bad-number');
  }
}

function passObjectionIn(
  { decision, answered, rack }: ChoiceContext,
  { tiles, blind }: Choice & { kind: 'pass' },
): RoundRejection | null {
  if (decision === null) return reject('nothing-to-give');
  if (decision.kind !== 'pass') return reject('wrong-step');
  if (answered) return reject('already-answered');
  return passObjection(rack, decision, tiles, blind);
}

/** The tiles of one pass against one rack: rules C1, C2 and B1. */
export function passObjection(
  rack: Bag,
  { count, blindAllowed }: Pick<PendingDecision & { kind: 'pass' }, 'count' | 'blindAllowed'>,
  tiles: readonly Face[],
  blind: number,
): RoundRejection | null {
  if (!isWholeUpTo(blind, count) || tiles.length + blind !== count)
    return rejectCount(count - tiles.length - blind);
  if (blind > 0 && !blindAllowed) return reject('blind-not-allowed');
  if (tiles.includes('joker')) return reject('joker-in-pass');
  if (takeFrom(rack, tiles) === null) return reject('tile-not-held');
  return null;
}

function isWholeUpTo(value: number, max: number): boolean {
  return Number.isInteger(value) && value >= 0 && value <= max;
}
