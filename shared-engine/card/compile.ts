// From a card file to its hands: every pattern under every choice it allows.
import { EMPTY_BAG, sizeOf } from '../rules/tiles/bag.ts';
import { copiesOf, FACES, faceIndex } from '../rules/tiles/face.ts';
import { type Assignment, alternativesOf, assignmentsOf, faceOf } from './assignment.ts';
import type { CompiledCard, Hand } from './compiled.ts';
import type { CardFile, CardPattern } from './format.ts';

/** The smallest group in which a joker may stand (common practice, no source). */
export const JOKER_GROUP = 3;

type HandTiles = Pick<Hand, 'singles' | 'groups'>;

/** The tiles one assignment asks for, or null when it leads out of the set. */
export function handOf(
  pattern: CardPattern,
  assignment: Assignment,
  parameters: CardFile['parameters'],
): HandTiles | null {
  const singles = [...EMPTY_BAG];
  const groups = [...EMPTY_BAG];
  for (const { size, tile } of pattern.groups) {
    const face = faceOf(tile, assignment, parameters);
    if (face === null) return null;
    (size < JOKER_GROUP ? singles : groups)[faceIndex(face)]! += size;
  }
  return { singles, groups };
}

/** Tiles that no natural copy can supply: more than this many jokers the hand can never do without. */
export function jokersNeeded({ singles, groups }: HandTiles): number {
  return FACES.reduce(
    (sum, face, index) => sum + Math.max(0, singles[index]! + groups[index]! - copiesOf(face)),
    0,
  );
}

/** The first face wanted more often in singles and pairs than the set has copies, or null. */
export function overdrawn({ singles }: HandTiles): number | null {
  const index = FACES.findIndex((face, place) => singles[place]! > copiesOf(face));
  return index < 0 ? null : index;
}

/** Whether the set of 152 tiles can make this hand. */
function isPossible(hand: HandTiles): boolean {
  return (
    sizeOf(hand.singles) + sizeOf(hand.groups) === 14 && overdrawn(hand) === null && jokersNeeded(hand) <= 8
  );
}

/** The hands of a card that `parseCard` accepts, ordered by pattern, each once in its pattern. */
export function compileCard(card: CardFile): CompiledCard {
  const sectionIndex = new Map(card.sections.map(({ id }, index) => [id, index]));
  return {
    id: card.id,
    name: card.name,
    sections: card.sections.map(({ id, name }) => ({ id, name })),
    patterns: card.patterns.map(({ id, section, points, concealed }) => ({
      id,
      section: sectionIndex.get(section)!,
      points,
      concealed,
    })),
    hands: card.patterns.flatMap((pattern, index) =>
      handsOf(pattern, card.parameters).map((hand) => ({ pattern: index, ...hand })),
    ),
  };
}

function handsOf(pattern: CardPattern, parameters: CardFile['parameters']): HandTiles[] {
  const hands = new Map<string, HandTiles>();
  for (const assignment of assignmentsOf(alternativesOf(pattern))) {
    const hand = handOf(pattern, assignment, parameters);
    if (hand === null || !isPossible(hand)) continue;
    hands.set(`${hand.singles.join()};${hand.groups.join()}`, hand);
  }
  return [...hands.values()];
}
