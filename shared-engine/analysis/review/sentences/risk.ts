// How risky a pass is to give, by the rules of thumb (common practice, no source).
import { RISK_GRADES, type RiskGrade } from '../../../policy/index.ts';
import type { RankedPass } from '../review.ts';
import { capitalized } from './phrases.ts';

type Risky = Exclude<RiskGrade, 'none'>;

/** What a rule of thumb says of it, beside the sentence that names the tiles given. */
const RULES: Readonly<Record<Risky, (subject: string) => string>> = {
  pair: () => 'By the rule of thumb a pair is the riskiest thing to pass.',
  'like-numbers': (subject) =>
    `${subject} gave like numbers, by the rule of thumb nearly as risky to pass as a pair.`,
  'same-suit': (subject) =>
    `${subject} gave tiles of one suit that belong together, which the rule of thumb would split up.`,
  flower: () => 'By the rule of thumb a flower is kept.',
};

/** Null where a rule of thumb says nothing. */
export function riskSentence({ tiles, risk }: RankedPass, subject: string): string | null {
  if (risk === 'none') return null;
  const isPung = tiles.length === 3 && new Set(tiles).size === 1;
  return isPung
    ? 'By the rule of thumb a whole pung is riskier to pass even than a pair.'
    : RULES[risk](capitalized(subject));
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
