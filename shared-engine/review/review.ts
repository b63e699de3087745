// The shape of a private review: what each choice of one seat kept, gave and could have been.
import type { Seat } from '../deal/seat.ts';
import type { Actor } from '../exchange/round.ts';
import type { MoveStep } from '../exchange/schedule.ts';
import type { Face } from '../tiles/face.ts';

/** How dangerous the tiles of a pass are in a stranger's hands, safest first (rules of thumb, common practice, no source). */
export const GIFT_GRADES = ['nothing-special', 'flower', 'neighbours', 'like-numbers', 'pair'] as const;
export type GiftGrade = (typeof GIFT_GRADES)[number];

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

export interface PassReview {
  readonly kind: 'pass';
  readonly step: MoveStep;
  readonly by: Actor;
  /** Before the pass, in rack order. */
  readonly rack: readonly Face[];
  readonly received: readonly Face[];
  readonly toGoBefore: number;
  readonly toGoAfter: number;
  readonly played: Alternative;
  readonly best: Alternative;
  /** best.nearness − played.nearness, never below 0. */
  readonly loss: number;
  /** 1 for the best. */
  readonly rank: number;
  /** How many different legal passes the rack had. */
  readonly legal: number;
  /** The front of the ranking, best first, at most 12; the pass played is among them or follows as the last. */
  readonly alternatives: readonly Alternative[];
  /** Family ids within one tile of the nearest before the pass, after the pass played and after the best pass. */
  readonly open: readonly string[];
  readonly openAfter: readonly string[];
  readonly openAfterBest: readonly string[];
  readonly words: readonly [string, string];
}

/** A choice among a few numbers: tiles passed blind, go on (1) or stop (0), tiles asked for across. */
export interface NumberReview {
  readonly kind: 'blind' | 'vote' | 'ask';
  readonly step: MoveStep | 'vote' | 'courtesy-ask';
  readonly by: Actor;
  readonly options: readonly { readonly value: number; readonly nearness: number }[];
  readonly played: number;
  readonly best: number;
  readonly loss: number;
  readonly words: readonly [string, string];
}

export type ChoiceReview = PassReview | NumberReview;

export interface Review {
  readonly seat: Seat;
  readonly cardId: string;
  readonly cardName: string;
  /** Family names by id, for every id used in the review. */
  readonly families: Readonly<Record<string, string>>;
  readonly toGoStart: number;
  readonly toGoEnd: number;
  /** The one thing worth learning from this round. */
  readonly lesson: string;
  readonly choices: readonly ChoiceReview[];
  /** How the numbers were made and what they assume, in one sentence. */
  readonly method: string;
}
