// Compiles a card file: every pattern with every choice of values for its variables.
import { copiesOf, EMPTY_BAG, FACES, faceIndex, sizeOf } from '../rules/index.ts';
import { type Assignment, assignmentsOf, faceOf, valuesOf } from './assignment.ts';
import type { CompiledCard, Hand } from './compiled.ts';
import type { CardFile, CardPattern } from './format.ts';

/** The smallest group in which a joker may stand (common practice, no source). */
export const MIN_JOKER_GROUP = 3;

type HandTiles = Pick<Hand, 'singles' | 'groups'>;

/** The tiles that a pattern wants under one assignment; null where a number is outside 1–9. */
export function handTilesOf(
  pattern: Pick<CardPattern, 'groups'>,
  assignment: Assignment,
  parameters: CardFile['parameters'],
): HandTiles | null {
  const singles = [...EMPTY_BAG];
  const groups = [...EMPTY_BAG];
  for (const { size, tile } of pattern.groups) {
    const face = faceOf(tile, assignment, parameters);
    if (face === null) return null;
    (size < MIN_JOKER_GROUP ? singles : groups)[faceIndex(face)]! += size;
  }
  return { singles, groups };
}

/** How many jokers the hand needs at least, because it wants more tiles of some face than the set has. */
export function jokersNeeded({ singles, groups }: HandTiles): number {
  return FACES.reduce(
    (sum, face, index) => sum + Math.max(0, singles[index]! + groups[index]! - copiesOf(face)),
    0,
  );
}

/** Index of the first face that singles and pairs want more often than the set has copies, or null. */
export function firstShortFace({ singles }: HandTiles): number | null {
  const index = FACES.findIndex((face, place) => singles[place]! > copiesOf(face));
  return index < 0 ? null : index;
}

/** Whether it has 14 tiles and the set of 152 can make it. */
export function isPossible(hand: HandTiles): boolean {
  return (
    sizeOf(hand.singles) + sizeOf(hand.groups) === 14 &&
    firstShortFace(hand) === null &&
    jokersNeeded(hand) <= 8
  );
}

/** Takes a card that `parseCard` has accepted; its hands come ordered by pattern, each once in its pattern. */
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
      distinctHandsOf(pattern, card.parameters).map((hand) => ({ pattern: index, ...hand })),
    ),
  };
}

/** Each hand of one pattern once. */
export function distinctHandsOf(pattern: CardPattern, parameters: CardFile['parameters']): HandTiles[] {
  const hands = new Map<string, HandTiles>();
  for (const assignment of assignmentsOf(valuesOf(pattern))) {
    const hand = handTilesOf(pattern, assignment, parameters);
    if (hand === null || !isPossible(hand)) continue;
    hands.set(`${hand.singles.join()};${hand.groups.join()}`, hand);
  }
  return [...hands.values()];
}
