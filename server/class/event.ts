// The events of a class: their log is the class, while its tables are rooms with logs of their own.
import type {
  AnalyzedChoice,
  ClassTerms,
  Drill,
  PreparedDeal,
  Resolved,
  Seat,
  ShownStep,
  Step,
} from '../../shared-engine/index.ts';
import type { CardChoice } from '../ports.ts';
import type { ClosedRound, FrozenStep } from './state.ts';

export type ClassEvent =
  | {
      readonly kind: 'opened';
      readonly drill: Drill;
      /** One for each deal of the drill, rotated so that the seat it was made for is seat 0. */
      readonly deals: readonly PreparedDeal[];
      readonly terms: ClassTerms;
      readonly card: CardChoice;
      /** The hash of the teacher's secret; the secret itself is stored nowhere. */
      readonly secretHash: string;
    }
  /** `secretHash` is of the player's secret in this class; the seat at the table has one of its own. */
  | {
      readonly kind: 'joined';
      readonly name: string;
      readonly secretHash: string;
      readonly room: string;
      readonly seat: Seat;
      /** Place of the deal that the player begins with, where that is not the one the class is at. */
      readonly first?: number;
    }
  | { readonly kind: 'dealt' }
  | { readonly kind: 'hold'; readonly before: Step | null }
  | { readonly kind: 'stand-in'; readonly player: number; readonly on: boolean }
  | { readonly kind: 'shown'; readonly shown: ShownStep | null }
  /** In a guided deal, the outcome of the open step for everybody, and whether it closed the deal (rule L1). */
  | { readonly kind: 'advanced'; readonly outcome: Resolved; readonly closed: boolean }
  | {
      readonly kind: 'aimed';
      readonly player: number;
      readonly deal: number;
      readonly step: Step;
      readonly sections: readonly string[];
    }
  /** What is told of this step of an anonymous class, computed once and never again (rule AN3). */
  | ({ readonly kind: 'frozen' } & FrozenStep)
  /** What deep analyses say of choices, by the id of the decision, and how rounds went as a whole. */
  | {
      readonly kind: 'analyzed';
      readonly choices: Readonly<Record<string, AnalyzedChoice>>;
      readonly rounds: readonly ClosedRound[];
    }
  /** A teacher has made a key; `secretHash` is of the secret in it. */
  | { readonly kind: 'key-made'; readonly secretHash: string }
  | { readonly kind: 'key-revoked'; readonly key: number }
  /** A new code for the big screen, which ends every screen opened with the one before. */
  | { readonly kind: 'screen-code'; readonly codeHash: string }
  /** A computer brought that code; `secretHash` is of the secret that it got in exchange. */
  | { readonly kind: 'screen-opened'; readonly secretHash: string }
  /** A player gave the seat up and had the name deleted. */
  | { readonly kind: 'left'; readonly player: number }
  /** The teacher removed a player and lets nobody in who brings that player's secret. */
  | { readonly kind: 'removed'; readonly player: number }
  | { readonly kind: 'renamed'; readonly player: number; readonly name: string }
  /** The teacher put a player to this place; whoever had it has the player's. */
  | { readonly kind: 'seated'; readonly player: number; readonly room: string; readonly seat: Seat }
  /** Whether somebody new may join. */
  | { readonly kind: 'joining'; readonly open: boolean }
  /** Whether players may play the deals again at home. */
  | { readonly kind: 'take-home'; readonly on: boolean }
  | { readonly kind: 'ended' };
