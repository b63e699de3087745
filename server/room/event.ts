// What has happened in a room; the log of these is the room.
import type { CardFile, RoomTerms, RoundEvent, Seat, StyleName } from '../../shared-engine/index.ts';

/** Which card a room plays with: the house card or a file of its owner's, as the validator let it through. */
export type CardChoice = { readonly kind: 'house' } | { readonly kind: 'file'; readonly file: CardFile };

export type RoomEvent =
  | {
      readonly kind: 'opened';
      readonly door: 'alone' | 'friends';
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
  | { readonly kind: 'ready'; readonly seat: Seat; readonly ready: boolean }
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
