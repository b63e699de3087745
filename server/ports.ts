// What the server needs from the world, as interfaces without code; each has an implementation in memory for the tests.
// What workers do for it is in `work-ports.ts`.
import type { CardFile, Seat } from '../shared-engine/index.ts';

/** Ends a subscription. Calling it twice does no harm. */
export type Unsubscribe = () => void;

/** Stops a timer that has not fired yet. Calling it twice does no harm. */
export type Cancel = () => void;

export interface Clock {
  /** Milliseconds since 1970. */
  now(): number;
  /** Calls `run` once after `ms` milliseconds. */
  after(ms: number, run: () => void): Cancel;
}

export interface Entropy {
  /** Bytes that nobody can guess. */
  bytes(count: number): Uint8Array;
}

/**
 * What a log in the store describes: a room or one deal among friends, a class or one of its tables, or a drill that was
 * published. All but the first two are stored for longer (rule ST7).
 */
export type AggregateKind = 'room' | 'same-deal' | 'class' | 'class-table' | 'published' | 'club';

/** One row of a log: the events of a group of commands, stored by one append. */
export interface LogRow {
  /** Number of the event before the first one of this row; 0 for the first row. */
  readonly after: number;
  /** Number of the last event of this row. */
  readonly version: number;
  /** Milliseconds since 1970, by the clock of the server that wrote it. */
  readonly at: number;
  /** Ids of the commands that caused these events. */
  readonly commands: readonly string[];
  /** The events, as JSON text of a list. */
  readonly events: string;
}

/** The state at one moment, so that loading need not begin with the first event. */
export interface Snapshot {
  /** Number of the last event in it. */
  readonly version: number;
  /** Ids of the commands before it that may still be repeated, oldest first. */
  readonly commands: readonly string[];
  /** As JSON text. */
  readonly state: string;
}

/** What is stored of a room or a class: its first row, the latest snapshot, and rows in order. */
export interface StoredLog {
  readonly kind: AggregateKind;
  readonly snapshot: Snapshot | null;
  readonly rows: readonly LogRow[];
}

/** A row to be appended to the log of the room or class with this code. */
export interface Append {
  readonly code: string;
  readonly row: LogRow;
  /** Takes the place of the snapshot before; null where that stays. */
  readonly snapshot: Snapshot | null;
}

/**
 * `conflict`: the last event does not have number `row.after`, because another server was quicker or the log is
 * gone. `invalid`: this row can be stored nowhere. Neither changes anything, and neither fails its neighbors.
 */
export type AppendOutcome = 'committed' | 'conflict' | 'invalid';

/**
 * The logs of all rooms and classes. What is `committed` or `created` is durable, and an acknowledgement waits for it.
 * Every method may reject when the store cannot be reached. A `commit` that rejects has changed nothing or, where
 * only the answer was lost, what it was to change; the next append then meets a conflict.
 */
export interface Store {
  /** Stores a new log, as a whole. */
  create(code: string, log: StoredLog): Promise<'created' | 'code-taken'>;
  /** Appends a row to each of several logs, no two of them to one; the outcomes stand in the same order. */
  commit(batch: readonly Append[]): Promise<readonly AppendOutcome[]>;
  /** The first row, the snapshot and the rows with events behind it; null where nothing is stored. */
  load(code: string): Promise<StoredLog | null>;
  /** The rows with events behind number `version`; null where nothing is stored. */
  loadAfter(code: string, version: number): Promise<readonly LogRow[] | null>;
  /** As `load`, but with every row. */
  history(code: string): Promise<StoredLog | null>;
  /**
   * Puts the events of these rows in the place of those of the stored rows with the same `version`, and the snapshot
   * in the place of one with the same `version`; whatever else the rows hold stays.
   */
  rewrite(code: string, rows: readonly LogRow[], snapshot: Snapshot | null): Promise<void>;
  /** The number of each log's last event; one that is not stored is left out. */
  versions(codes: readonly string[]): Promise<ReadonlyMap<string, number>>;
  /** At most `limit` codes that follow `after` in the order of their bytes, or the first ones for null. */
  codes(after: string | null, limit: number): Promise<readonly string[]>;
  remove(code: string): Promise<void>;
  /** Removes every log whose last row is older than the moment for its kind; answers how many. */
  removeOlder(before: OldestKept): Promise<number>;
  /**
   * Removes the logs whose last rows are oldest, until what is left holds at most so many bytes of events and command
   * ids; answers how many.
   */
  removeBeyond(bytes: number): Promise<number>;
  /** How many logs are stored. */
  count(): Promise<number>;
  /** Stores something that changes nothing; rejects where nothing can be stored now. */
  checkWritable(): Promise<void>;
  /** Resolves when what was begun is stored; whatever is asked afterwards rejects. */
  close(): Promise<void>;
}

/** The moments before which logs that nobody has touched are removed, in milliseconds since 1970. */
export interface OldestKept {
  readonly rooms: number;
  /** Of classes, their tables and published drills. */
  readonly classes: number;
}

/** Something new in a log. */
export interface Wake {
  readonly code: string;
  /** Number of the last event. */
  readonly version: number;
}

/**
 * Tells the servers that share a store that a log has grown, the one that appended included. Only a hint: it may come
 * late, twice or never. The truth is in the store.
 */
export interface WakeBus {
  publish(wake: Wake): void;
  subscribe(listener: (wake: Wake) => void): Unsubscribe;
  close(): Promise<void>;
}

/** The servers that share a store, as each of them knows the others. */
export interface Nodes {
  /** Names this server while it runs, and no other one ever. */
  readonly id: string;
  /** Those of these servers that run no more, or have not been heard of for too long. */
  gone(ids: readonly string[]): Promise<readonly string[]>;
  /** From now on this server counts as gone. */
  close(): Promise<void>;
}

/** What a ticket lets its bearer do: listen to one room as the person on a seat, or as a spectator. */
export interface Grant {
  readonly code: string;
  /** Null for a spectator; `since` tells this holder of the seat from an earlier one. */
  readonly holder: { readonly seat: Seat; readonly since: number } | null;
  /** Hash of the secret that was brought for the ticket; null for a spectator. */
  readonly shown: string | null;
}

/** One-use tickets that stand for a grant for a short time. */
export interface Tickets {
  issue(grant: Grant): Promise<string>;
  /** The grant, once; null when the ticket is unknown, used or too old. */
  redeem(ticket: string): Promise<Grant | null>;
}

/** The card of a room or a class: the house card, or a file as the validator let it through. */
export type CardChoice = { readonly kind: 'house' } | { readonly kind: 'file'; readonly file: CardFile };

/** A card as the server plays with it. */
export interface PlayingCard {
  /** The same for the same card, and no other's. */
  readonly key: string;
  /** For everybody to read; its hands are known to the workers alone. */
  readonly file: CardFile;
}

/** What the operator may count and measure: nothing in it names anybody. */
export interface Measurements {
  /** A rejection with this code, as the answer to a request or to a frame on a socket. */
  rejected(answerTo: 'request' | 'frame', code: string): void;
  /** The store was asked; the answer is to be called when it has done so. */
  storeAsked(operation: keyof Store): (outcome: 'done' | 'failed') => void;
  /** Milliseconds from the close of a round to its first reviews, and to the last deep analysis of its choices. */
  reviewed(until: 'first-review' | 'last-analysis', ms: number): void;
}
