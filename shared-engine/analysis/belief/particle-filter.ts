// Sequential Monte Carlo that goes on from step to step: each move of a round is sampled once a batch, in small batches
// that are independent of each other.
import { createRng, type Rng } from '../../kernels/index.ts';
import type { ChoiceModel } from '../../policy/index.ts';
import {
  addGivenTiles,
  copyHistory,
  createHistory,
  loadHistories,
  type StoredHistories,
  storeHistories,
  type TileHistory,
} from './history.ts';
import { initializeHistory, movesKnownAtStart } from './initial-history.ts';
import { createMoveSampler } from './move-sampler.ts';
import type { Situation } from './situation.ts';
import { createSwapProposal } from './swap-proposal.ts';

/** Deals of one batch depend on each other; batches never do. */
export const DEALS_PER_BATCH = 8;

/** Swaps proposed for each deal after each move. */
const SWAPS_PER_MOVE = 12;

/** Rounds, each of one seat, whose batches are stored: 2 MB each. */
const ROUNDS_STORED = 6;

/** Rows of random numbers for one batch: by the moves known at the start, then by the move; the last is the start's. */
const ROWS_PER_BATCH = 64;
const ROWS_PER_START = 8;

/** What one seat has seen of a round by some step, and the batches as they were after the moves sampled for them. */
interface StoredRound {
  /** The moves that are over. */
  past: readonly string[];
  readonly batches: Map<number, StoredHistories>;
}

export interface ParticleFilter {
  /** Gives each batch from `first` on to `use`; the histories are valid during the call. */
  sample(
    situation: Situation,
    seed: number,
    range: BatchRange,
    use: (histories: readonly TileHistory[]) => void,
  ): void;
}

/** So many batches, numbered from `first`. */
export interface BatchRange {
  readonly first: number;
  readonly batches: number;
}

/** A batch is the same whether it goes on from a step before or begins at the deal. */
export function createParticleFilter(model: ChoiceModel): ParticleFilter {
  const { sampleMove } = createMoveSampler(model);
  const { propose } = createSwapProposal(model);
  const storedRounds = new Map<string, StoredRound>();
  const weights = new Float64Array(DEALS_PER_BATCH);

  /** The histories after one move more; `spare` becomes of no use to the caller. */
  function sampled(histories: TileHistory[], spare: TileHistory[], move: number, rng: Rng): void {
    for (const [n, history] of histories.entries()) weights[n] = sampleMove(history, move, rng);
    resampleInto(spare, histories, weights, rng);
    for (const history of spare) {
      for (let n = 0; n < SWAPS_PER_MOVE; n++) propose(history, move + 1, rng);
    }
  }

  function storedRound(situation: Situation, seed: number): StoredRound {
    const { seat, dealer, start } = situation;
    const key = JSON.stringify([seed, seat, dealer, start]);
    const past = situation.past.map((move) => JSON.stringify(move));
    const known = storedRounds.get(key);
    const isSame = known?.past.every((move, n) => n >= past.length || past[n] === move);
    const round = known && isSame ? known : { past, batches: new Map<number, StoredHistories>() };
    if (past.length > round.past.length) round.past = past;
    storedRounds.delete(key);
    storedRounds.set(key, round);
    const [oldest] = storedRounds.keys();
    if (storedRounds.size > ROUNDS_STORED) storedRounds.delete(oldest!);
    return round;
  }

  return {
    sample(situation, seed, { first, batches }, use) {
      const round = storedRound(situation, seed);
      const known = movesKnownAtStart(situation);
      const moves = situation.past.length;
      let [now, spare] = [0, 1].map(() =>
        Array.from({ length: DEALS_PER_BATCH }, () => createHistory(situation)),
      ) as [TileHistory[], TileHistory[]];
      for (let batch = first; batch < first + batches; batch++) {
        const row = batch * ROWS_PER_BATCH + known * ROWS_PER_START;
        const stored = round.batches.get(batch);
        const goesOn = stored !== undefined && stored.moves >= known && stored.moves <= moves;
        if (goesOn) loadHistories(stored, now);
        else {
          const rng = createRng(seed, row + ROWS_PER_START - 1);
          for (const history of now) initializeHistory(history, rng);
        }
        for (let move = goesOn ? stored.moves : 0; move < moves; move++) {
          if (move >= known) for (const history of now) addGivenTiles(history, move);
          sampled(now, spare, move, createRng(seed, row + move));
          [now, spare] = [spare, now];
        }
        if (stored === undefined || stored.moves < moves)
          round.batches.set(batch, storeHistories(now, moves));
        use(now);
      }
    },
  };
}

/** Systematic resampling; where every weight is 0 all stay. */
function resampleInto(
  to: readonly TileHistory[],
  from: readonly TileHistory[],
  weights: Float64Array,
  rng: Rng,
): void {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const start = rng.uniform();
  let source = 0;
  let passed = weights[0]!;
  for (const [n, history] of to.entries()) {
    const mark = ((n + start) / from.length) * total;
    while (total > 0 && passed <= mark && source < from.length - 1) passed += weights[++source]!;
    copyHistory(from[total > 0 ? source : n]!, history);
  }
}
