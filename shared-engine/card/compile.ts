// From a card file to its targets: every line under every choice it allows.
import { EMPTY_BAG, sizeOf } from '../rules/tiles/bag.ts';
import { copiesOf, FACES, faceIndex } from '../rules/tiles/face.ts';
import { type Assignment, alternativesOf, assignmentsOf, faceOf } from './assignment.ts';
import type { CompiledCard, Target } from './compiled.ts';
import type { CardFile, CardLine } from './format.ts';

/** The smallest group in which a joker may stand (common practice, no source). */
export const JOKER_GROUP = 3;

type Hand = Pick<Target, 'singles' | 'groups'>;

/** The tiles one assignment asks for, or null when it leads out of the set. */
export function handOf(
  line: CardLine,
  assignment: Assignment,
  parameters: CardFile['parameters'],
): Hand | null {
  const singles = [...EMPTY_BAG];
  const groups = [...EMPTY_BAG];
  for (const { size, tile } of line.groups) {
    const face = faceOf(tile, assignment, parameters);
    if (face === null) return null;
    (size < JOKER_GROUP ? singles : groups)[faceIndex(face)]! += size;
  }
  return { singles, groups };
}

/** Tiles that no natural copy can supply: more than this many jokers the hand can never do without. */
export function jokersNeeded({ singles, groups }: Hand): number {
  return FACES.reduce(
    (sum, face, index) => sum + Math.max(0, singles[index]! + groups[index]! - copiesOf(face)),
    0,
  );
}

/** The first face wanted more often in singles and pairs than the set has copies, or null. */
export function overdrawn({ singles }: Hand): number | null {
  const index = FACES.findIndex((face, place) => singles[place]! > copiesOf(face));
  return index < 0 ? null : index;
}

/** Whether the set of 152 tiles can make this hand. */
function isPossible(hand: Hand): boolean {
  return (
    sizeOf(hand.singles) + sizeOf(hand.groups) === 14 && overdrawn(hand) === null && jokersNeeded(hand) <= 8
  );
}

/** The targets of a card that `parseCard` accepts, ordered by line, each once in its line. */
export function compileCard(card: CardFile): CompiledCard {
  const familyIndex = new Map(card.families.map(({ id }, index) => [id, index]));
  return {
    id: card.id,
    name: card.name,
    families: card.families.map(({ id, name }) => ({ id, name })),
    lines: card.lines.map(({ id, family, points, concealed }) => ({
      id,
      family: familyIndex.get(family)!,
      points,
      concealed,
    })),
    targets: card.lines.flatMap((line, index) =>
      handsOf(line, card.parameters).map((hand) => ({ line: index, ...hand })),
    ),
  };
}

function handsOf(line: CardLine, parameters: CardFile['parameters']): Hand[] {
  const hands = new Map<string, Hand>();
  for (const assignment of assignmentsOf(alternativesOf(line))) {
    const hand = handOf(line, assignment, parameters);
    if (hand === null || !isPossible(hand)) continue;
    hands.set(`${hand.singles.join()};${hand.groups.join()}`, hand);
  }
  return [...hands.values()];
}
