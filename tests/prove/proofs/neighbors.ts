// What a review says of the neighbors' tiles comes true as often as it says.
import { DEALS_PER_BATCH } from '../../../shared-engine/analysis/belief/particle-filter.ts';
import { closingSituation } from '../../../shared-engine/analysis/belief/situation.ts';
import { situationSeeds } from '../../../shared-engine/analysis/comparison/situation-seed.ts';
import { longestSuit } from '../../../shared-engine/analysis/ledger/longest-suit.ts';
import { neighborSuits } from '../../../shared-engine/analysis/ledger/neighbor-suits.ts';
import { LEDGER_BATCHES } from '../../../shared-engine/analysis/ledger/round-ledger.ts';
import { LIKELY } from '../../../shared-engine/analysis/review/sentences/guess.ts';
import { neighbor } from '../../../shared-engine/rules/deal/seat.ts';
import { SUITS } from '../../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { analyst } from '../analysis/choices.ts';
import { ledgerRound, type Opponents } from '../analysis/ledger-rounds.ts';
import { percent, shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { type Point, slopeOf } from '../statistics/slope.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

const BAR = [0.9, 1.1] as const;

/** Whose tiles are guessed, how closely, and in how many rounds; where no bar is held it is reported how far off it is. */
interface Guessed {
  readonly opponents: Opponents;
  readonly name: string;
  readonly batches: number;
  readonly rounds: number;
  readonly isHeld: boolean;
}

const CLUB_PLAYERS = 'typical bots, our guess at a club player';
/** Few deals a round in many rounds say most for their time; a guess allows for how few they are. */
const GUESSED: readonly Guessed[] = [
  { opponents: 'typical', name: CLUB_PLAYERS, batches: LEDGER_BATCHES.shallow, rounds: 8_000, isHeld: true },
  { opponents: 'typical', name: CLUB_PLAYERS, batches: LEDGER_BATCHES.deep, rounds: 500, isHeld: false },
  {
    opponents: 'model',
    name: 'who pass as belief takes them to',
    batches: LEDGER_BATCHES.shallow,
    rounds: 1_000,
    isHeld: false,
  },
];
const SMALL_ROUNDS = 8;

export const proof: Proof = {
  summary: 'What is said of the suit a neighbor holds most of comes true as often as it says.',
  async run({ seed, size, tell }) {
    const all =
      size === 'full'
        ? GUESSED
        : GUESSED.filter(({ isHeld }) => isHeld).map((one) => ({ ...one, rounds: SMALL_ROUNDS }));
    return all.flatMap((guessed) => {
      const found = about(guessesOf(`${seed} neighbors`, guessed), guessed, size);
      for (const row of found) tell?.(row);
      return found;
    });
  },
};

/** By round, for each neighbor and suit the share that is told, and whether it is so. */
function guessesOf(name: string, { opponents, batches, rounds }: Guessed): readonly (readonly Point[])[] {
  return Array.from({ length: rounds }, (_, n) => {
    const round = ledgerRound(name, n, opponents, false);
    const situation = closingSituation(seatView(round, 0).record);
    const { deals } = situationSeeds(analyst.cardHash, situation);
    return neighborSuits(analyst.belief, situation, deals, { first: 0, batches }).flatMap(
      ({ toward, longest }) => {
        const truth = longestSuit(round.racks[neighbor(0, toward)], 0);
        return SUITS.map((suit, place) => ({ x: longest[suit], y: Number(truth === place) }));
      },
    );
  });
}

function about(
  found: readonly (readonly Point[])[],
  { name, batches, isHeld }: Guessed,
  size: Size,
): readonly ProofRow[] {
  const { slope, halfWidth } = slopeOf(found);
  const [from, to] = [slope - halfWidth, slope + halfWidth];
  const [low, high] = BAR;
  const isSmall = size === 'small';
  // The review tells the surest of a round.
  const told = found
    .map((guess) => guess.reduce((surest, one) => (one.x > surest.x ? one : surest)))
    .filter(({ x }) => x >= LIKELY);
  const said = told.reduce((sum, { x }) => sum + x, 0) / Math.max(1, told.length);
  const right = told.filter(({ y }) => y === 1).length;
  const interval = wilson(right, told.length, NORMAL_POINT['99']);
  const bar = (words: string) => (isHeld ? words : 'reported');
  const which = `${found.length} rounds, ${batches * DEALS_PER_BATCH} deals each, against three ${name}`;
  return [
    {
      what: `slope of what is held on what is told of longest suits (95 %: ${from.toFixed(3)}–${to.toFixed(3)}), ${which}`,
      value: Math.round(1000 * slope) / 1000,
      bar: bar(isSmall ? `interval reaches into ${low}–${high}` : `interval inside ${low}–${high}`),
      ok: !isHeld || (isSmall ? from <= high && to >= low : from >= low && to <= high),
    },
    {
      what: `guesses that a review tells that are right, ${which}`,
      value: told.length === 0 ? 'none told' : shareText(right, told.length),
      bar: bar(`Wilson 99 % interval holds the ${percent(said)} % that they say`),
      ok: !isHeld || (told.length === 0 ? isSmall : interval.low <= said && said <= interval.high),
    },
  ];
}
