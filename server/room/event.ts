// What has happened in a room; the log of these is the room.
import type { PageLine, RoomTerms, RoundEvent, Seat, StyleName } from '../../shared-engine/index.ts';
import type { ClassEvent } from '../class/event.ts';
import type { CardChoice } from './card-choice.ts';
import type { Lead } from './lead.ts';

/** How a room came about: by one person for bots or friends, or as a table of a class. */
export type Door = 'alone' | 'friends' | 'class';

export type RoomEvent =
  | {
      readonly kind: 'opened';
      readonly door: Door;
      readonly terms: RoomTerms;
      readonly card: CardChoice;
    }
  /** `key` is the hash of the seat's secret; the secret itself is kept nowhere. */
  | { readonly kind: 'seat-taken'; readonly seat: Seat; readonly name: string; readonly key: string }
  | { readonly kind: 'seat-freed'; readonly seat: Seat }
  | {
      readonly kind: 'bot-seated';
      readonly seat: Seat;
      readonly name: string;
      readonly style: StyleName;
    }
  /** A connection of the seat's owner opened at server `node`; it takes the place of an earlier one. */
  | {
      readonly kind: 'came';
      readonly seat: Seat;
      readonly node: string;
      readonly line: string;
      readonly from?: PageLine;
    }
  /** This connection of the seat's owner is over. */
  | { readonly kind: 'went'; readonly seat: Seat; readonly line: string }
  /** The owner's secret was changed; `key` is the hash of the new one, `before` of the one that was brought. */
  | {
      readonly kind: 'key-changed';
      readonly seat: Seat;
      readonly key: string;
      readonly before: string;
    }
  /** Server `node` watches the clock of the room from now on, beside `others`; with none the clock runs anew (rule K3). */
  | { readonly kind: 'in-hand'; readonly node: string; readonly others: readonly string[] }
  | { readonly kind: 'ready'; readonly seat: Seat; readonly ready: boolean }
  /** The teacher leads this table so from now on; where that lifts a hold the step gets its whole time. */
  | { readonly kind: 'led'; readonly lead: Lead }
  /** The open step has so many more seconds. */
  | { readonly kind: 'more-time'; readonly seconds: number }
  /** In the log of a class, which lies beside those of the rooms; in a room's log there is none. */
  | { readonly kind: 'class'; readonly event: ClassEvent }
  /** What happened in the round; `dealt` begins the next one. */
  | { readonly kind: 'round'; readonly event: RoundEvent }
  | { readonly kind: 'closed' };

/** An event with its place in the log. */
export interface Logged {
  /** 1 for the first event of a room, then one more each time. */
  readonly seq: number;
  /** Milliseconds since 1970, by the clock of the server that wrote it. */
  readonly at: number;
  /** The command that caused it, on the first of its events; null for the others and for the house's own moves. */
  readonly command: string | null;
  readonly event: RoomEvent;
}
