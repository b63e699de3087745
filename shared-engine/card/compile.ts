// Compiles a card file: every pattern with every choice of values for its variables.
import { FACE_COUNT } from '../rules/index.ts';
import type { CompiledCard, Hand } from './compiled.ts';
import type { CardFile, CardPattern } from './format.ts';
import { HAND_BYTES, handsOf } from './hands.ts';

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
      distinctHandsOf(pattern, card.parameters).map(({ singles, groups }) => ({
        pattern: index,
        singles,
        groups,
      })),
    ),
  };
}

/** Each hand of one pattern once. */
export function distinctHandsOf(
  pattern: CardPattern,
  parameters: CardFile['parameters'],
): Pick<Hand, 'singles' | 'groups'>[] {
  const { count, bytes } = handsOf(pattern, parameters);
  return Array.from({ length: count }, (_, nth) => {
    const at = nth * HAND_BYTES;
    return { singles: countsAt(bytes, at), groups: countsAt(bytes, at + FACE_COUNT) };
  });
}

/** The numbers of tiles by face that begin at this place; iterating over bytes would take ten times as long. */
export function countsAt(bytes: Uint8Array, from: number): number[] {
  const counts = new Array<number>(FACE_COUNT);
  for (let face = 0; face < FACE_COUNT; face++) counts[face] = bytes[from + face]!;
  return counts;
}
