// How risky a pass is to give, by the rules of thumb (common practice, no source).
import { RISK_GRADES, type RiskGrade } from '../../../policy/index.ts';
import type { RankedPass } from '../review.ts';

type Risky = Exclude<RiskGrade, 'none'>;

const PHRASES: Readonly<Record<Risky, string>> = {
  pair: 'gave a pair, by the rule of thumb the riskiest thing to pass',
  'like-numbers': 'gave like numbers, by the rule of thumb nearly as risky as a pair',
  'same-suit': 'gave tiles of one suit that belong together, which the rule of thumb would split up',
  flower: 'gave a flower, which the rule of thumb would keep',
};

/** What was given and what the rule of thumb says of it; null where it says nothing. */
export function riskPhrase({ tiles, risk }: RankedPass): string | null {
  if (risk === 'none') return null;
  const pung = tiles.length === 3 && new Set(tiles).size === 1;
  return pung ? 'gave a whole pung, by the rule of thumb riskier even than a pair' : PHRASES[risk];
}

/** What makes a pass risky, alone. */
export const RISK_NAMES: Readonly<Record<Risky, string>> = {
  pair: 'a pair',
  'like-numbers': 'like numbers',
  'same-suit': 'tiles of one suit that belong together',
  flower: 'a flower',
};

export function isSafer(risk: RiskGrade, than: RiskGrade): boolean {
  return RISK_GRADES.indexOf(risk) < RISK_GRADES.indexOf(than);
}
