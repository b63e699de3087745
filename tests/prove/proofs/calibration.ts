// Proof: an outlook of 30 in 100 comes true 30 times in 100, on plays and on a card the model never saw.
import { type CompiledCard, createOutlook, houseCard, loadVectors } from '../../../shared-engine/index.ts';
import { gamesOn } from '../../../shared-engine/tools/win-model/games.ts';
import { progressBar } from '../../../shared-engine/tools/win-model/progress-bar.ts';
import { variantCard } from '../../../shared-engine/tools/win-model/variant-card.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { brier, calibrationSlope } from '../../../shared-engine/tools/win-model/logistic.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

/** Simulated plays: with the house card, and with each of the cards never seen. */
const PLAYS: Readonly<Record<Size, { readonly seen: number; readonly unseen: number }>> = {
  small: { seen: 600, unseen: 200 },
  full: { seen: 20_000, unseen: 3000 },
};
const UNSEEN_CARDS: Readonly<Record<Size, number>> = { small: 1, full: 3 };
const DECILES = 10;

/** What was said of a seat, as a chance, and whether it won. */
interface Said {
  readonly chance: number;
  readonly won: number;
}

export const proof: Proof = {
  summary: 'An outlook means what it says: calibration on held-out plays and on cards never seen.',
  async run({ seed, size }) {
    const { seen, unseen } = PLAYS[size];
    const cards = Array.from({ length: UNSEEN_CARDS[size] }, (_, n) => variantCard(`never seen ${n}`));
    const show = size === 'full' ? progressBar('plays', seen + unseen * cards.length) : () => {};
    const vectors = await loadVectors();
    let done = 0;
    const sayOn = (card: CompiledCard, name: string, plays: number): Said[] => {
      const outlook = createOutlook(card);
      const play = gamesOn(card, vectors);
      return Array.from({ length: plays }, (_, n) => {
        const samples = play(`held out ${seed} ${name} ${n}`, 1);
        show(++done);
        return samples.map(({ rack, place, wins }) => ({ chance: outlook.of(rack, place) / 100, won: wins }));
      }).flat();
    };
    const house = sayOn(houseCard(), 'house', seen);
    return [
      { what: 'held-out plays on the house card', value: seen, bar: 'four seats each', ok: true },
      slopeRow('slope on the house card', house, 0.95, 1.05, size),
      ...decileRows(house),
      brierRow(house),
      ...cards.map((card, n) =>
        slopeRow(
          `slope on unseen card ${n + 1} (${card.lines.length} lines, ${unseen} plays)`,
          sayOn(card, `unseen ${n}`, unseen),
          0.9,
          1.1,
          size,
        ),
      ),
    ];
  },
};

/** A small size cannot tell 0.95 from 1: there the bar must be within 3.09 standard errors of the slope. */
function slopeRow(what: string, said: readonly Said[], low: number, high: number, size: Size): ProofRow {
  const { slope, error } = calibrationSlope(
    said.map(({ chance }) => chance),
    said.map(({ won }) => won),
  );
  const slack = size === 'small' ? NORMAL_POINT['99.8'] * error : 0;
  return {
    what: `${what}, standard error ${error.toFixed(3)}`,
    value: round(slope),
    bar: `${low}–${high}${slack > 0 ? ` within 3.09 standard errors (${slack.toFixed(3)})` : ''}`,
    ok: slope + slack >= low && slope - slack <= high,
  };
}

function decileRows(said: readonly Said[]): ProofRow[] {
  const order = [...said].sort((a, b) => a.chance - b.chance);
  return Array.from({ length: DECILES }, (_, decile) => {
    const members = order.slice(
      Math.floor((decile * order.length) / DECILES),
      Math.floor(((decile + 1) * order.length) / DECILES),
    );
    const hits = sum(members.map(({ won }) => won));
    const mean = sum(members.map(({ chance }) => chance)) / members.length;
    const { low, high } = wilson(hits, members.length, NORMAL_POINT['99.8']);
    return {
      what: `decile ${decile + 1}: mean outlook of ${members.length} seats, ${round((hits / members.length) * 100)} in 100 won`,
      value: round(mean * 100),
      bar: `in the 99.8 % Wilson interval ${round(low * 100)}–${round(high * 100)}`,
      ok: low <= mean && mean <= high,
    };
  });
}

function brierRow(said: readonly Said[]): ProofRow {
  const outcomes = said.map(({ won }) => won);
  const share = sum(outcomes) / said.length;
  const score = brier(
    said.map(({ chance }) => chance),
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
