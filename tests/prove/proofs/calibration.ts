// A chance of 30 in 100 comes true 30 times in 100, on plays and on cards that the fit has not seen.

import type { CompiledCard } from '../../../shared-engine/card/compiled.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { loadSimd } from '../../../shared-engine/kernels/simd/module.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { fitConditional } from '../../../shared-engine/tools/win-model/conditional-logit.ts';
import { gamesOn } from '../../../shared-engine/tools/win-model/games.ts';
import { progressBar } from '../../../shared-engine/tools/win-model/progress-bar.ts';
import { variantCard } from '../../../shared-engine/tools/win-model/variant-card.ts';
import { chancesOn } from '../analysis/table-chances.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { brier } from '../statistics/brier.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

/** Tables of the house card and of each held-out card, and plays of each table. */
const TABLES: Readonly<Record<Size, { readonly house: number; readonly heldOut: number }>> = {
  small: { house: 110, heldOut: 40 },
  full: { house: 5000, heldOut: 1500 },
};
const PLAYS = 4;
/** How many sections each held-out card is made from. */
const HELD_OUT_CARDS: Readonly<Record<Size, readonly number[]>> = { small: [8, 2], full: [8, 3, 1] };
const DECILES = 10;
/** Of what can be known of a play before its walls are. */
const SKILL_BARS: Readonly<Record<Size, number>> = { small: 0.5, full: 0.8 };
/** Wall games in 100 that the mean prediction may miss by; cards of one size differ, and the model knows only the size. */
const WALL_BARS: Readonly<Record<Size, { readonly house: number; readonly heldOut: number }>> = {
  small: { house: 4, heldOut: 25 },
  full: { house: 1, heldOut: 10 },
};

/** One table: what was predicted of each seat and of a wall game, in that order, and what came of each play. */
interface Outcome {
  readonly chances: readonly number[];
  /** By play, the place in `chances` that came true. */
  readonly ended: readonly number[];
  /** Tiles never drawn, by play that somebody won. */
  readonly left: readonly number[];
}

export const proof: Proof = {
  summary: 'Chances to win are calibrated and skilled on held-out plays and on held-out cards.',
  async run({ seed, size }) {
    const amounts = TABLES[size];
    const cards = HELD_OUT_CARDS[size].map((sections, n) => variantCard(`${seed} held out ${n}`, sections));
    const show =
      size === 'full' ? progressBar('tables', amounts.house + amounts.heldOut * cards.length) : () => {};
    const simd = await loadSimd();
    let done = 0;
    const outcomesOn = (card: CompiledCard, name: string, tables: number): Outcome[] => {
      const chancesAt = chancesOn(card);
      const games = gamesOn(card, simd);
      return Array.from({ length: tables }, (_, n) => {
        const held = `held out ${seed} ${name} ${n}`;
        const { results, ...table } = games.played(games.tableOf(held), held, PLAYS);
        show(++done);
        return {
          chances: chancesAt(table),
          ended: results.map(({ winner }) => winner ?? SEATS.length),
          left: results.flatMap(({ winner, wallLeft }) => (winner === null ? [] : [wallLeft])),
        };
      });
    };
    const house = outcomesOn(houseCard(), 'house', amounts.house);
    return [
      leftRow(house),
      slopeRow('slope on the house card', house, [0.95, 1.05], size),
      ...decileRows(house),
      skillRow('house card', house, size),
      wallRow('house card', house, WALL_BARS[size].house),
      ...cards.flatMap((card, n) => {
        const held = outcomesOn(card, `card ${n}`, amounts.heldOut);
        const name = `held-out card ${n + 1} (${card.patterns.length} patterns)`;
        return [
          slopeRow(`slope on ${name}`, held, [0.9, 1.1], size),
          skillRow(name, held, size),
          wallRow(name, held, WALL_BARS[size].heldOut),
        ];
      }),
    ];
  },
};

function leftRow(outcomes: readonly Outcome[]): ProofRow {
  const left = outcomes.flatMap((outcome) => outcome.left);
  return {
    what: `tiles left in the wall at a win of ${outcomes.length * PLAYS} plays on the house card`,
    value: round(sum(left) / left.length),
    bar: 'reported',
    ok: true,
  };
}

/**
 * The slope of the log chances in a conditional logit of the outcomes, 1 where they mean what they say. One play a
 * table, so that outcomes are independent. A small size can only show that the bar is not missed.
 */
function slopeRow(
  what: string,
  outcomes: readonly Outcome[],
  [low, high]: readonly [number, number],
  size: Size,
): ProofRow {
  const { coefficients, errors } = fitConditional(
    outcomes.map(({ chances, ended }) => ({
      rows: chances.map((chance) => [Math.log(chance)]),
      chosen: chances.map((_, place) => (place === ended[0] ? 1 : 0)),
    })),
  );
  const [slope, halfWidth] = [coefficients[0]!, errors[0]! * NORMAL_POINT['95']];
  const [from, to] = [slope - halfWidth, slope + halfWidth];
  const small = size === 'small';
  return {
    what: `${what} (95 %: ${round(from)}–${round(to)})`,
    value: round(slope),
    bar: small ? `interval reaches into ${low}–${high}` : `interval inside ${low}–${high}`,
    ok: small ? from <= high && to >= low : from >= low && to <= high,
  };
}

function decileRows(outcomes: readonly Outcome[]): ProofRow[] {
  const order = outcomes
    .flatMap(({ chances, ended }) =>
      SEATS.map((seat) => ({ chance: chances[seat]!, won: ended[0] === seat ? 1 : 0 })),
    )
    .sort((a, b) => a.chance - b.chance);
  return Array.from({ length: DECILES }, (_, decile) => {
    const members = order.slice(
      Math.floor((decile * order.length) / DECILES),
      Math.floor(((decile + 1) * order.length) / DECILES),
    );
    const hits = sum(members.map(({ won }) => won));
    const mean = sum(members.map(({ chance }) => chance)) / members.length;
    const { low, high } = wilson(hits, members.length, NORMAL_POINT['99.8']);
    return {
      what: `decile ${decile + 1}: mean chance of ${members.length} seats, ${round((hits / members.length) * 100)} in 100 won`,
      value: round(mean * 100),
      bar: `in the 99.8 % Wilson interval ${round(low * 100)}–${round(high * 100)}`,
      ok: low <= mean && mean <= high,
    };
  });
}

/**
 * Brier skill over the four seats, as a share of its ceiling: what chances would reach that knew how often each seat
 * wins this very table. How much of the variance of outcomes lies within tables is estimated from their plays.
 */
function skillRow(name: string, outcomes: readonly Outcome[], size: Size): ProofRow {
  let missed = 0;
  let within = 0;
  let flat = 0;
  for (const seat of SEATS) {
    const shares = outcomes.map(({ ended }) => ended.filter((place) => place === seat).length / PLAYS);
    const base = sum(shares) / outcomes.length;
    flat += base * (1 - base);
    within += (sum(shares.map((share) => share * (1 - share))) / outcomes.length) * (PLAYS / (PLAYS - 1));
    missed += brier(
      outcomes.flatMap(({ chances, ended }) => ended.map(() => chances[seat]!)),
      outcomes.flatMap(({ ended }) => ended.map((place) => (place === seat ? 1 : 0))),
    );
  }
  const skill = 1 - missed / flat;
  const ceiling = 1 - within / flat;
  return {
    what: `Brier skill on ${name}: ${round(skill)} of a ceiling of ${round(ceiling)}, ${outcomes.length} tables`,
    value: round(skill / ceiling),
    bar: `at least ${SKILL_BARS[size]} of the ceiling`,
    ok: skill >= SKILL_BARS[size] * ceiling,
  };
}

/** On average over the tables; on small cards it says more of the wall than a slope does. */
function wallRow(name: string, outcomes: readonly Outcome[], bar: number): ProofRow {
  const wall = SEATS.length;
  const predicted = (100 * sum(outcomes.map(({ chances }) => chances[wall]!))) / outcomes.length;
  const games = outcomes.flatMap(({ ended }) => ended.filter((place) => place === wall)).length;
  const played = (100 * games) / (outcomes.length * PLAYS);
  return {
    what: `wall games predicted on ${name}, in 100; played ${round(played)}`,
    value: round(predicted),
    bar: `within ${bar} of those played`,
    ok: Math.abs(predicted - played) <= bar,
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
