// Deals drawn for a kind of mistake tempt a typical player to it far more often than deals by chance.
import {
  choiceOfMistake,
  MISTAKE_CATEGORIES,
  type MistakeCategory,
} from '../../../shared-engine/analysis/review/mistake-categories.ts';
import { shareText } from '../analysis/proportions.ts';
import { drawnDeal, type Tempted, temptedIn } from '../analysis/tempted.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

/** Of each sort one: groups, gifts, the card, numbers. */
const KINDS: Record<Size, readonly MistakeCategory[]> = {
  small: ['continued'],
  full: [
    'broken-multiple',
    'flower-given',
    'new-multiple',
    'lone-honor-kept',
    'committed-too-soon',
    'pairs-chased',
    'too-many-blind',
    'too-few-blind',
    'continued',
    'stopped',
    'asked-too-few',
  ],
};
const DRAWN: Record<Size, number> = { small: 1, full: 15 };
/** Choices of a typical player in each. */
const TIMES: Record<Size, number> = { small: 2, full: 4 };
const BY_CHANCE: Record<Size, number> = { small: 6, full: 800 };

export const proof: Proof = {
  summary: 'Deals drawn for a kind of mistake tempt a typical player to it, deals by chance hardly do.',
  async run({ seed, size, tell }) {
    const chance = Array.from({ length: BY_CHANCE[size] }, (_, nth) =>
      temptedIn(drawnDeal(null, `${seed} chance ${nth}`), seed, 0),
    );
    return KINDS[size].map((kind) => {
      const row = tempting(kind, chance, { seed, size });
      tell?.(row);
      return row;
    });
  },
};

function tempting(
  kind: MistakeCategory,
  chance: readonly Tempted[],
  { seed, size }: { readonly seed: string; readonly size: Size },
): ProofRow {
  const deals = Array.from({ length: DRAWN[size] }, (_, nth) => drawnDeal(kind, `${seed} ${kind} ${nth}`));
  const tempted = deals.flatMap((deal) =>
    Array.from({ length: TIMES[size] }, (_, nth) => temptedIn(deal, seed, nth)),
  );
  const offered = chance.filter(({ choices }) => choices.includes(choiceOfMistake(kind)));
  const [hits, byChance] = [tempted, offered].map(
    (all) => all.filter(({ mistakes }) => mistakes.includes(kind)).length,
  ) as [number, number];
  const share = hits / tempted.length;
  const missing = deals.filter((deal) => deal.kind === null).length;
  return {
    what: `choices of a typical player that are the mistake the deal was drawn for: ${MISTAKE_CATEGORIES[kind]}`,
    value: `${shareText(hits, tempted.length)}; in deals by chance ${shareText(byChance, offered.length)}${missing > 0 ? `; ${missing} of ${deals.length} not found and by chance` : ''}`,
    bar: 'five times as often as by chance, or at least 60 %',
    // One case is the least that chance can be said to be.
    ok: share >= 0.6 || share >= (5 * Math.max(1, byChance)) / offered.length,
  };
}
