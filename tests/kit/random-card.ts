// A card of nonsense lines for tests: odd shapes that a real card may never hold, the same for the same seed.
import {
  type CompiledCard,
  copiesOf,
  FACES,
  type Face,
  faceIndex,
  type Random,
  stream,
  type Target,
} from '../../shared-engine/index.ts';

/** `lines` lines in four families, each with 1–`most` random targets of 14 tiles. */
export function oddCard(seed: string, lines: number, most: number): CompiledCard {
  const random = stream(seed, 'odd-card');
  return {
    id: `odd-${seed}`,
    name: 'Odd card',
    families: [0, 1, 2, 3].map((index) => ({ id: `odd-${index}`, name: `Odd ${index}` })),
    lines: Array.from({ length: lines }, (_, index) => ({
      id: `line-${index}`,
      family: index % 4,
      points: 25,
      concealed: index % 5 === 0,
    })),
    targets: Array.from({ length: lines }, (_, line) =>
      Array.from({ length: 1 + random.below(most) }, () => oddTarget(line, random)),
    ).flat(),
  };
}

/** Random groups of one face up to 14 tiles; a face may stand in a pair and in a group at once. */
function oddTarget(line: number, random: Random): Target {
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
  return { line, singles, groups };
}
