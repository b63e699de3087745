// How risky a pass is to give, by the rules of thumb (common practice, no source).
import { RISK_GRADES, type RiskGrade, riskGrade } from '../../../policy/index.ts';
import { type Face, numbered } from '../../../rules/index.ts';
import type { RankedPass } from '../review.ts';
import { capitalized } from './phrases.ts';
import { groupName, tileList } from './tiles.ts';

type Risky = Exclude<RiskGrade, 'none'>;

/** The tiles of a pass that a rule of thumb warns of; empty where the pass does not break that rule. */
export function riskyTiles(tiles: readonly Face[], risk: RiskGrade): readonly Face[] {
  const likeIt = (face: Face) => tiles.filter((other) => other === face).length;
  const numberOf = (face: Face) => numbered(face)?.number;
  switch (risk) {
    case 'none':
      return [];
    case 'pair':
      return tiles.filter((face) => likeIt(face) > 1);
    case 'like-numbers':
      return tiles.filter(
        (face) =>
          numberOf(face) !== undefined &&
          tiles.some((other) => other !== face && numberOf(other) === numberOf(face)),
      );
    case 'same-suit':
      return riskGrade(tiles) === 'same-suit' ? tiles : [];
    case 'flower':
      return tiles.filter((face) => face === 'flower');
  }
}

/** What a rule of thumb says of it, with the tiles it is about. */
const RULES: Readonly<Record<Risky, (gave: string, tiles: readonly Face[]) => string>> = {
  pair: (gave, tiles) => `${gave} ${tileList(tiles)}, by the rule of thumb the riskiest thing to pass.`,
  'like-numbers': (gave, tiles) =>
    `${gave} like numbers, ${tileList(tiles)}, by the rule of thumb nearly as risky to pass as a pair.`,
  'same-suit': (gave, tiles) =>
    `${gave} ${tileList(tiles)}, ${together(tiles)}; by the rule of thumb such tiles are not passed together.`,
  flower: (gave) => `${gave} a flower; by the rule of thumb a flower is kept.`,
};

/** Null where a rule of thumb says nothing. */
export function riskSentence({ tiles, risk }: RankedPass, subject: string): string | null {
  if (risk === 'none') return null;
  const gave = `${capitalized(subject)} gave`;
  const risky = riskyTiles(tiles, risk);
  const [face] = risky;
  const isPung = tiles.length === 3 && new Set(tiles).size === 1;
  return isPung && face !== undefined
    ? `${gave} a ${groupName({ face, count: 3 })}, by the rule of thumb riskier to pass even than a pair.`
    : RULES[risk](gave, risky);
}

/** What makes a pass risky, alone. */
export function riskName(tiles: readonly Face[], risk: Risky): string {
  switch (risk) {
    case 'pair':
      return 'a pair';
    case 'like-numbers':
      return 'like numbers';
    case 'same-suit':
      return `tiles of one suit, ${together(tiles)}`;
    case 'flower':
      return 'a flower';
  }
}

/** The same with the tiles, where they do not follow from it. */
export function riskWithTiles(tiles: readonly Face[], risk: Risky): string {
  const list = tileList(riskyTiles(tiles, risk));
  switch (risk) {
    case 'like-numbers':
      return `like numbers: ${list}`;
    case 'same-suit':
      return `${list}, ${together(tiles)}`;
    case 'pair':
    case 'flower':
      return list;
  }
}

/** What three tiles of one suit have in common. */
function together(tiles: readonly Face[]): string {
  const numbers = tiles.flatMap((face) => numbered(face)?.number ?? []);
  if (Math.max(...numbers) - Math.min(...numbers) === numbers.length - 1) return 'in a row';
  return numbers[0]! % 2 === 0 ? 'all even' : 'all odd';
}

export function isSafer(risk: RiskGrade, than: RiskGrade): boolean {
  return RISK_GRADES.indexOf(risk) < RISK_GRADES.indexOf(than);
}
