// What luck brought and what choices cost, from values that are each known once: the parts add up exactly.
import type { Actor, Step } from '../../rules/index.ts';
import { type Estimate, estimate, meanOf, thousandth } from '../comparison/estimate.ts';
import { SHOWN_TAIL } from '../comparison/series.ts';
import type { NeighborSuits } from './longest-suit.ts';
import type { LedgerKind } from './steady.ts';

/** Every figure of a ledger is in this unit, in thousandths. */
export const LEDGER_UNIT = 'wins in 100 games';

export interface LedgerEntry {
  readonly kind: LedgerKind;
  readonly step: Step;
  readonly by: Actor;
  /** The chance when the choice was offered, played on by the steady player. */
  readonly value: Estimate;
  /** By how much the choice is better than that of the steady player; below 0 where it is worse. */
  readonly choice: number;
  /** What came between this choice and the next one, or the close. */
  readonly after: number;
  /** Whether that was luck, or a class that went on from another choice. */
  readonly afterBy: 'luck' | 'class';
}

/** `start` + `luck` + `choices` + `standIns` + `jumps` is `close`, to the thousandth; so is each part the sum of its entries. */
export interface LedgerSums {
  readonly unit: typeof LEDGER_UNIT;
  /** What an average deal is worth to the steady player in this place; null where the first passes are missing. */
  readonly average: number | null;
  /** The chance when the first choice was offered, and at the close. */
  readonly start: Estimate;
  readonly close: Estimate;
  /** What tiles, votes and numbers of the others brought. */
  readonly luck: Estimate;
  /** What the player's own choices brought, against the steady player's; where the player made none, those of the seat. */
  readonly choices: Estimate;
  /** What others chose for the player, and what a class brought by going on from another choice. */
  readonly standIns: number;
  readonly jumps: number;
  readonly entries: readonly LedgerEntry[];
  readonly sampledDeals: number;
}

export interface Ledger extends LedgerSums {
  /** What the passes told of the neighbors by the close, to the right, across and to the left. */
  readonly neighbors: readonly NeighborSuits[];
}

/** One choice and its two values, by batch of sampled deals. */
export interface ValuedChoice extends Pick<LedgerEntry, 'kind' | 'step' | 'by' | 'afterBy'> {
  /** Of the steady player's choice, and of the one made; the steady player goes on after either. */
  readonly value: Float64Array;
  readonly chosen: Float64Array;
}

/** What a round is compared with, and what a batch of its values holds. */
export interface LedgerTerms {
  readonly average: number | null;
  readonly dealsPerBatch: number;
}

/** `close` is the value at the close, by batch. */
export function settle(
  choices: readonly ValuedChoice[],
  close: Float64Array,
  { average, dealsPerBatch }: LedgerTerms,
): LedgerSums {
  const values = [...choices.map(({ value }) => value), close];
  const entries = choices.map(({ kind, step, by, afterBy, value, chosen }, n): LedgerEntry => {
    const now = estimated(value);
    const choice = rounded(less(chosen, value));
    const after = thousandth(rounded(values[n + 1]!) - now.value - choice);
    return { kind, step, by, value: now, choice, after, afterBy };
  });
  const anyOwn = choices.some(({ by }) => by === 'player');
  const isOwn = ({ by }: Pick<LedgerEntry, 'by'>): boolean => !anyOwn || by === 'player';
  const sumOf = (holds: (entry: LedgerEntry) => boolean, part: 'choice' | 'after'): number =>
    thousandth(entries.filter(holds).reduce((sum, entry) => sum + entry[part], 0));
  const byLuck = ({ afterBy }: Pick<LedgerEntry, 'afterBy'>): boolean => afterBy === 'luck';
  const ownByBatch = totals(
    choices.filter(isOwn).map(({ value, chosen }) => less(chosen, value)),
    close.length,
  );
  const luckByBatch = totals(
    choices.flatMap((one, n) => (byLuck(one) ? [less(values[n + 1]!, one.chosen)] : [])),
    close.length,
  );
  return {
    unit: LEDGER_UNIT,
    average,
    start: estimated(values[0]!),
    close: estimated(close),
    luck: { value: sumOf(byLuck, 'after'), halfWidth: estimated(luckByBatch).halfWidth },
    choices: { value: sumOf(isOwn, 'choice'), halfWidth: estimated(ownByBatch).halfWidth },
    standIns: sumOf((entry) => !isOwn(entry), 'choice'),
    jumps: sumOf((entry) => !byLuck(entry), 'after'),
    entries,
    sampledDeals: close.length * dealsPerBatch,
  };
}

function estimated(values: Float64Array): Estimate {
  const { value, halfWidth } = estimate(values, SHOWN_TAIL);
  return { value: thousandth(value), halfWidth: thousandth(halfWidth) };
}

function rounded(values: Float64Array): number {
  return thousandth(meanOf(values));
}

function less(one: Float64Array, other: Float64Array): Float64Array {
  return one.map((value, n) => value - other[n]!);
}

/** The sum of all of them, batch by batch. */
function totals(all: readonly Float64Array[], batches: number): Float64Array {
  return Float64Array.from({ length: batches }, (_, n) => all.reduce((sum, one) => sum + one[n]!, 0));
}
