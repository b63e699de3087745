// Everything that happens to a published drill; replaying the log of these events gives its state.
import type {
  AnalyzedChoice,
  CountedChoices,
  Drill,
  PreparedDeal,
  PublishedTerms,
  ShortSpread,
  Step,
} from '../../shared-engine/index.ts';
import type { CardChoice } from '../ports.ts';
import type { KeyEvent } from './keys.ts';

/** What a player wants to ask at a step. */
export interface Question {
  readonly step: Step;
  readonly text: string;
}

export type PublishedEvent =
  /** Always the first event. */
  | {
      readonly kind: 'published';
      readonly drill: Drill;
      /** One for each deal of the drill, rotated so that the seat it was made for is seat 0. */
      readonly deals: readonly PreparedDeal[];
      readonly terms: PublishedTerms;
      /** The end of the last day, in milliseconds since 1970. */
      readonly until: number;
      readonly card: CardChoice;
      readonly secretHash: string;
    }
  /** A round that was played out again and found right. */
  | {
      readonly kind: 'counted';
      /** Half of the hash of the device's secret. */
      readonly player: string;
      /** Made by the device. */
      readonly id: string;
      /** Place of the deal in the drill. */
      readonly deal: number;
      readonly choices: CountedChoices;
      readonly questions?: readonly Question[];
      /** It came with questions on top of those that a drill takes; they are stored nowhere. */
      readonly unasked?: true;
      readonly name?: string;
    }
  /** Figures that are told from now on, computed once (rule PD6). */
  | {
      readonly kind: 'released';
      readonly deal: number;
      /** Players through the deal. */
      readonly through: number;
      /** Steps of which the newcomers are told; at the others they are held back. */
      readonly taken: readonly Step[];
      readonly spreads: readonly ShortSpread[];
      readonly questions: readonly Question[];
    }
  /** By the place of the deal and the tiles: what deep analyses say of passes that are told. */
  | { readonly kind: 'analyzed'; readonly choices: Readonly<Record<string, AnalyzedChoice>> }
  | { readonly kind: 'extended'; readonly until: number }
  | { readonly kind: 'withdrawn' }
  /** A player had name and secret deleted; the choices stay in the counts. */
  | { readonly kind: 'forgotten'; readonly player: string }
  | KeyEvent;
