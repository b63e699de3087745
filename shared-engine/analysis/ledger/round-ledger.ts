// The ledger of a closed round: what each choice was worth against the steady player's, and what luck did in between.
import { SEATS, type SeatRecord } from '../../rules/index.ts';
import { type BatchRange, DEALS_PER_BATCH } from '../belief/particle-filter.ts';
import { closingSituation, offeredChoices, type Situation } from '../belief/situation.ts';
import { actionOf } from '../comparison/alternatives.ts';
import type { Analyst } from '../comparison/analyze.ts';
import { always, column, createDealSource } from '../comparison/sampled-deals.ts';
import { situationSeeds } from '../comparison/situation-seed.ts';
import { averageDeal } from './average-deal.ts';
import { neighborSuits } from './neighbor-suits.ts';
import { type Ledger, settle, type ValuedChoice } from './settle.ts';
import { createSteadyPlayer, type SteadyPlayer } from './steady.ts';

/** Batches of sampled deals at each choice: where there is time, and for tests and a loaded server. */
export const LEDGER_BATCHES = { deep: 64, shallow: 16 } as const;

/** Batches are numbered from here on, far from those of verdicts and reasons. */
const FIRST_LEDGER_BATCH = 0x4_0000;

interface Prepared {
  readonly steadyPlayer: SteadyPlayer;
  /** By turn after East and ways to play. */
  readonly averages: Map<string, number>;
}

const prepared = new WeakMap<Analyst, Prepared>();

/** Made for a card when it is asked for first. */
function preparedFor(analyst: Analyst): Prepared {
  const known = prepared.get(analyst) ?? {
    steadyPlayer: createSteadyPlayer(analyst.card),
    averages: new Map<string, number>(),
  };
  prepared.set(analyst, known);
  return known;
}

/** Seats are alike but for their turn after East, so that each turn has one number whoever deals. */
function averageFor(analyst: Analyst, { seat, dealer, terms }: Situation): number {
  const { averages, steadyPlayer } = preparedFor(analyst);
  const turn = SEATS[(seat + 4 - dealer) % 4]!;
  const key = JSON.stringify([turn, terms]);
  const place = { seat: turn, dealer: SEATS[0], terms };
  const average = averages.get(key) ?? averageDeal(analyst, steadyPlayer, place);
  averages.set(key, average);
  return average;
}

/** The same record, card and number of batches give the same bytes. Throws a RangeError where there was no choice. */
export function ledgerOf(analyst: Analyst, record: SeatRecord, batches: number): Ledger {
  const range = { first: FIRST_LEDGER_BATCH, batches };
  const { steadyPlayer } = preparedFor(analyst);
  const offers = offeredChoices(record);
  const choices = offers.flatMap((offered): readonly ValuedChoice[] => {
    const { situation, chosen } = offered;
    const { steady, parts } = steadyPlayer.actionsFor(offered);
    const values = valuesOf(analyst, situation, [steady, ...parts.map(({ action }) => action)], range);
    return parts.map(({ kind, step, by }, n) => {
      const isLast = n === parts.length - 1;
      const afterBy = isLast && record.actualSteps?.includes(chosen) ? 'class' : 'luck';
      return { kind, step, by, afterBy, value: values[n]!, chosen: values[n + 1]! };
    });
  });
  if (choices.length === 0) throw new RangeError('The record has no choice.');
  const closing = closingSituation(record);
  const [close] = valuesOf(analyst, closing, [actionOf([], 0)], range);
  const { situation } = offers[0]!;
  const average = situation.step === 0 ? averageFor(analyst, situation) : null;
  const { deals } = situationSeeds(analyst.cardHash, closing);
  return {
    ...settle(choices, close!, { average, dealsPerBatch: DEALS_PER_BATCH }),
    neighbors: neighborSuits(analyst.belief, closing, deals, range),
  };
}

/** The seat's own chance after each action, by batch; actions that are the same are played once. */
function valuesOf(
  analyst: Analyst,
  situation: Situation,
  actions: readonly (readonly number[])[],
  range: BatchRange,
): readonly Float64Array[] {
  const keys = actions.map((action) => action.join());
  const different = actions.filter((_, n) => keys.indexOf(keys[n]!) === n);
  const source = createDealSource(analyst, situation, situationSeeds(analyst.cardHash, situation), 'typical');
  const results = source.rollOut(range, different.map(always));
  const values = different.map((_, action) => column(results, action, situation.seat));
  return keys.map((key) => values[different.findIndex((action) => action.join() === key)]!);
}
