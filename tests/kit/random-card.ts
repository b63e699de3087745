// A card of nonsense patterns for tests: odd shapes that a real card may never hold, the same for the same seed.
import type { CompiledCard, Hand } from '../../shared-engine/card/compiled.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import { copiesOf, FACES, type Face, faceIndex } from '../../shared-engine/rules/tiles/face.ts';

/** `patterns` patterns in four sections, each with 1–`most` random hands of 14 tiles. */
export function randomCard(seed: string, patterns: number, most: number): CompiledCard {
  const random = stream(seed, 'odd-card');
  return {
    id: `odd-${seed}`,
    name: 'Odd card',
    sections: [0, 1, 2, 3].map((index) => ({ id: `odd-${index}`, name: `Odd ${index}` })),
    patterns: Array.from({ length: patterns }, (_, index) => ({
      id: `pattern-${index}`,
      section: index % 4,
      points: 25,
      concealed: index % 5 === 0,
    })),
    hands: Array.from({ length: patterns }, (_, pattern) =>
      Array.from({ length: 1 + random.below(most) }, () => oddHand(pattern, random)),
    ).flat(),
  };
}

/** Random groups of one face up to 14 tiles; a face may stand in a pair and in a group at once. */
function oddHand(pattern: number, random: Random): Hand {
  const singles = new Array<number>(FACES.length).fill(0);
  const groups = new Array<number>(FACES.length).fill(0);
  for (let open = 14; open > 0; ) {
    const face = FACES[random.below(FACES.length - 1)] as Face;
    const size = Math.min(open, 1 + random.below(6));
    const index = faceIndex(face);
    if (size < 3 && singles[index]! + groups[index]! + size > copiesOf(face)) continue;
    (size < 3 ? singles : groups)[index]! += size;
    open -= size;
  }
  return { pattern, singles, groups };
}
