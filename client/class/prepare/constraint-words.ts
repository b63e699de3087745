// What a rack should hold, in one line.
import type { CompiledCard, Constraint } from '../../../shared-engine/index.ts';
import { type AmountEntry, boundOf } from './draft.ts';
import { CONSTRAINT } from './strings.ts';

const ENTRIES = Object.keys(CONSTRAINT.amounts) as readonly AmountEntry[];
const BOUND_WORDS = {
  any: '',
  exactly: '',
  'at-least': `${CONSTRAINT.atLeast} `,
  'at-most': `${CONSTRAINT.atMost} `,
} as const;

/** `Jokers: at least 2 · Pairs, pungs and kongs: 3`. */
export function constraintWords(constraint: Constraint, sections: CompiledCard['sections']): string {
  const amounts = ENTRIES.filter((entry) => constraint[entry] !== undefined).map((entry) => {
    const { bound, count } = boundOf(constraint[entry]);
    return `${CONSTRAINT.amounts[entry]}: ${BOUND_WORDS[bound]}${count}`;
  });
  const section = sections.find(({ id }) => id === constraint.section);
  const all = [...amounts, ...(section ? [`${CONSTRAINT.section}: ${section.name}`] : [])];
  return all.length === 0 ? CONSTRAINT.anything : all.join(' · ');
}
