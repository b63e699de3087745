// What the rules of the play allow, checked tile by tile and hand by hand.
import type { Hand } from '../../card/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import { hasJokerFor, type OfferMove, type TurnMove } from './move.ts';
import { callersAfter, type Holding, type Offer, type Turn } from './play.ts';
import type { PlayCard } from './play-card.ts';

export type PlayObjection =
  | 'not-held'
  | 'not-complete'
  | 'joker-called'
  | 'too-small'
  | 'no-such-group'
  | 'nothing-to-exchange'
  | 'not-a-caller';

/** Whether the hand can still be completed with these exposed groups (rules P5, P6). */
function isPossible({ card }: PlayCard, hand: Hand, { exposed }: Holding): boolean {
  if (exposed.length === 0) return true;
  return (
    !card.patterns[hand.pattern]!.concealed && exposed.every(({ face, size }) => hand.groups[face] === size)
  );
}

/** Whether these tiles are the hand: natural tiles alone in singles and pairs, jokers in groups. */
function isComplete(hand: Hand, { concealed, exposed }: Holding): boolean {
  let tiles = 0;
  let jokersWanted = 0;
  for (let face = 0; face < FACE_COUNT; face++) {
    const have = concealed[face]!;
    tiles += have;
    if (face === JOKER_INDEX) continue;
    const group = exposed.some((open) => open.face === face) ? 0 : hand.groups[face]!;
    const beyond = have - hand.singles[face]!;
    if (beyond < 0 || beyond > group) return false;
    jokersWanted += group - beyond;
  }
  for (const { size } of exposed) tiles += size;
  return tiles === 14 && jokersWanted === concealed[JOKER_INDEX];
}

/** The first pattern that the tiles complete, by index, or null. */
export function completedPattern(play: PlayCard, holding: Holding): number | null {
  const found = play.card.hands.find((hand) => isPossible(play, hand, holding) && isComplete(hand, holding));
  return found?.pattern ?? null;
}

/** Why a seat on its turn may not do this, or null. */
export function turnObjection(card: PlayCard, play: Turn, move: TurnMove): PlayObjection | null {
  const holding = play.holdings[play.seat];
  switch (move.kind) {
    case 'finish':
      return completesPattern(card, holding, move.pattern) ? null : 'not-complete';
    case 'discard':
      return holding.concealed[move.face]! > 0 ? null : 'not-held';
    case 'exchange-joker': {
      if (holding.concealed[move.face] === 0 || move.face === JOKER_INDEX) return 'not-held';
      const found = play.holdings[move.owner].exposed.some((group) => hasJokerFor(group, move.face));
      return found ? null : 'nothing-to-exchange';
    }
  }
}

/** Why the tile on offer may not be called like this, or null. */
export function offerObjection(card: PlayCard, play: Offer, move: OfferMove): PlayObjection | null {
  if (move.kind === 'no-call') return null;
  if (!callersAfter(play.from).includes(move.seat)) return 'not-a-caller';
  if (play.face === JOKER_INDEX) return 'joker-called';
  const holding = play.holdings[move.seat];
  if (move.kind === 'finish') {
    const concealed = holding.concealed.map((count, face) => (face === play.face ? count + 1 : count));
    const complete = completesPattern(card, { concealed, exposed: holding.exposed }, move.pattern);
    return complete ? null : 'not-complete';
  }
  return exposureObjection(card, holding, play.face, move.size);
}

function completesPattern(play: PlayCard, holding: Holding, pattern: number): boolean {
  return play.card.hands.some(
    (hand) => hand.pattern === pattern && isPossible(play, hand, holding) && isComplete(hand, holding),
  );
}

function exposureObjection(
  play: PlayCard,
  holding: Holding,
  face: number,
  size: number,
): PlayObjection | null {
  if (size < 3) return 'too-small';
  if (holding.concealed[face]! + holding.concealed[JOKER_INDEX]! < size - 1) return 'not-held';
  if (holding.exposed.some((group) => group.face === face)) return 'no-such-group';
  const after: Holding = { ...holding, exposed: [...holding.exposed, { face, size, jokers: 0 }] };
  return play.card.hands.some((hand) => isPossible(play, hand, after)) ? null : 'no-such-group';
}
