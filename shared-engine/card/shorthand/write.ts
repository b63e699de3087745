// Writes a pattern in the shorthand, in one way only: equal patterns give equal texts.
import { canonicalPattern, type PatternBody } from '../canonical.ts';
import type { CardDomain, CardTile } from '../format.ts';
import { dragonWord } from './words.ts';

/** `3a 3a+1 / 2a+4 2match 4flower 25 concealed`; see FORMAT.md. Takes patterns within the limits of the format. */
export function writeShorthand(pattern: PatternBody): string {
  const { groups, where, points, concealed } = canonicalPattern(pattern);
  const parts: string[] = [];
  const opened: string[] = [];
  // The suit of what is written next; null before the first suit, which needs no sign.
  let current: string | null = null;
  for (const { size, tile } of groups) {
    const suit = suitOf(tile);
    if (suit !== null && suit.name !== current) {
      const sign = suit.given ? `/${suit.name}` : suitSign(suit.name, opened, current);
      if (sign !== null) parts.push(sign);
      if (!suit.given && !opened.includes(suit.name)) opened.push(suit.name);
      current = suit.name;
    }
    parts.push(`${size}${tileText(tile)}`);
  }
  const limits = Object.entries(where ?? {}).map(
    ([name, domain]) => `${shortName(name)}=${domainText(domain)}`,
  );
  return [...parts, ...limits, String(points), ...(concealed ? ['concealed'] : [])].join(' ');
}

interface SuitUsed {
  readonly name: string;
  /** Whether it is bam, crak or dot and not one of the suits that are left open. */
  readonly given: boolean;
}

function suitOf(tile: CardTile): SuitUsed | null {
  if ('suit' in tile) {
    return typeof tile.suit === 'string'
      ? { name: tile.suit, given: true }
      : { name: tile.suit.var, given: false };
  }
  if ('dragon' in tile && typeof tile.dragon === 'object' && 'matching' in tile.dragon) {
    return { name: tile.dragon.matching, given: false };
  }
  return null;
}

/** A bare slash goes to a suit not used before, one with a digit back to an earlier one. */
function suitSign(name: string, opened: readonly string[], current: string | null): string | null {
  const known = opened.indexOf(name);
  if (known >= 0) return `/${known + 1}`;
  return current === null ? null : '/';
}

function tileText(tile: CardTile): string {
  if ('flower' in tile) return 'flower';
  if ('zero' in tile) return 'zero';
  if ('yearDigit' in tile) return `year${tile.yearDigit + 1}`;
  if ('wind' in tile) return typeof tile.wind === 'string' ? tile.wind : shortName(tile.wind.var);
  if ('dragon' in tile) {
    if (typeof tile.dragon === 'string') return dragonWord(tile.dragon);
    return 'var' in tile.dragon ? shortName(tile.dragon.var) : 'match';
  }
  if (typeof tile.number === 'number') return `x${tile.number}`;
  const { var: name, plus = 0 } = tile.number;
  return plus === 0 ? name : `${name}${plus > 0 ? '+' : '-'}${Math.abs(plus)}`;
}

/** `wind1` is written `wind`; later ones keep their digit. */
function shortName(name: string): string {
  return name.replace(/1$/, '');
}

function domainText(domain: CardDomain): string {
  if ('from' in domain) return `${domain.from}-${domain.to}`;
  if ('numbers' in domain) return domain.numbers.join(',');
  if ('suits' in domain) return domain.suits.join(',');
  if ('winds' in domain) return domain.winds.join(',');
  return domain.dragons.map(dragonWord).join(',');
}
