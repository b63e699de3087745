// The faces of the tile set and how each is written; imports nothing.

/** A tuple with one entry a seat, indexed by `Seat`. */
export type Four<T> = readonly [T, T, T, T];

/** The numbered suits. */
export const SUITS = ['bam', 'crak', 'dot'] as const;
export type Suit = (typeof SUITS)[number];

/** The numbers of a suit. */
export const NUMBERS = [1, 2, 3, 4, 5, 6, 7, 8, 9] as const;
export type TileNumber = (typeof NUMBERS)[number];

export const WINDS = ['east', 'south', 'west', 'north'] as const;
export type Wind = (typeof WINDS)[number];

/** Dragons in the order of the suits they belong to: green–bam, red–crak, white (soap)–dot. Common practice, no source. */
export const DRAGONS = ['green', 'red', 'white'] as const;
export type Dragon = (typeof DRAGONS)[number];

/** One of the 36 faces, as written in messages and logs. `white` is also soap and stands for zero. */
export type Face = `${Suit}-${TileNumber}` | Wind | Dragon | 'flower' | 'joker';

/** Every face once, in rack order; a face's place in this array is its index everywhere. */
export const FACES: readonly Face[] = [
  ...SUITS.flatMap((suit) => NUMBERS.map((number): Face => `${suit}-${number}`)),
  ...WINDS,
  ...DRAGONS,
  'flower',
  'joker',
];

export const FACE_COUNT = 36;
export const JOKER_INDEX = 35;

const indexByFace: ReadonlyMap<string, number> = new Map(FACES.map((face, index) => [face, index]));

/** Index 0–35 of a face. */
export function faceIndex(face: Face): number {
  return indexByFace.get(face) as number;
}

export function isFace(text: string): text is Face {
  return indexByFace.has(text);
}

/** How many tiles of this face the set holds: 4, or 8 for flower and joker (rule S1). */
export function copiesOf(face: Face): number {
  return face === 'flower' || face === 'joker' ? 8 : 4;
}

/** Suit and number of a numbered tile, otherwise null. */
export function numbered(face: Face): { readonly suit: Suit; readonly number: TileNumber } | null {
  const index = faceIndex(face);
  if (index >= 27) return null;
  return { suit: SUITS[Math.floor(index / 9)]!, number: NUMBERS[index % 9]! };
}
