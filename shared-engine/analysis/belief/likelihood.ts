// How likely the passes of a history are, updated when tiles of it change.
import type { ChoiceModel } from '../../policy/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import { DEAL_BYTES } from '../rollouts/batch.ts';
import { MOST_MOVES, type TileHistory } from './history.ts';
import { giverAt, type Situation } from './situation.ts';

const MAX_PASS = 3;

/** n over k for the few copies a rack holds. */
export function waysToTake(n: number, k: number): number {
  let result = 1;
  for (let i = 0; i < k; i++) result = (result * (n - i)) / (i + 1);
  return result;
}

/**
 * Whether a pass tells of its giver's choice: not where arriving tiles were passed blind to the seat itself, because
 * nobody can say which of them were the giver's own.
 */
function isEvidence({ seat, past }: Situation, move: number, giver: number): boolean {
  const { blind, toward } = past[move]!;
  return blind[giver as 0 | 1 | 2 | 3] === 0 || giverAt(seat, toward) !== giver;
}

export interface LikelihoodCache {
  /** Saves a history as it is. */
  save(history: TileHistory): void;
  /** Sets counts and likelihoods back to what was saved. */
  restore(history: TileHistory): void;
  /** Weighs what has changed since, in the moves before `until`: the likelihood now over the likelihood then. */
  ratio(history: TileHistory, until: number): number;
}

export function createLikelihoodCache(model: ChoiceModel): LikelihoodCache {
  const racksThen = new Uint8Array((MOST_MOVES + 1) * DEAL_BYTES);
  const passesThen = new Uint8Array(MOST_MOVES * DEAL_BYTES);
  const rackWordsThen = new Int32Array(racksThen.buffer);
  const passWordsThen = new Int32Array(passesThen.buffer);
  const likelihoodThen = new Float64Array(MOST_MOVES * 4);

  /** `at` counts bytes and is a multiple of four. */
  function differs({ rackWords, passWords }: TileHistory, at: number): boolean {
    const end = (at + FACE_COUNT) / 4;
    for (let w = at / 4; w < end; w++) {
      if (rackWords[w] !== rackWordsThen[w] || passWords[w] !== passWordsThen[w]) return true;
    }
    return false;
  }

  /** Probability that this seat, from its rack before the move, picks exactly these tiles, copies told apart. */
  function likelihoodOf({ racks, passes }: TileHistory, at: number): number {
    let size = 0;
    for (let face = 0; face < FACE_COUNT; face++) size += passes[at + face]!;
    if (size === 0 || size > MAX_PASS) return 1;
    model.read(racks, at);
    let probability = model.probability(passes, at, size);
    for (let face = 0; probability > 0 && face < JOKER_INDEX; face++) {
      if (passes[at + face]! > 0) probability /= waysToTake(racks[at + face]!, passes[at + face]!);
    }
    return probability;
  }

  return {
    save({ racks, passes, likelihood }) {
      racksThen.set(racks);
      passesThen.set(passes);
      likelihoodThen.set(likelihood);
    },
    restore({ racks, passes, likelihood }) {
      racks.set(racksThen.subarray(0, racks.length));
      passes.set(passesThen.subarray(0, passes.length));
      likelihood.set(likelihoodThen.subarray(0, likelihood.length));
    },
    ratio(history, until) {
      const { situation } = history;
      let result = 1;
      for (let move = 0; move < until; move++) {
        for (let seat = 0; seat < 4; seat++) {
          const at = move * DEAL_BYTES + seat * FACE_COUNT;
          if (seat === situation.seat || !differs(history, at) || !isEvidence(situation, move, seat))
            continue;
          const likelihood = likelihoodOf(history, at);
          if (likelihood === 0) return 0;
          history.likelihood[move * 4 + seat] = likelihood;
          result *= likelihood / likelihoodThen[move * 4 + seat]!;
        }
      }
      return result;
    },
  };
}
