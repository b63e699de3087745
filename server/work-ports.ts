// The slow work that the server has done by workers, as interfaces without code.
import type {
  AnswerChoice,
  DeepAnalysis,
  Drill,
  DrillProblem,
  GuidedStart,
  Ledger,
  PendingDecision,
  PreparedDeal,
  Review,
  SeatRecord,
  SeatView,
  StyleName,
} from '../shared-engine/index.ts';
import type { CardChoice, PlayingCard } from './ports.ts';

/** Checks card files as somebody sent them. */
export interface Cards {
  /** `sender` names who waits for it, so that no other sender waits behind all of theirs. Null when it cannot be done now. */
  check(file: unknown, sender: string): Promise<CheckedCard | null>;
}

export type CheckedCard =
  | { readonly ok: true; readonly choice: CardChoice }
  /** One sentence for each problem, which says what to do. */
  | { readonly ok: false; readonly problems: readonly string[] };

/** The slow work that waits for a worker. */
export interface Backlog {
  readonly waiting: number;
  /** How long the oldest of it has waited, in milliseconds; 0 where none waits. */
  readonly oldestMs: number;
  /** Whether as much waits as may, so that more is left out. */
  readonly isFull: boolean;
}

/** Chooses for a seat from that seat's view and nothing more. */
export interface Bots {
  choose(request: BotRequest): Promise<AnswerChoice>;
}

/**
 * Slow work is done in turns: of two rooms or classes that ask for much of it, neither waits for all the other's.
 * `fairnessKey` names the one that asks.
 */
interface SlowWork {
  readonly card: PlayingCard;
  readonly fairnessKey: string;
}

export interface BotRequest extends SlowWork {
  readonly style: StyleName;
  readonly view: SeatView;
  /** The round's secret seed, from which the bot's random numbers come; the bot itself never gets it. */
  readonly seed: string;
}

/** Reviews the choices of one seat from what that seat knew. */
export interface Reviewer {
  review(request: ReviewRequest): Promise<Review>;
}

export interface ReviewRequest extends SlowWork {
  readonly record: SeatRecord;
  /** The review of the same record when fewer steps were over; it saves time and changes nothing. */
  readonly earlier?: Review | null;
}

/** Prepares drills, so that their deals can be dealt, and plays their deals out. */
export interface Drills {
  /** `drill` is whatever somebody sent. Null when it could not be prepared just now, or is not wanted any more. */
  prepare(drill: unknown, request: DrillRequest): Promise<PreparedDrill | null>;
  /** Plays these choices of the deal's seat with the drill's bots. Null when it could not be done just now. */
  play(request: PlayRequest): Promise<PlayedDeal | null>;
}

export interface PlayRequest extends SlowWork {
  readonly start: GuidedStart;
  readonly choices: readonly AnswerChoice[];
}

export type PlayedDeal =
  | { readonly ok: true; readonly record: SeatRecord; readonly isClosed: boolean }
  /** A choice that was not legal there. */
  | { readonly ok: false };

export interface DrillRequest {
  readonly card: PlayingCard;
  /** Names who waits for it, so that no other sender waits behind all of theirs. */
  readonly sender: string;
  /** Aborted when the sender has gone. */
  readonly signal: AbortSignal;
}

export type PreparedDrill =
  | { readonly ok: true; readonly drill: Drill; readonly deals: readonly PreparedDeal[] }
  | { readonly ok: false; readonly problems: readonly DrillProblem[] };

/** Analyzes single choices more deeply than the first review does, while people think and after the close. */
export interface DeepAnalyzer {
  /** With `signal` aborted, the analysis is not begun or broken off. */
  analyze(request: AnalysisRequest, signal: AbortSignal, rank: AnalysisRank): PendingAnalysis;
  /** Does in idle time what an analysis of any answer to the open step will need: it is there sooner, with the same bytes. */
  prepare(request: PreparationRequest, signal: AbortSignal): void;
  /** Luck and choices of a closed round; null when it was aborted or could not be made. Never rejects. */
  ledger(request: LedgerRequest, signal: AbortSignal): Promise<Ledger | null>;
}

/** What the step that is open asks of the seat of this record. */
export interface PreparationRequest extends SlowWork {
  readonly record: SeatRecord;
  readonly open: PendingDecision;
}

export interface LedgerRequest extends SlowWork {
  readonly record: SeatRecord;
}

/** Choice number `nth` of the review of this record; what comes after it in the record is not looked at. */
export interface AnalysisRequest extends SlowWork {
  /** The same for everybody who knew and chose the same, at every server, before and after a restart. */
  readonly decisionId: string;
  readonly record: SeatRecord;
  readonly nth: number;
}

/**
 * Who waits for an analysis: a class at its big screen, a table in play, a closed round, or nobody here, because the page
 * of the seat analyzes for itself.
 */
export type AnalysisRank = 'interactive' | 'live' | 'background' | 'spare';

export interface PendingAnalysis {
  /** Null when it was aborted or could not be made; the first answer then stays. Never rejects. */
  readonly result: Promise<AnalysisResult | null>;
  /** Where it stands from now on; what is `interactive` once stays that. */
  rank(rank: AnalysisRank): void;
}

export interface AnalysisResult {
  readonly analysis: DeepAnalysis;
  /** Analyzed less closely than usual, because too many choices waited. */
  readonly reducedBudget: boolean;
}
