// What the server needs from the world, as interfaces without code; each has a twin in memory for the tests.
import type {
  AnswerChoice,
  CardFile,
  CompiledCard,
  Kernel,
  Review,
  Seat,
  SeatRecord,
  SeatView,
  StyleName,
} from '../shared-engine/index.ts';
import type { Logged } from './room/event.ts';

/** Undoes what gave it. Calling it twice does no harm. */
export type Undo = () => void;

export interface Clock {
  /** Milliseconds since 1970. */
  now(): number;
  /** Calls `run` once after `ms` milliseconds. */
  after(ms: number, run: () => void): Undo;
}

export interface Entropy {
  /** Bytes that nobody can guess. */
  bytes(count: number): Uint8Array;
}

/**
 * The truth of every room: its log. What `append` has kept is durable, and an acknowledgement waits for it.
 * Every method may reject when the store cannot be reached; nothing was changed then.
 */
export interface Store {
  /** Keeps the first events of a new room. */
  create(code: string, log: readonly Logged[]): Promise<'kept' | 'code-taken'>;
  /** Keeps more events if the room's last one has number `after`; otherwise somebody else was quicker. */
  append(code: string, after: number, log: readonly Logged[]): Promise<'kept' | 'conflict'>;
  /** The whole log, or null where no such room is kept. */
  load(code: string): Promise<readonly Logged[] | null>;
  remove(code: string): Promise<void>;
  /** How many rooms are kept. */
  count(): Promise<number>;
  close(): Promise<void>;
}

/** What a ticket lets its bearer do: listen to one room as the person who took a seat, or as a watcher. */
export interface Grant {
  readonly code: string;
  /** Null for a watcher; `since` tells this owner of the seat from an earlier one. */
  readonly owner: { readonly seat: Seat; readonly since: number } | null;
}

/** One-use tickets that stand for a grant for a short time. */
export interface Tickets {
  issue(grant: Grant): Promise<string>;
  /** The grant, once; null when the ticket is unknown, used or too old. */
  redeem(ticket: string): Promise<Grant | null>;
}

/** A card as the server plays with it. */
export interface PlayingCard {
  /** For everybody to read. */
  readonly file: CardFile;
  readonly card: CompiledCard;
  readonly kernel: Kernel;
}

/** Chooses for a seat from that seat's view and nothing more. */
export interface Bots {
  choose(request: BotRequest): Promise<AnswerChoice>;
}

export interface BotRequest {
  readonly style: StyleName;
  readonly view: SeatView;
  readonly card: PlayingCard;
  /** The round's secret seed, from which the bot's random draws come; the bot itself never gets it. */
  readonly seed: string;
}

/** Judges the choices of one seat from what that seat knew. */
export interface Reviewer {
  review(record: SeatRecord, card: PlayingCard): Promise<Review>;
}
