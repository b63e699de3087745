// An immutable bag of tiles: how many of each face it holds, and nothing about which physical tiles they are.
import { copiesOf, FACE_COUNT, FACES, type Face, faceIndex } from './face.ts';

/** Counts by face index, length 36. Never changed in place. */
export type Bag = readonly number[];

export const EMPTY_BAG: Bag = new Array<number>(FACE_COUNT).fill(0);

/** The whole set of 152 tiles (rule S1). */
export const FULL_SET: Bag = FACES.map(copiesOf);

export function bagOf(faces: readonly Face[]): Bag {
  return addTo(EMPTY_BAG, faces);
}

export function addTo(bag: Bag, faces: readonly Face[]): Bag {
  const counts = [...bag];
  for (const face of faces) counts[faceIndex(face)]!++;
  return counts;
}

/** The bag without these tiles, or null when one of them is not in it. */
export function takeFrom(bag: Bag, faces: readonly Face[]): Bag | null {
  return exchanged(bag, faces, []);
}

/** The bag without the tiles `gone` and with those that `came`; null when one of the former is not in it. */
export function exchanged(bag: Bag, gone: readonly Face[], came: readonly Face[]): Bag | null {
  const counts = [...bag];
  for (const face of gone) {
    const index = faceIndex(face);
    if (counts[index] === 0) return null;
    counts[index]!--;
  }
  for (const face of came) counts[faceIndex(face)]!++;
  return counts;
}

export function countOf(bag: Bag, face: Face): number {
  return bag[faceIndex(face)]!;
}

export function sizeOf(bag: Bag): number {
  return bag.reduce((sum, count) => sum + count, 0);
}

/** The tiles of a bag in rack order. */
export function facesOf(bag: Bag): Face[] {
  const faces: Face[] = [];
  for (let index = 0; index < FACE_COUNT; index++) {
    for (let count = bag[index]!; count > 0; count--) faces.push(FACES[index]!);
  }
  return faces;
}

/** These tiles in rack order; by insertion, because mostly it is three tiles or a rack, many times a second. */
export function sortFaces(faces: readonly Face[]): Face[] {
  const sorted: Face[] = [];
  for (const face of faces) {
    let place = sorted.push(face) - 1;
    for (; place > 0 && faceIndex(sorted[place - 1]!) > faceIndex(face); place--) {
      sorted[place] = sorted[place - 1]!;
    }
    sorted[place] = face;
  }
  return sorted;
}
