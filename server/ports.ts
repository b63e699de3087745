// What the server needs from the world, as interfaces without code; each has a twin in memory for the tests.
import type {
  AnswerChoice,
  CardFile,
  CompiledCard,
  Judgement,
  Kernel,
  Review,
  Seat,
  SeatRecord,
  SeatView,
  StyleName,
} from '../shared-engine/index.ts';
import type { Logged } from './room/event.ts';
import type { PreparedDrill } from './work/prepared-drill.ts';

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
 * Every method may reject when the store cannot be reached. An `append` that rejects has changed nothing, or, where
 * only the answer was lost, everything; the next one then meets a conflict.
 */
export interface Store {
  /** Keeps the first events of a new room. */
  create(code: string, log: readonly Logged[]): Promise<'kept' | 'code-taken'>;
  /**
   * Keeps more events, all or none. `conflict`: the room's last one does not have number `after`, because somebody
   * else was quicker or the room is gone. `repeated`: the room's log holds one of the commands already.
   */
  append(code: string, after: number, log: readonly Logged[]): Promise<'kept' | 'conflict' | 'repeated'>;
  /** The log behind number `after`, or all of it; null where no such room is kept. */
  load(code: string, after?: number): Promise<readonly Logged[] | null>;
  /** The number of each room's last event; a room that is not kept is left out. */
  versions(codes: readonly string[]): Promise<ReadonlyMap<string, number>>;
  /** At most `most` codes that come behind `behind` in the order of their bytes, or the first ones for null. */
  codes(behind: string | null, most: number): Promise<readonly string[]>;
  /** Puts these events in the place of those with their numbers; numbers, times and commands stay. */
  amend(code: string, log: readonly Logged[]): Promise<void>;
  remove(code: string): Promise<void>;
  /** Removes every room whose last event is older than `before`, in milliseconds since 1970; answers how many. */
  removeOlder(before: number): Promise<number>;
  /** How many rooms are kept. */
  count(): Promise<number>;
  /** Resolves when what was begun is kept; whatever is asked afterwards rejects. */
  close(): Promise<void>;
}

/** Something new in a room's log. */
export interface Wake {
  readonly code: string;
  /** Number of the last event. */
  readonly seq: number;
}

/**
 * Tells the servers that share a store that a room has changed, the one that changed it included. Only a nudge: it
 * may come late, twice or never. The truth is in the store.
 */
export interface WakeBus {
  publish(wake: Wake): void;
  subscribe(listener: (wake: Wake) => void): Undo;
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
  /** The same for the same card, and no other's. */
  readonly key: string;
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
  /** `earlier`: the review of the same record when fewer steps were over; it saves time and changes nothing. */
  review(record: SeatRecord, card: PlayingCard, earlier?: Review | null): Promise<Review>;
}

/** Makes drills ready to be dealt. */
export interface Drills {
  /** `drill` is whatever somebody sent. Null when it could not be had just now. */
  prepare(drill: unknown, card: PlayingCard): Promise<PreparedDrill | null>;
}

/** Judges single choices more deeply than the first review does, while people think and after the close. */
export interface Judges {
  judge(choice: ChoiceToJudge): Judging;
}

/** Choice number `nth` of the review of this record; what comes after it in the record is not looked at. */
export interface ChoiceToJudge {
  readonly record: SeatRecord;
  readonly nth: number;
  readonly card: PlayingCard;
}

export interface Judging {
  /** Null when it was called off or could not be had; the first answer then stays. Never rejects. */
  readonly result: Promise<Judged | null>;
  /** The round is closed: choices of tables in play go first from now on. */
  giveWay(): void;
  callOff(): void;
}

export interface Judged {
  readonly judgement: Judgement;
  /** Looked at less closely than usual, because too many choices waited. */
  readonly lowered: boolean;
}
