// The shape of a private review: what each choice of one seat kept, gave and could have been.
import type { RiskGrade } from '../../policy/index.ts';
import type { Actor, Direction, Face, MoveStep, Seat } from '../../rules/index.ts';
import type { Verdict } from '../comparison/verdict.ts';
import type { Ledger } from '../ledger/settle.ts';
import type { Analysis, MeasuredValue } from './analysis.ts';
import type { MistakeCategory } from './mistake-categories.ts';

/** One legal pass, merged by face. */
export interface RankedPass {
  readonly tiles: readonly Face[];
  /**
   * Nearness: 14 minus the softened tiles to go that this choice leaves on average; higher is better and one
   * unit is about one tile.
   */
  readonly nearness: number;
  /** Tiles to go of the tiles kept, before anything arrives. */
  readonly toGo: number;
  readonly risk: RiskGrade;
}

/** Tiles of one face held together: 2 are a pair, 3 a pung, 4 a kong. Jokers are never counted in. */
export interface RackGroup {
  readonly face: Face;
  readonly count: number;
}

/** The computed parts that the sentences about a pass are built from. */
export interface PassParts {
  /** Before the pass, in rack order. */
  readonly groups: readonly RackGroup[];
  /** Those of them that the tiles received last formed or made larger. */
  readonly formed: readonly RackGroup[];
  /** Groups that the pass played, or the best pass, took a tile from. */
  readonly broken: readonly RackGroup[];
  readonly brokenByBest: readonly RackGroup[];
  /** How many groups were there, stayed whole, and would have stayed whole after the best pass. */
  readonly groupCount: number;
  readonly groupsKept: number;
  readonly groupsKeptByBest: number;
  /** How many sections were within reach, stayed there, and would have stayed there after the best pass. */
  readonly sectionCount: number;
  readonly sectionsKept: number;
  readonly sectionsKeptByBest: number;
  /** By the id of each section that the pass put out of reach, the tiles that did: each alone, or else together. */
  readonly sectionTiles: Readonly<Record<string, readonly Face[]>>;
  /** Given a second time, after such tiles came back: whether they are the same nobody is told (rule V3). */
  readonly returned: readonly Face[];
  /** In the best pass but not in the pass played, and the other way round. */
  readonly betterToGive: readonly Face[];
  readonly betterToKeep: readonly Face[];
}

export interface PassReview {
  readonly kind: 'pass';
  readonly step: MoveStep;
  readonly by: Actor;
  /** Before the pass, in rack order. */
  readonly rack: readonly Face[];
  readonly received: readonly Face[];
  /** How many of the arriving tiles were passed blind besides the tiles of the pass. */
  readonly blind: number;
  readonly toGoBefore: number;
  /** With the tiles received. */
  readonly toGoAfter: number;
  readonly played: RankedPass;
  readonly best: RankedPass;
  /** best.nearness − played.nearness, never below 0. */
  readonly loss: number;
  /**
   * 1 for the best. By nearness among the passes tried with arrivals (see `Review.basis`); a pass behind all of
   * those takes its rank from the tiles it keeps.
   */
  readonly rank: number;
  /** How many different legal passes the rack had. */
  readonly legal: number;
  /** The first of the ranking, best first, at most 12; the pass played is among them or follows as the last. */
  readonly alternatives: readonly RankedPass[];
  /**
   * Ids of sections at most one tile behind the nearest: of the rack before the pass; and those of which the tiles kept
   * (before anything arrives) by the pass played and by the best pass are still as near as that.
   */
  readonly sectionsInReach: readonly string[];
  readonly sectionsInReachAfter: readonly string[];
  readonly sectionsInReachAfterBest: readonly string[];
  readonly parts: PassParts;
  readonly analysis: Analysis;
}

/** A choice among a few numbers: tiles passed blind, continue (1) or stop (0), tiles asked for by courtesy. */
export interface NumberReview {
  readonly kind: 'blind' | 'vote' | 'ask';
  readonly step: MoveStep | 'vote' | 'courtesy-ask';
  readonly by: Actor;
  /** Tiles to go, and how many tiles were no part of the nearest hand, when the choice was made. */
  readonly toGo: number;
  readonly spare: number;
  readonly options: readonly { readonly value: number; readonly nearness: number }[];
  readonly played: number;
  readonly best: number;
  /** Whether another seat voted to stop, so that this vote made no difference (rule O1); false of every other number. */
  readonly anotherStopped: boolean;
  /** What the player across asked for: the smaller number holds (rule Y1); null of every other number. */
  readonly askedAcross: number | null;
  readonly loss: number;
  readonly analysis: Analysis;
}

export type ChoiceReview = PassReview | NumberReview;

/** What a review finds before a choice is played on. */
export type PassFindings = Omit<PassReview, 'analysis'>;
export type NumberFindings = Omit<NumberReview, 'analysis'>;

/** What is told of one choice. */
export interface ChoiceStory {
  readonly verdict: Verdict;
  /** What was done, the verdict in words, then why. */
  readonly sentences: readonly string[];
  /**
   * Places in `finalists` in the order in which a chart shows them: the alternative that is named, then the others in
   * the order of the search. Empty until the choice has been played on.
   */
  readonly rows: readonly number[];
  /** The kinds of mistake that a costly choice was. */
  readonly mistakes: readonly MistakeCategory[];
}

/** What one neighbor got by passes that each help it more than most do, in wins of 100 games that they cost the seat. */
export interface FedNeighbor {
  readonly toward: Direction;
  readonly passes: number;
  readonly cost: MeasuredValue;
}

/** What is told of a round so far. */
export interface Story {
  /** The one thing worth learning, in sentences. */
  readonly headline: readonly string[];
  /** Place of the choice that the headline speaks of and that a page opens first; 0 where there is none. */
  readonly opened: number;
  readonly choices: readonly ChoiceStory[];
  /** The neighbor that several passes together helped at the seat's own cost; null where there is none. */
  readonly fed: FedNeighbor | null;
  /** What the deal and luck brought and what the choices cost, in sentences; empty until that is known. */
  readonly ledger: readonly string[];
}

/** What the numbers of a review rest on. */
export interface Basis {
  /** How many passes of each step were tried with arrivals, not counting the pass played. */
  readonly passesTried: number;
  /** How many arrivals each of them was tried with, the same for all. */
  readonly arrivals: number;
  /** The smallest loss worth a player's attention, in tiles. */
  readonly smallLoss: number;
}

export interface Review {
  readonly seat: Seat;
  readonly cardId: string;
  readonly cardName: string;
  /** The names of the card's sections by id. */
  readonly sections: Readonly<Record<string, string>>;
  readonly toGoStart: number;
  readonly toGoEnd: number;
  /** What the dealer, who discards first, needs least at the close; null for every other seat. */
  readonly firstDiscard: Face | null;
  readonly basis: Basis;
  readonly choices: readonly ChoiceReview[];
  /** Luck and choices of a closed round; null until it has been made. */
  readonly ledger: Ledger | null;
  /** All that a reader is told; it follows from choices and ledger alone. */
  readonly story: Story;
  /** How the numbers were made and what they assume. */
  readonly method: string;
}
