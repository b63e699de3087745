// How likely the passes of a history are, kept up to date when tiles of it change.

import type { ChoiceModel } from '../../policy/choice-model.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import type { History } from './history.ts';
import { giverAt, type Situation } from './situation.ts';

const RACKS = 4 * FACE_COUNT;
const MOST = 3;
const MOVES = 6;

/** n over k for the few copies a rack holds. */
export function waysToTake(n: number, k: number): number {
  let result = 1;
  for (let i = 0; i < k; i++) result = (result * (n - i)) / (i + 1);
  return result;
}

/**
 * Whether a pass speaks of its giver's choice: not where arriving tiles were passed on unseen to the seat itself,
 * because nobody can say which of them were the giver's own.
 */
function isJudged({ seat, past }: Situation, move: number, giver: number): boolean {
  const { blind, toward } = past[move]!;
  return blind[giver as 0 | 1 | 2 | 3] === 0 || giverAt(seat, toward) !== giver;
}

export interface Weighing {
  /** Remembers a history as it is. */
  save(history: History): void;
  /** Sets counts and likelihoods back to what was remembered. */
  restore(history: History): void;
  /** Weighs what has changed since, in the moves before `until`: the likelihood now over the likelihood then. */
  ratio(history: History, situation: Situation, until: number): number;
}

export function createWeighing(model: ChoiceModel): Weighing {
  const racksThen = new Uint8Array((MOVES + 1) * RACKS);
  const passesThen = new Uint8Array(MOVES * RACKS);
  const rackWordsThen = new Int32Array(racksThen.buffer);
  const passWordsThen = new Int32Array(passesThen.buffer);
  const likelihoodThen = new Float64Array(MOVES * 4);

  /** `at` counts bytes, all of them multiples of four. */
  function differs({ rackWords, passWords }: History, at: number): boolean {
    const end = (at + FACE_COUNT) / 4;
    for (let w = at / 4; w < end; w++) {
      if (rackWords[w] !== rackWordsThen[w] || passWords[w] !== passWordsThen[w]) return true;
    }
    return false;
  }

  /** Chance that this seat, from its rack before the move, picks exactly these tiles, copies told apart. */
  function likelihoodOf({ racks, passes }: History, at: number): number {
    let size = 0;
    for (let face = 0; face < FACE_COUNT; face++) size += passes[at + face]!;
    if (size === 0 || size > MOST) return 1;
    model.read(racks, at);
    let chance = model.probability(passes, at, size);
    for (let face = 0; chance > 0 && face < JOKER_INDEX; face++) {
      if (passes[at + face]! > 0) chance /= waysToTake(racks[at + face]!, passes[at + face]!);
    }
    return chance;
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
    ratio(history, situation, until) {
      let result = 1;
      for (let move = 0; move < until; move++) {
        for (let seat = 0; seat < 4; seat++) {
          const at = move * RACKS + seat * FACE_COUNT;
          if (seat === situation.seat || !differs(history, at) || !isJudged(situation, move, seat)) continue;
          const chance = likelihoodOf(history, at);
          if (chance === 0) return 0;
          history.likelihood[move * 4 + seat] = chance;
          result *= chance / likelihoodThen[move * 4 + seat]!;
        }
      }
      return result;
    },
  };
}
