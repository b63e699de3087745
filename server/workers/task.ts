// What a worker can be asked and what it answers. A task holds what one seat knows, or a drill, and a card; no more.
import type {
  AnswerChoice,
  CardFile,
  DeepAnalysis,
  Review,
  SeatRecord,
  SeatView,
  StyleName,
} from '../../shared-engine/index.ts';
import { HOUSE_CARD_KEY } from '../playing-card.ts';
import type { PlayingCard, PreparedDrill } from '../ports.ts';

/** Names a card; its file goes along, so that any worker can take any task. */
export interface CardRef {
  /** The same for the same card, and no other's. */
  readonly key: string;
  /** Null for the house card. */
  readonly file: CardFile | null;
}

export const HOUSE_CARD_REF: CardRef = { key: HOUSE_CARD_KEY, file: null };

export function cardRefOf({ key, file }: PlayingCard): CardRef {
  return key === HOUSE_CARD_REF.key ? HOUSE_CARD_REF : { key, file };
}

/** How closely a choice is analyzed: on the full budget, or on the one of a loaded server. */
export const DEPTHS = ['deep', 'shallow'] as const;
export type Depth = (typeof DEPTHS)[number];

/** Short tasks come first; see the lanes in `workers.ts`. */
export type TaskKind = Task['kind'];

export type Task =
  /** The first review of a seat; `earlier` is the review of fewer steps. */
  | {
      readonly kind: 'review';
      readonly card: CardRef;
      readonly record: SeatRecord;
      readonly earlier: Review | null;
    }
  /** The deep analysis of choice number `nth` of that review. */
  | {
      readonly kind: 'analyze';
      readonly card: CardRef;
      readonly record: SeatRecord;
      readonly nth: number;
      readonly depth: Depth;
    }
  /** A drill as it was sent, to be prepared for its class. */
  | { readonly kind: 'drill'; readonly card: CardRef; readonly drill: unknown }
  /** A bot's choice; `seed` is the one random number it may use. */
  | {
      readonly kind: 'choose';
      readonly card: CardRef;
      readonly view: SeatView;
      readonly style: StyleName;
      readonly seed: number;
    };

export type TaskResult =
  | { readonly kind: 'review'; readonly review: Review }
  | { readonly kind: 'analyze'; readonly analysis: DeepAnalysis }
  | { readonly kind: 'drill'; readonly prepared: PreparedDrill }
  | { readonly kind: 'choose'; readonly choice: AnswerChoice | null };
