// Every choice of a record with what its seat held and had seen when the choice was offered.
import {
  type Actor,
  type Bag,
  type ExchangeTerms,
  FACES,
  type Face,
  FULL_SET,
  JOKER_INDEX,
  type MoveStep,
  neighbor,
  type SeatRecord,
  type SeatStep,
} from '../../rules/index.ts';
import { offeredChoices, type Situation } from '../belief/situation.ts';

interface Offered {
  readonly by: Actor;
  readonly terms: ExchangeTerms;
  /** Held when the choice was offered. */
  readonly rack: Bag;
  /** Tiles that may still arrive, as far as this seat can know; never a joker (rule C2). */
  readonly hidden: Bag;
}

export type OfferedMove = Offered & {
  readonly kind: 'move';
  readonly step: MoveStep;
  readonly gave: readonly Face[];
  readonly blind: number;
  readonly received: readonly Face[];
  /** What came in with the move before this one. */
  readonly receivedLast: readonly Face[];
  /** Came although the seat had given such a tile away before: given now, it goes a second time. */
  readonly returned: readonly Face[];
};
export type OfferedVote = Offered & {
  readonly kind: 'vote';
  readonly step: 'vote';
  readonly go: boolean;
  readonly anotherStopped: boolean;
};
export type OfferedAsk = Offered & {
  readonly kind: 'ask';
  readonly step: 'courtesy-ask';
  readonly asked: number;
  /** By the player across. */
  readonly askedAcross: number;
};

export type ReplayedDecision = OfferedMove | OfferedVote | OfferedAsk;

export function replayDecisions(record: SeatRecord): readonly ReplayedDecision[] {
  return offeredChoices(record).flatMap(({ situation, chosen }) => decisionOf(situation, chosen) ?? []);
}

/** Null for a courtesy pass in which the seat had nothing to give. */
function decisionOf(situation: Situation, chosen: SeatStep): ReplayedDecision | null {
  const { seat, terms, rack, past } = situation;
  const by = chosen.by[seat];
  if (by === null) return null;
  const offered = { by, terms, rack, hidden: hiddenIn(situation) };
  switch (chosen.kind) {
    case 'vote': {
      const anotherStopped = chosen.go.some((go, other) => !go && other !== seat);
      return { kind: 'vote', step: 'vote', ...offered, go: chosen.go[seat], anotherStopped };
    }
    case 'ask': {
      const { [seat]: asked, [neighbor(seat, 'across')]: askedAcross } = chosen.asked;
      return { kind: 'ask', step: 'courtesy-ask', ...offered, asked, askedAcross };
    }
    case 'move': {
      const { step, gave, received } = chosen;
      const receivedLast = (past.at(-1)?.received ?? []).map((face) => FACES[face]!);
      const blind = chosen.blind[seat];
      return {
        kind: 'move',
        ...offered,
        step,
        gave,
        blind,
        received,
        receivedLast,
        returned: returnedIn(past),
      };
    }
  }
}

/** All that came once such a tile had gone, be it in one exchange; the seat cannot tell copies apart (rule V3). */
function returnedIn(past: Situation['past']): readonly Face[] {
  const away = new Set<number>();
  const returned: number[] = [];
  for (const { gave, received } of past) {
    for (const face of gave) away.add(face);
    returned.push(...received.filter((face) => away.has(face)));
  }
  return returned.map((face) => FACES[face]!);
}

/**
 * The set without what the seat holds and what it gave knowingly. A tile given away that came back would be
 * taken off twice; the seat cannot tell (rule V3), so no count goes below zero.
 */
function hiddenIn({ rack, past }: Situation): Bag {
  const hidden = FULL_SET.map((copies, face) => copies - rack[face]!);
  for (const { gave } of past) for (const face of gave) hidden[face]!--;
  return hidden.map((count, face) => (face === JOKER_INDEX ? 0 : Math.max(0, count)));
}
