// A win probability of 30 in 100 comes true 30 times in 100, on plays and on cards that the fit has not seen.
import { createWinProbability } from '../../../shared-engine/analysis/win-probability/win-probability.ts';
import type { CompiledCard } from '../../../shared-engine/card/compiled.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { loadSimd } from '../../../shared-engine/kernels/simd/module.ts';
import { gamesOn } from '../../../shared-engine/tools/win-model/games.ts';
import { brier, calibrationSlope } from '../../../shared-engine/tools/win-model/logistic.ts';
import { progressBar } from '../../../shared-engine/tools/win-model/progress-bar.ts';
import { variantCard } from '../../../shared-engine/tools/win-model/variant-card.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

/** Simulated plays: with the house card, and with each of the held-out cards. */
const PLAYS: Readonly<Record<Size, { readonly house: number; readonly heldOut: number }>> = {
  small: { house: 600, heldOut: 200 },
  full: { house: 20_000, heldOut: 3000 },
};
const HELD_OUT_CARDS: Readonly<Record<Size, number>> = { small: 1, full: 3 };
const DECILES = 10;

/** The chance predicted for a seat, and whether it won. */
interface Prediction {
  readonly chance: number;
  readonly won: number;
}

export const proof: Proof = {
  summary: 'Win probabilities are calibrated on held-out plays and on held-out cards.',
  async run({ seed, size }) {
    const amounts = PLAYS[size];
    const cards = Array.from({ length: HELD_OUT_CARDS[size] }, (_, n) => variantCard(`never seen ${n}`));
    const show =
      size === 'full' ? progressBar('plays', amounts.house + amounts.heldOut * cards.length) : () => {};
    const simd = await loadSimd();
    let done = 0;
    const predictOn = (card: CompiledCard, name: string, plays: number): Prediction[] => {
      const winProbability = createWinProbability(card);
      const play = gamesOn(card, simd);
      return Array.from({ length: plays }, (_, n) => {
        const samples = play(`held out ${seed} ${name} ${n}`, 1);
        show(++done);
        return samples.map(({ rack, place, wins }) => ({
          chance: winProbability.of(rack, 0, place) / 100,
          won: wins,
        }));
      }).flat();
    };
    const house = predictOn(houseCard(), 'house', amounts.house);
    return [
      { what: 'held-out plays on the house card', value: amounts.house, bar: 'four seats each', ok: true },
      slopeRow('slope on the house card', house, 0.95, 1.05, size),
      ...decileRows(house),
      brierRow(house),
      ...cards.map((card, n) =>
        slopeRow(
          `slope on held-out card ${n + 1} (${card.patterns.length} patterns, ${amounts.heldOut} plays)`,
          predictOn(card, `unseen ${n}`, amounts.heldOut),
          0.9,
          1.1,
          size,
        ),
      ),
    ];
  },
};

/** A small size cannot tell 0.95 from 1: there the bar must be within 3.09 standard errors of the slope. */
function slopeRow(
  what: string,
  predicted: readonly Prediction[],
  low: number,
  high: number,
  size: Size,
): ProofRow {
  const { slope, error } = calibrationSlope(
    predicted.map(({ chance }) => chance),
    predicted.map(({ won }) => won),
  );
  const slack = size === 'small' ? NORMAL_POINT['99.8'] * error : 0;
  return {
    what: `${what}, standard error ${error.toFixed(3)}`,
    value: round(slope),
    bar: `${low}–${high}${slack > 0 ? ` within 3.09 standard errors (${slack.toFixed(3)})` : ''}`,
    ok: slope + slack >= low && slope - slack <= high,
  };
}

function decileRows(predicted: readonly Prediction[]): ProofRow[] {
  const order = [...predicted].sort((a, b) => a.chance - b.chance);
  return Array.from({ length: DECILES }, (_, decile) => {
    const members = order.slice(
      Math.floor((decile * order.length) / DECILES),
      Math.floor(((decile + 1) * order.length) / DECILES),
    );
    const hits = sum(members.map(({ won }) => won));
    const mean = sum(members.map(({ chance }) => chance)) / members.length;
    const { low, high } = wilson(hits, members.length, NORMAL_POINT['99.8']);
    return {
      what: `decile ${decile + 1}: mean win probability of ${members.length} seats, ${round((hits / members.length) * 100)} in 100 won`,
      value: round(mean * 100),
      bar: `in the 99.8 % Wilson interval ${round(low * 100)}–${round(high * 100)}`,
      ok: low <= mean && mean <= high,
    };
  });
}

function brierRow(predicted: readonly Prediction[]): ProofRow {
  const outcomes = predicted.map(({ won }) => won);
  const share = sum(outcomes) / predicted.length;
  const score = brier(
    predicted.map(({ chance }) => chance),
    outcomes,
  );
  const flat = share * (1 - share);
  return {
    what: 'Brier score',
    value: round(score, 1e4),
    bar: `below ${round(flat, 1e4)}, the score of one chance for all`,
    ok: score < flat,
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function round(value: number, scale = 1000): number {
  return Math.round(value * scale) / scale;
}
