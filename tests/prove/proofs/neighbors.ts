// What a review says of the neighbors' tiles comes true as often as it says.
import { closingSituation } from '../../../shared-engine/analysis/belief/situation.ts';
import { situationSeeds } from '../../../shared-engine/analysis/comparison/situation-seed.ts';
import { longestSuit, neighborSuits } from '../../../shared-engine/analysis/ledger/neighbor-suits.ts';
import { LEDGER_BATCHES } from '../../../shared-engine/analysis/ledger/round-ledger.ts';
import { LIKELY } from '../../../shared-engine/analysis/review/sentences/ledger.ts';
import { neighbor } from '../../../shared-engine/rules/deal/seat.ts';
import { SUITS } from '../../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { analyst } from '../analysis/choices.ts';
import { ledgerRound, type Opponents } from '../analysis/ledger-rounds.ts';
import { percent, shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { type Point, slopeOf } from '../statistics/slope.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

const ROUNDS: Record<Size, number> = { small: 4, full: 1_200 };
/** As many as in a review, except where few rounds can say little anyway. */
const BATCHES: Record<Size, number> = { small: 16, full: LEDGER_BATCHES.deep };
const BAR = [0.9, 1.1] as const;

const OPPONENTS: readonly (readonly [Opponents, string])[] = [
  ['model', 'neighbors who pass as belief takes them to'],
  ['typical', 'typical bots, our guess at a club player'],
];

export const proof: Proof = {
  summary: 'What is said of the suit a neighbor holds most of comes true as often as it says.',
  async run({ seed, size, tell }) {
    return OPPONENTS.flatMap(([opponents, name]) => {
      const found = about(guesses(`${seed} neighbors`, opponents, size), name, size);
      for (const row of found) tell?.(row);
      return found;
    });
  },
};

/** By round, for each neighbor and suit the share that is believed, and whether it is so. */
function guesses(name: string, opponents: Opponents, size: Size): readonly (readonly Point[])[] {
  return Array.from({ length: ROUNDS[size] }, (_, n) => {
    const round = ledgerRound(name, n, opponents, false);
    const situation = closingSituation(seatView(round, 0).record);
    const { deals } = situationSeeds(analyst.cardHash, situation);
    const range = { first: 0, batches: BATCHES[size] };
    return neighborSuits(analyst.belief, situation, deals, range).flatMap(({ toward, longest }) => {
      const truth = longestSuit(round.racks[neighbor(0, toward)], 0);
      return SUITS.map((suit, place) => ({ x: longest[suit], y: Number(truth === place) }));
    });
  });
}

function about(found: readonly (readonly Point[])[], name: string, size: Size): readonly ProofRow[] {
  const { slope, halfWidth } = slopeOf(found);
  const [from, to] = [slope - halfWidth, slope + halfWidth];
  const [low, high] = BAR;
  const isSmall = size === 'small';
  // The review tells the surest of a round.
  const told = found
    .map((guess) => guess.reduce((surest, one) => (one.x > surest.x ? one : surest)))
    .filter(({ x }) => x >= LIKELY);
  const said = told.reduce((sum, { x }) => sum + x, 0) / told.length;
  const right = told.filter(({ y }) => y === 1).length;
  const interval = wilson(right, told.length, NORMAL_POINT['99']);
  return [
    {
      what: `slope of what is so on what is believed of longest suits, ${found.length} rounds (95 %: ${from.toFixed(3)}–${to.toFixed(3)}), ${name}`,
      value: Math.round(1000 * slope) / 1000,
      bar: isSmall ? `interval reaches into ${low}–${high}` : `interval inside ${low}–${high}`,
      ok: isSmall ? from <= high && to >= low : from >= low && to <= high,
    },
    {
      what: `guesses that a review tells, in ${found.length} rounds, that are right, ${name}`,
      value: told.length === 0 ? 'none told' : shareText(right, told.length),
      bar: `Wilson 99 % interval holds the ${percent(said)} % that they say`,
      ok: told.length === 0 ? isSmall : interval.low <= said && said <= interval.high,
    },
  ];
}
