// A seat's record lived through again: what it held and had seen when each choice was offered.
import type { Actor } from '../../rules/exchange/round.ts';
import type { MoveStep } from '../../rules/exchange/schedule.ts';
import { addTo, type Bag, bagOf, FULL_SET, takeFrom } from '../../rules/tiles/bag.ts';
import { type Face, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { ownStep, type SeatMove, type SeatRecord, type SeatStep } from '../../rules/view/record.ts';

interface Offered {
  readonly by: Actor;
  /** Held when the choice was offered. */
  readonly rack: Bag;
  /** Tiles that may still arrive, as far as this seat can know; never a joker (rule C2). */
  readonly unseen: Bag;
}

export type OfferedMove = Offered & {
  readonly kind: 'move';
  readonly step: MoveStep;
  readonly gave: readonly Face[];
  readonly blind: number;
  readonly received: readonly Face[];
  /** What came in with the move before this one. */
  readonly receivedLast: readonly Face[];
};
export type OfferedVote = Offered & { readonly kind: 'vote'; readonly go: boolean };
export type OfferedAsk = Offered & { readonly kind: 'ask'; readonly asked: number };

export interface Relived {
  readonly start: Bag;
  readonly end: Bag;
  readonly offered: readonly (OfferedMove | OfferedVote | OfferedAsk)[];
}

export function relive(record: SeatRecord): Relived {
  const { seat, start, steps } = record;
  const offered: Relived['offered'][number][] = [];
  let rack = bagOf(start);
  let gone: readonly Face[] = [];
  let receivedLast: readonly Face[] = [];
  for (const [place, step] of steps.entries()) {
    const chosen = ownStep(record, place);
    const offer = chosen && offerOf(chosen, seat, { rack, unseen: unseenBy(rack, gone) }, receivedLast);
    if (offer) offered.push(offer);
    if (step.kind !== 'move' || step.by[seat] === null) continue;
    rack = addTo(takeFrom(rack, step.gave) ?? rack, step.received);
    gone = [...gone, ...step.gave];
    receivedLast = step.received;
  }
  return { start: bagOf(start), end: rack, offered };
}

/** Null for a courtesy pass in which the seat had nothing to give. */
function offerOf(
  step: SeatStep,
  seat: SeatRecord['seat'],
  now: Omit<Offered, 'by'>,
  receivedLast: readonly Face[],
): Relived['offered'][number] | null {
  switch (step.kind) {
    case 'vote':
      return { kind: 'vote', ...now, by: step.by[seat], go: step.go[seat] };
    case 'ask':
      return { kind: 'ask', ...now, by: step.by[seat], asked: step.asked[seat] };
    case 'move': {
      const by = step.by[seat];
      return by && { kind: 'move', ...now, by, ...own(step, seat), receivedLast };
    }
  }
}

function own({ step, gave, blind, received }: SeatMove, seat: SeatRecord['seat']) {
  return { step, gave, blind: blind[seat], received };
}

/**
 * The set without what the seat holds and what it gave knowingly. A tile given away that came back would be
 * taken off twice; the seat cannot tell (rule V3), so no count goes below zero.
 */
function unseenBy(rack: Bag, gone: readonly Face[]): Bag {
  const away = bagOf(gone);
  return FULL_SET.map((copies, face) =>
    face === JOKER_INDEX ? 0 : Math.max(0, copies - rack[face]! - away[face]!),
  );
}
