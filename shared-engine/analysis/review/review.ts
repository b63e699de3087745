// The shape of a private review: what each choice of one seat kept, gave and could have been.

import type { GiftGrade } from '../../policy/gift.ts';
import type { Seat } from '../../rules/deal/seat.ts';
import type { Actor } from '../../rules/exchange/round.ts';
import type { MoveStep } from '../../rules/exchange/schedule.ts';
import type { Face } from '../../rules/tiles/face.ts';
import type { Judgement } from './judgement.ts';

/** One legal pass, merged by face. */
export interface Alternative {
  readonly tiles: readonly Face[];
  /**
   * Nearness: 14 minus the softened tiles to go that this choice leaves on average; higher is better and one
   * unit is about one tile.
   */
  readonly nearness: number;
  /** Tiles to go of the tiles kept, before anything arrives. */
  readonly toGo: number;
  readonly gift: GiftGrade;
}

/** Tiles of one face held together: 2 are a pair, 3 a pung, 4 a kong. Jokers are never counted in. */
export interface Group {
  readonly face: Face;
  readonly count: number;
}

/** The computed parts that the sentences about a pass are built from. */
export interface PassParts {
  /** Before the pass, in rack order. */
  readonly groups: readonly Group[];
  /** Those of them that the tiles received last formed or made larger. */
  readonly formed: readonly Group[];
  /** Groups that the pass played, or the best pass, took a tile from. */
  readonly broken: readonly Group[];
  readonly brokenByBest: readonly Group[];
  /** How many groups were there, stayed whole, and would have stayed whole after the best pass. */
  readonly groupCount: number;
  readonly groupsKept: number;
  readonly groupsKeptByBest: number;
  /** How many families were open, stayed open, and would have stayed open after the best pass. */
  readonly familyCount: number;
  readonly familiesKept: number;
  readonly familiesKeptByBest: number;
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
  /** How many of the arriving tiles went on unseen besides the tiles of the pass. */
  readonly blind: number;
  readonly toGoBefore: number;
  /** With the tiles received. */
  readonly toGoAfter: number;
  readonly played: Alternative;
  readonly best: Alternative;
  /** best.nearness − played.nearness, never below 0. */
  readonly loss: number;
  /**
   * 1 for the best. By nearness among the passes looked at closely (see `Review.basis`); a pass behind all of
   * those takes its rank from the tiles it keeps.
   */
  readonly rank: number;
  /** How many different legal passes the rack had. */
  readonly legal: number;
  /** The front of the ranking, best first, at most 12; the pass played is among them or follows as the last. */
  readonly alternatives: readonly Alternative[];
  /**
   * Family ids within one tile of the nearest: before the pass, and of the tiles kept (before anything arrives)
   * by the pass played and by the best pass.
   */
  readonly open: readonly string[];
  readonly openAfter: readonly string[];
  readonly openAfterBest: readonly string[];
  readonly parts: PassParts;
  readonly words: readonly [string, string];
  readonly judgement: Judgement;
}

/** A choice among a few numbers: tiles passed blind, go on (1) or stop (0), tiles asked for across. */
export interface NumberReview {
  readonly kind: 'blind' | 'vote' | 'ask';
  readonly step: MoveStep | 'vote' | 'courtesy-ask';
  readonly by: Actor;
  /** Tiles to go, and how many tiles were no part of the nearest line, when the choice was made. */
  readonly toGo: number;
  readonly spare: number;
  readonly options: readonly { readonly value: number; readonly nearness: number }[];
  readonly played: number;
  readonly best: number;
  readonly loss: number;
  readonly words: readonly [string, string];
  readonly judgement: Judgement;
}

export type ChoiceReview = PassReview | NumberReview;

/** What the numbers of a review rest on. */
export interface Basis {
  /** How many passes of each step were looked at with arrivals, the pass played apart. */
  readonly closely: number;
  /** How many arrivals each of those was tried with, the same for all. */
  readonly arrivals: number;
  /** The smallest loss worth a learner's attention, in tiles. */
  readonly smallLoss: number;
}

export interface Review {
  readonly seat: Seat;
  readonly cardId: string;
  readonly cardName: string;
  /** Family names by id, for every id used in the review. */
  readonly families: Readonly<Record<string, string>>;
  readonly toGoStart: number;
  readonly toGoEnd: number;
  readonly basis: Basis;
  /** The one thing worth learning from this round. */
  readonly lesson: string;
  readonly choices: readonly ChoiceReview[];
  /** How the numbers were made and what they assume, in one sentence. */
  readonly method: string;
}
