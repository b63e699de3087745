// What rollouts say of one choice: a verdict, its loss and what it gave away with their intervals, and the alternatives.
import type { Face } from '../../rules/index.ts';
import type { Robustness } from '../comparison/robustness.ts';
import type { Verdict } from '../comparison/verdict.ts';
import type { ChoiceWhy } from '../why/choice-why.ts';

/** Wins in 100 games, to the thousandth; the interval reaches `halfWidth` to either side. */
export interface MeasuredValue {
  readonly value: number;
  readonly halfWidth: number;
}

/** One alternative that was compared to the end. */
export interface Finalist {
  /** Tiles given; empty where only a number is chosen. */
  readonly tiles: readonly Face[];
  /** Tiles passed blind, the vote (1 is to continue) or tiles asked for; null where tiles alone are chosen. */
  readonly number: number | null;
  /** Own win probability at the close. */
  readonly winProbability: MeasuredValue;
  /** By how much it is better than the choice made, on the same deals; 0 ± 0 for the choice itself. */
  readonly difference: MeasuredValue;
  /** What it costs through the receiver alone, compared with what club players pass; null where nothing is given. */
  readonly giveaway: MeasuredValue | null;
  /** Not shown to be behind the leader of the search. */
  readonly amongBest: boolean;
}

export interface DeepAnalysis {
  readonly depth: 'deep';
  /** Of this comparison alone; what is told is `toldVerdict`. */
  readonly verdict: Verdict;
  /** By how much the best alternative is better than the choice; below 0 where it is worse. Null without alternative. */
  readonly loss: MeasuredValue | null;
  /** No alternative compared is better by more than this, as surely as an interval holds. */
  readonly atMost: number;
  readonly giveaway: MeasuredValue | null;
  /** Places in `finalists`. */
  readonly played: number;
  readonly bestAlternative: number | null;
  /** Most promising first. */
  readonly finalists: readonly Finalist[];
  /** How many of them are alternatives to the choice made. */
  readonly alternatives: number;
  /** Own win probability after what club players pass; null where nothing is given. */
  readonly typicalPass: MeasuredValue | null;
  /** Fresh sampled deals that the numbers rest on. */
  readonly sampledDeals: number;
  /** The smallest loss worth telling, in wins in 100 games. */
  readonly smallLoss: number;
  /** Why another choice is better; null where none is told. */
  readonly why: ChoiceWhy | null;
  /** Wins that the alternative to a vote brings the other three together; null for every other choice. */
  readonly others: MeasuredValue | null;
  /**
   * The same choice among neighbors of each style, where that was asked for as well. It is part of the analysis, so that what
   * is told of a choice once is told for good.
   */
  readonly robustness?: Robustness | undefined;
}

/** A choice is reviewed quickly first; its deep analysis is added when it arrives. */
export type Analysis = { readonly depth: 'quick'; readonly verdict: 'pending' } | DeepAnalysis;

export const NO_DEEP_ANALYSIS: Analysis = { depth: 'quick', verdict: 'pending' };
