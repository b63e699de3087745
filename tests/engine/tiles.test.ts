// The set of tiles and the bag that counts them.
import { describe, expect, test } from 'vitest';
import {
  addTo,
  bagOf,
  EMPTY_BAG,
  FULL_SET,
  facesOf,
  sizeOf,
  sortFaces,
  takeFrom,
} from '../../shared-engine/rules/tiles/bag.ts';
import { copiesOf, FACES, type Face, numbered, SUITS } from '../../shared-engine/rules/tiles/face.ts';

const tilesOf = (keep: (face: Face) => boolean): number =>
  FACES.filter(keep).reduce((sum, face) => sum + copiesOf(face), 0);

describe('the set', () => {
  test('S1 the set has 108 numbered tiles, 16 winds, 12 dragons, 8 flowers and 8 jokers (common practice, no source)', () => {
    expect(sizeOf(FULL_SET)).toBe(152);
    expect(tilesOf((face) => numbered(face) !== null)).toBe(108);
    expect(tilesOf((face) => ['east', 'south', 'west', 'north'].includes(face))).toBe(16);
    expect(tilesOf((face) => ['green', 'red', 'white'].includes(face))).toBe(12);
    expect(tilesOf((face) => face === 'flower')).toBe(8);
    expect(tilesOf((face) => face === 'joker')).toBe(8);
  });

  test('S1 each suit has its nine numbers', () => {
    for (const suit of SUITS) {
      const numbers = FACES.map(numbered).flatMap((tile) => (tile?.suit === suit ? [tile.number] : []));
      expect(numbers).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    }
  });

  test('S2 all flowers are one face', () => {
    expect(FACES.filter((face) => face.startsWith('flower'))).toEqual(['flower']);
  });
});

describe('the bag', () => {
  test('a bag gives its tiles back in rack order', () => {
    const faces: Face[] = ['joker', 'east', 'dot-9', 'bam-1', 'bam-1'];
    expect(facesOf(bagOf(faces))).toEqual(['bam-1', 'bam-1', 'dot-9', 'east', 'joker']);
    expect(sortFaces(faces)).toEqual(facesOf(bagOf(faces)));
    expect(sortFaces(facesOf(FULL_SET).reverse())).toEqual(facesOf(FULL_SET));
  });

  test('taking a tile that is not in the bag gives null and changes nothing', () => {
    const bag = bagOf(['bam-1']);
    expect(takeFrom(bag, ['bam-1', 'bam-1'])).toBeNull();
    expect(takeFrom(bag, ['red'])).toBeNull();
    expect(facesOf(bag)).toEqual(['bam-1']);
  });

  test('adding and taking the same tiles gives the same bag', () => {
    const bag = bagOf(['crak-4', 'flower']);
    expect(takeFrom(addTo(bag, ['crak-4', 'south']), ['south', 'crak-4'])).toEqual(bag);
    expect(sizeOf(EMPTY_BAG)).toBe(0);
  });
});
