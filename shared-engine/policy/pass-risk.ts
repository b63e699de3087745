// How risky the tiles of a pass are in another seat's rack (rules of thumb; common practice, no source).
import { type Face, numbered, type TileNumber } from '../rules/index.ts';

/** Safest first. */
export const RISK_GRADES = ['none', 'flower', 'same-suit', 'like-numbers', 'pair'] as const;
export type RiskGrade = (typeof RISK_GRADES)[number];

/**
 * The worst that holds of these tiles together: two alike; one number in two suits; three of one suit that are in a
 * row, all odd or all even; a flower. Order does not matter; up to three tiles are meant.
 */
export function riskGrade(tiles: readonly Face[]): RiskGrade {
  if (new Set(tiles).size < tiles.length) return 'pair';
  const parts = tiles.flatMap((face) => numbered(face) ?? []);
  const numbers = parts.map((part) => part.number);
  if (new Set(numbers).size < numbers.length) return 'like-numbers';
  const oneSuit = new Set(parts.map((part) => part.suit)).size === 1;
  if (parts.length >= 3 && oneSuit && belongTogether(numbers)) return 'same-suit';
  return tiles.includes('flower') ? 'flower' : 'none';
}

function belongTogether(numbers: readonly TileNumber[]): boolean {
  const inARow = Math.max(...numbers) - Math.min(...numbers) === numbers.length - 1;
  const sameParity = numbers.every((number) => number % 2 === numbers[0]! % 2);
  return inARow || sameParity;
}
