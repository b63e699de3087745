// A seat's record lived through again: what it held and had seen when each choice was offered.
import type { Actor } from '../exchange/round.ts';
import type { MoveStep } from '../exchange/schedule.ts';
import { addTo, type Bag, bagOf, FULL_SET, takeFrom } from '../tiles/bag.ts';
import { type Face, JOKER_INDEX } from '../tiles/face.ts';
import type { SeatMove, SeatRecord } from '../view/record.ts';

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

export function relive({ seat, start, steps }: SeatRecord): Relived {
  const offered: Relived['offered'][number][] = [];
  let rack = bagOf(start);
  let gone: readonly Face[] = [];
  let receivedLast: readonly Face[] = [];
  for (const step of steps) {
    const now = { rack, unseen: unseenBy(rack, gone) };
    switch (step.kind) {
      case 'vote':
        offered.push({ kind: 'vote', ...now, by: step.by[seat], go: step.go[seat] });
        break;
      case 'ask':
        offered.push({ kind: 'ask', ...now, by: step.by[seat], asked: step.asked[seat] });
        break;
      case 'move': {
        const by = step.by[seat];
        if (by === null) break;
        offered.push({ kind: 'move', ...now, by, ...own(step, seat), receivedLast });
        rack = addTo(takeFrom(rack, step.gave) ?? rack, step.received);
        gone = [...gone, ...step.gave];
        receivedLast = step.received;
      }
    }
  }
  return { start: bagOf(start), end: rack, offered };
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
