// What has happened in a class; the log of these is the class, and its tables are rooms with logs of their own.
import type {
  ClassTerms,
  Drill,
  PreparedDeal,
  Seat,
  Settled,
  Step,
  WallChoice,
} from '../../shared-engine/index.ts';
import type { CardChoice } from '../room/card-choice.ts';

export type ClassEvent =
  | {
      readonly kind: 'opened';
      readonly drill: Drill;
      /** One for each deal of the drill, turned so that the seat it was made for is seat 0. */
      readonly deals: readonly PreparedDeal[];
      readonly terms: ClassTerms;
      readonly card: CardChoice;
      /** The hash of the teacher's secret; the secret itself is kept nowhere. */
      readonly key: string;
    }
  /** `key` is the hash of the pupil's secret in this class; the seat at the table has one of its own. */
  | {
      readonly kind: 'joined';
      readonly name: string;
      readonly key: string;
      readonly room: string;
      readonly seat: Seat;
    }
  | { readonly kind: 'dealt' }
  | { readonly kind: 'hold'; readonly before: Step | null }
  | { readonly kind: 'stand-in'; readonly pupil: number; readonly on: boolean }
  | { readonly kind: 'shown'; readonly choice: WallChoice | null }
  /** The class plays one line: the open step of the deal came out so, and closed the deal with it or not (rule L1). */
  | { readonly kind: 'gone-on'; readonly outcome: Settled; readonly closed: boolean }
  | {
      readonly kind: 'aimed';
      readonly pupil: number;
      readonly deal: number;
      readonly step: Step;
      readonly families: readonly string[];
    }
  /** A pupil gave the seat up and had the name forgotten. */
  | { readonly kind: 'left'; readonly pupil: number }
  | { readonly kind: 'ended' };
