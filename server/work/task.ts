// What a worker can be asked and what it answers; a task holds what one seat knows or a drill, a card, and nothing more.
import type {
  AnswerChoice,
  CardFile,
  Judgement,
  Review,
  SeatRecord,
  SeatView,
  StyleName,
} from '../../shared-engine/index.ts';
import type { PreparedDrill } from './prepared-drill.ts';

/** A card by name; the file goes along so that any worker can take any task. */
export interface CardSlip {
  /** The same for the same card, and no other's. */
  readonly key: string;
  /** Null for the house card. */
  readonly file: CardFile | null;
}

export const HOUSE_SLIP: CardSlip = { key: 'house', file: null };

/** How closely a choice is looked at: all the way, or as far as a loaded server can. */
export const DEPTHS = ['deep', 'shallow'] as const;
export type Depth = (typeof DEPTHS)[number];

export type Task =
  /** The first review of a seat; `earlier` is the one of fewer steps. */
  | {
      readonly kind: 'review';
      readonly card: CardSlip;
      readonly record: SeatRecord;
      readonly earlier: Review | null;
    }
  /** Choice number `nth` of that review, judged more deeply. */
  | {
      readonly kind: 'judge';
      readonly card: CardSlip;
      readonly record: SeatRecord;
      readonly nth: number;
      readonly depth: Depth;
    }
  /** A drill as somebody sent it, to be made ready for its class. */
  | { readonly kind: 'drill'; readonly card: CardSlip; readonly drill: unknown }
  /** A bot's choice; `seed` is the one draw it may make. */
  | {
      readonly kind: 'choose';
      readonly card: CardSlip;
      readonly view: SeatView;
      readonly style: StyleName;
      readonly seed: number;
    };

export type Answer =
  | { readonly kind: 'review'; readonly review: Review }
  | { readonly kind: 'judge'; readonly judgement: Judgement }
  | { readonly kind: 'drill'; readonly prepared: PreparedDrill }
  | { readonly kind: 'choose'; readonly choice: AnswerChoice | null };
