// Tiles and groups by the names players say.
import { DRAGONS, type Face, faceIndex, numbered, WINDS } from '../../../rules/index.ts';
import type { RackGroup } from '../review.ts';
import { listed } from './phrases.ts';

/** "3 bam", "east wind", "red dragon", "soap", "flower". */
export function tileName(face: Face): string {
  const parts = numbered(face);
  if (parts) return `${parts.number} ${parts.suit}`;
  if (face === 'white') return 'soap';
  if (WINDS.some((wind) => wind === face)) return `${face} wind`;
  if (DRAGONS.some((dragon) => dragon === face)) return `${face} dragon`;
  return face;
}

/** "3 bam", "the soap". */
export function theTile(face: Face): string {
  return numbered(face) ? tileName(face) : `the ${tileName(face)}`;
}

const GROUP_NAMES = ['pair', 'pung', 'kong', 'quint', 'sextet'];

/** "pair of 3 bam", "pung of red dragons"; seven or eight flowers are simply all the flowers. */
export function groupName({ face, count }: RackGroup): string {
  const name = GROUP_NAMES[count - 2];
  return name === undefined ? 'flowers' : `${name} of ${severalOf(face)}`;
}

/** "pairs", "pairs and pungs": what all of them together are called. */
export function groupsName(groups: readonly RackGroup[]): string {
  const counts = [...new Set(groups.map(({ count }) => count))].toSorted((a, b) => a - b);
  const names = counts.map((count) => GROUP_NAMES[count - 2]);
  return listed([...new Set(names.map((name) => (name === undefined ? 'flowers' : `${name}s`)))]);
}

function severalOf(face: Face): string {
  return numbered(face) ? tileName(face) : `${tileName(face)}s`;
}

/** What a single tile is called where there are others of its face on the other side. */
export interface OneOfMore {
  readonly faces: readonly Face[];
  readonly word: 'another' | 'one';
}

/** "9 dot, an east wind and a pair of 3 bam": several alike come last, or they would seem to be several of each; "another 9 dot". */
export function tileList(tiles: readonly Face[], more?: OneOfMore): string {
  const countOf = (face: Face): number => tiles.filter((other) => other === face).length;
  const faces = [...new Set(tiles)].sort((a, b) => countOf(a) - countOf(b) || faceIndex(a) - faceIndex(b));
  return listed(
    faces.map((face) => {
      const count = countOf(face);
      if (count > 1) return `a ${groupName({ face, count })}`;
      if (more?.faces.includes(face)) return `${more.word} ${tileName(face)}`;
      return numbered(face) ? tileName(face) : `${face === 'east' ? 'an' : 'a'} ${tileName(face)}`;
    }),
  );
}
