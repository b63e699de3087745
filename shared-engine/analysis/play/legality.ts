// What the rules of the play allow, asked of tiles and targets one by one.
import type { Target } from '../../card/compiled.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { lendsJoker, type OfferMove, type TurnMove } from './move.ts';
import { callersAfter, type Hand, type Offer, type Turn } from './play.ts';
import type { PlayCard } from './play-card.ts';

export type PlayObjection =
  | 'not-held'
  | 'not-a-line'
  | 'joker-called'
  | 'too-small'
  | 'no-such-group'
  | 'nothing-to-exchange'
  | 'not-a-caller';

/** Whether a hand with these open groups can still become the target (rules P5, P6). */
function isOpenTo({ card }: PlayCard, target: Target, { exposed }: Hand): boolean {
  if (exposed.length === 0) return true;
  return (
    !card.lines[target.line]!.concealed && exposed.every(({ face, size }) => target.groups[face] === size)
  );
}

/** Whether these tiles are the target: natural tiles alone in singles and pairs, jokers in groups. */
function isComplete(target: Target, { concealed, exposed }: Hand): boolean {
  let tiles = 0;
  let jokersWanted = 0;
  for (let face = 0; face < FACE_COUNT; face++) {
    const have = concealed[face]!;
    tiles += have;
    if (face === JOKER_INDEX) continue;
    const group = exposed.some((open) => open.face === face) ? 0 : target.groups[face]!;
    const beyond = have - target.singles[face]!;
    if (beyond < 0 || beyond > group) return false;
    jokersWanted += group - beyond;
  }
  for (const { size } of exposed) tiles += size;
  return tiles === 14 && jokersWanted === concealed[JOKER_INDEX];
}

/** The first line that the hand completes, by index, or null. */
export function completedLine(play: PlayCard, hand: Hand): number | null {
  const found = play.card.targets.find((target) => isOpenTo(play, target, hand) && isComplete(target, hand));
  return found?.line ?? null;
}

/** Why a seat on its turn may not do this, or null. */
export function turnObjection(card: PlayCard, play: Turn, move: TurnMove): PlayObjection | null {
  const { concealed } = play.hands[play.seat];
  switch (move.kind) {
    case 'finish':
      return completesLine(card, play.hands[play.seat], move.line) ? null : 'not-a-line';
    case 'discard':
      return concealed[move.face]! > 0 ? null : 'not-held';
    case 'exchange': {
      if (concealed[move.face] === 0 || move.face === JOKER_INDEX) return 'not-held';
      const lent = play.hands[move.owner].exposed.some((group) => lendsJoker(group, move.face));
      return lent ? null : 'nothing-to-exchange';
    }
  }
}

/** Why the tile on offer may not be answered like this, or null. */
export function offerObjection(card: PlayCard, play: Offer, move: OfferMove): PlayObjection | null {
  if (move.kind === 'pass') return null;
  if (!callersAfter(play.from).includes(move.seat)) return 'not-a-caller';
  if (play.face === JOKER_INDEX) return 'joker-called';
  const hand = play.hands[move.seat];
  if (move.kind === 'finish') {
    const concealed = hand.concealed.map((count, face) => (face === play.face ? count + 1 : count));
    return completesLine(card, { concealed, exposed: hand.exposed }, move.line) ? null : 'not-a-line';
  }
  return exposureObjection(card, hand, play.face, move.size);
}

function completesLine(card: PlayCard, hand: Hand, line: number): boolean {
  return card.card.targets.some(
    (target) => target.line === line && isOpenTo(card, target, hand) && isComplete(target, hand),
  );
}

function exposureObjection(card: PlayCard, hand: Hand, face: number, size: number): PlayObjection | null {
  if (size < 3) return 'too-small';
  if (hand.concealed[face]! + hand.concealed[JOKER_INDEX]! < size - 1) return 'not-held';
  if (hand.exposed.some((group) => group.face === face)) return 'no-such-group';
  const after: Hand = { ...hand, exposed: [...hand.exposed, { face, size, jokers: 0 }] };
  return card.card.targets.some((target) => isOpenTo(card, target, after)) ? null : 'no-such-group';
}
