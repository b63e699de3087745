// What the playouts say of one choice: a verdict, its loss and its gift with their intervals, and the rivals.

import type { Face } from '../../rules/tiles/face.ts';
import type { LookedAt } from '../comparison/verdict.ts';

/** Points of outlook (chances in 100), to the thousandth; the interval reaches `within` to either side. */
export interface Measured {
  readonly value: number;
  readonly within: number;
}

/** One alternative of the last stage. */
export interface Finalist {
  /** Tiles given; empty where only a number is chosen. */
  readonly tiles: readonly Face[];
  /** Tiles passed blind, the vote (1 is go on) or tiles asked for; null where tiles alone are chosen. */
  readonly number: number | null;
  /** Own outlook at the close. */
  readonly outlook: Measured;
  /** How far ahead of the choice made, on the same worlds; 0 within 0 for the choice itself. */
  readonly ahead: Measured;
  /** What the receiver's outlook gains over a legal pass drawn at random; null where nothing is given. */
  readonly gift: Measured | null;
  /** Not shown to be behind the best of the first stage. */
  readonly inFront: boolean;
}

export interface DeepJudgement {
  readonly depth: 'deep';
  readonly verdict: LookedAt;
  /** False where the worlds ran out before the verdict was anything but too close. */
  readonly decided: boolean;
  /** How far the rival is ahead of the choice made; below 0 where it is behind. Null without a rival. */
  readonly loss: Measured | null;
  readonly gift: Measured | null;
  /** Places in `finalists`. */
  readonly played: number;
  readonly rival: number | null;
  /** Best of the first stage first. */
  readonly finalists: readonly Finalist[];
  /** How many of them are rivals of the choice made. */
  readonly rivals: number;
  /** Own outlook after a legal pass drawn at random; null where nothing is given. */
  readonly mean: Measured | null;
  /** Fresh worlds that the numbers rest on. */
  readonly worlds: number;
  /** The smallest loss worth telling, in points of outlook. */
  readonly smallLoss: number;
  readonly words: readonly string[];
}

/** A choice is judged quickly first; the deeper judgement takes this one's place when it arrives. */
export type Judgement = { readonly depth: 'quick'; readonly verdict: 'not-looked-at' } | DeepJudgement;

export const QUICK: Judgement = { depth: 'quick', verdict: 'not-looked-at' };
