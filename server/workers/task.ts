// What a worker can be asked and what it answers. A task holds what one seat knows, or what
// somebody sent, and a card; no more.
import type {
  AnswerChoice,
  CardFile,
  DeepAnalysis,
  GuidedStart,
  Ledger,
  PendingDecision,
  Review,
  SeatRecord,
  SeatView,
  StyleName,
} from '../../shared-engine/index.ts';
import { HOUSE_CARD_KEY } from '../playing-card.ts';
import type { PlayedDeal } from '../work-ports.ts';
import type { DrillPart, DrillStep } from './prepare-drill.ts';
import type { SharedCard } from './shared-card.ts';

/** Names a card and brings it along, so that any worker can take any task. */
export interface CardRef {
  /** The same for the same card, and no other's. */
  readonly key: string;
  /** Null for the house card, which every worker has. */
  readonly shared: SharedCard | null;
}

export const HOUSE_CARD_REF: CardRef = { key: HOUSE_CARD_KEY, shared: null };

/** How closely a choice is analyzed: on the full budget, or on the one of a loaded server. */
export const DEPTHS = ['deep', 'shallow'] as const;
export type Depth = (typeof DEPTHS)[number];

/** Short tasks come first; see the lanes in `workers.ts`. */
export type TaskKind = Task['kind'];

export type Task =
  /** A card file as it was sent, to be checked and compiled. */
  | { readonly kind: 'check-card'; readonly file: unknown }
  /** A card file that was checked before, to be compiled. */
  | { readonly kind: 'compile-card'; readonly file: CardFile }
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
  /** What the open step asks of the seat, so that the analysis of its answer takes less time in the same worker. */
  | {
      readonly kind: 'prepare';
      readonly card: CardRef;
      readonly record: SeatRecord;
      readonly open: PendingDecision;
    }
  /** Luck and choices of a closed round. */
  | {
      readonly kind: 'ledger';
      readonly card: CardRef;
      readonly record: SeatRecord;
      readonly depth: Depth;
    }
  /** A drill as it was sent, to be prepared for its class; and the rest of one whose first part is done. */
  | { readonly kind: 'drill'; readonly card: CardRef; readonly drill: unknown }
  | { readonly kind: 'drill-part'; readonly card: CardRef; readonly part: DrillPart }
  /** A deal of a drill, played out with these choices of its seat. */
  | {
      readonly kind: 'play';
      readonly card: CardRef;
      readonly start: GuidedStart;
      readonly choices: readonly AnswerChoice[];
    }
  /** A bot's choice; `seed` is the one random number it may use, or that all of its random numbers come from. */
  | {
      readonly kind: 'choose';
      readonly card: CardRef;
      readonly view: SeatView;
      readonly style: StyleName;
      readonly seed: number;
    };

export type TaskResult =
  | { readonly kind: 'check-card'; readonly compiled: CompiledFile }
  | { readonly kind: 'compile-card'; readonly shared: SharedCard }
  | { readonly kind: 'review'; readonly review: Review }
  | { readonly kind: 'analyze'; readonly analysis: DeepAnalysis }
  | { readonly kind: 'prepare' }
  | { readonly kind: 'ledger'; readonly ledger: Ledger }
  | { readonly kind: 'drill'; readonly step: DrillStep }
  | { readonly kind: 'play'; readonly played: PlayedDeal }
  | { readonly kind: 'choose'; readonly choice: AnswerChoice | null };

type CompiledFile =
  | { readonly ok: true; readonly file: CardFile; readonly shared: SharedCard }
  | { readonly ok: false; readonly problems: readonly string[] };
