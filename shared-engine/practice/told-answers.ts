// What was told of a round in numbers, its deep analyses and its ledger, as text: opened again, it is told alike.
import { z } from 'zod';
import { type Review, withDeepAnalysis, withLedger } from '../analysis/index.ts';
import { analysisSchema, ledgerSchema } from '../protocol/index.ts';

const toldSchema = z.object({
  analyses: z.array(analysisSchema).max(20).readonly(),
  ledger: ledgerSchema.nullable(),
});

/** How many answers a review holds: one for each choice that was played on, and one for luck and choices. */
export function countTold({ choices, ledger }: Pick<Review, 'choices' | 'ledger'>): number {
  return choices.filter(({ analysis }) => analysis.depth === 'deep').length + (ledger === null ? 0 : 1);
}

/** Long, and the same words again and again: whoever stores it packs it. */
export function toldText({ choices, ledger }: Pick<Review, 'choices' | 'ledger'>): string {
  return JSON.stringify({ analyses: choices.map(({ analysis }) => analysis), ledger });
}

/** The same review with what was told of it before; as it is where the text is none, or tells of other choices. */
export function withTold(review: Review, text: string): Review {
  const told = toldSchema.safeParse(jsonOf(text)).data;
  if (told === undefined || told.analyses.length !== review.choices.length) return review;
  const { analyses, ledger } = told;
  const whole = analyses.reduce(
    (known, analysis, nth) => (analysis.depth === 'deep' ? withDeepAnalysis(known, nth, analysis) : known),
    review,
  );
  return ledger === null ? whole : withLedger(whole, ledger);
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
