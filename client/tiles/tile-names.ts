// The spoken names of tiles.
import { type Face, numbered } from '../../shared-engine/index.ts';

const HONORS: Readonly<Record<string, string>> = {
  east: 'east wind',
  south: 'south wind',
  west: 'west wind',
  north: 'north wind',
  green: 'green dragon',
  red: 'red dragon',
  white: 'white dragon, soap',
  flower: 'flower',
  joker: 'joker',
};

export function tileName(face: Face): string {
  const suited = numbered(face);
  return suited ? `${suited.number} ${suited.suit}` : HONORS[face]!;
}

/** `3 bam, soap and flower`: in a list the two names of the white dragon would be two tiles. */
export function tileList(faces: readonly Face[]): string {
  return sentenceList(faces.map((face) => (face === 'white' ? 'soap' : tileName(face))));
}

export function sentenceList(parts: readonly string[]): string {
  if (parts.length < 2) return parts[0] ?? 'nothing';
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

export function tileCount(count: number): string {
  return count === 1 ? '1 tile' : `${count} tiles`;
}

/** The first letter in upper case. */
export function capitalize(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
