// The deep analyses of one seat's choices in one round, asked for one by one as they are made, while people think.
import {
  type Ledger,
  pendingDecision,
  type Review,
  recordSoFar,
  type SeatRecord,
  type SeatView,
  withDeepAnalysis,
  withLedger,
  withReducedBudget,
} from '../../shared-engine/index.ts';
import type { PlayingCard } from '../ports.ts';
import type {
  AnalysisRank,
  AnalysisRequest,
  AnalysisResult,
  DeepAnalyzer,
  PendingAnalysis,
} from '../work-ports.ts';
import { analysisRequests } from './analysis-requests.ts';

/** One choice on its way: asked for, then answered, perhaps with null. */
interface Asked {
  readonly request: AnalysisRequest;
  readonly pending: PendingAnalysis;
  readonly abort: AbortController;
  result: AnalysisResult | null;
  isOver: boolean;
}

/** Luck and choices of the round, asked for when it is closed. */
interface AskedLedger {
  readonly abort: AbortController;
  ledger: Ledger | null;
  isOver: boolean;
}

export interface SeatAnalysesOptions {
  readonly analyzer: DeepAnalyzer;
  readonly card: PlayingCard;
  readonly fairnessKey: string;
  /** Called after each answer. */
  readonly onResult: () => void;
}

export class SeatAnalyses {
  readonly #options: SeatAnalysesOptions;
  /** In the order of the review's choices. */
  #asked: Asked[] = [];
  /** The step that is prepared, and how that is aborted. */
  #prepared: { readonly steps: number; readonly abort: AbortController } | null = null;
  #askedLedger: AskedLedger | null = null;
  /** Where the round is closed: what the seat knows of it. */
  #closed: SeatRecord | null = null;
  #isSpare = false;

  constructor(options: SeatAnalysesOptions) {
    this.#options = options;
  }

  /** Whether nothing more is to come for what was asked so far. */
  get isOver(): boolean {
    return this.#asked.every(({ isOver }) => isOver) && this.#askedLedger?.isOver !== false;
  }

  /** Whether nothing was asked. */
  get isEmpty(): boolean {
    return this.#asked.length === 0;
  }

  /** Whether the page of the seat analyzes the round itself, so that nobody waits for any of this. */
  get isSpare(): boolean {
    return this.#isSpare;
  }

  /** The page analyzes the round itself from now on, or does so no longer; what was left out for its sake is asked for anew. */
  leaveToPage(isLeft: boolean): void {
    if (isLeft === this.#isSpare) return;
    this.#isSpare = isLeft;
    if (isLeft) this.#endPreparation();
    for (const [nth, { request, pending, isOver, result }] of this.#asked.entries()) {
      if (isLeft || !isOver) pending.rank(this.#rank);
      else if (result === null) this.#asked[nth] = this.#ask(request);
    }
    this.#askLedger();
  }

  /** Asks for what is new in the seat's view, aborts what was withdrawn, and has what is open prepared. */
  follow(view: SeatView): void {
    const { card, fairnessKey } = this.#options;
    if (!this.#isSpare) this.#prepare(view);
    const requests = analysisRequests(recordSoFar(view), card, fairnessKey);
    const changed = requests.findIndex(
      ({ decisionId }, nth) => this.#asked[nth]?.request.decisionId !== decisionId,
    );
    const from = changed === -1 ? requests.length : changed;
    if (view.stage.phase === 'closed') this.#closed = view.record;
    for (const { abort } of this.#asked.splice(from)) abort.abort();
    for (const request of requests.slice(from)) this.#asked.push(this.#ask(request));
    if (this.#closed === null) return;
    for (const { pending } of this.#asked) pending.rank(this.#rank);
    this.#askLedger();
  }

  get #rank(): AnalysisRank {
    if (this.#isSpare) return 'spare';
    return this.#closed === null ? 'live' : 'background';
  }

  /** The review with every analysis that is there. */
  into(review: Review): Review {
    const found = this.#asked.flatMap(({ result, request: { nth } }) => (result ? [{ ...result, nth }] : []));
    const deep = found.reduce((now, { analysis, nth }) => withDeepAnalysis(now, nth, analysis), review);
    const ledger = this.#askedLedger?.ledger ?? null;
    const whole = ledger === null ? deep : withLedger(deep, ledger);
    return found.some(({ reducedBudget }) => reducedBudget) ? withReducedBudget(whole) : whole;
  }

  /** Aborts everything. */
  stop(): void {
    this.#endPreparation();
    for (const { abort } of this.#asked.splice(0)) abort.abort();
    this.#askedLedger?.abort.abort();
    this.#askedLedger = null;
  }

  /** Once, and not where the page tells luck and choices of its round itself. */
  #askLedger(): void {
    const record = this.#closed;
    if (record === null || this.#isSpare || this.#askedLedger !== null || this.isEmpty) return;
    const { analyzer, card, fairnessKey, onResult } = this.#options;
    const asked: AskedLedger = { abort: new AbortController(), ledger: null, isOver: false };
    this.#askedLedger = asked;
    void analyzer.ledger({ record, card, fairnessKey }, asked.abort.signal).then((ledger) => {
      if (this.#askedLedger !== asked) return;
      asked.ledger = ledger;
      asked.isOver = true;
      onResult();
    });
  }

  /** Once for each step; aborted with the answer, which then is analyzed. */
  #prepare(view: SeatView): void {
    const open = pendingDecision(view);
    const steps = view.record.steps.length;
    if (open === null || this.#prepared?.steps !== steps) this.#prepared?.abort.abort();
    if (open === null || this.#prepared?.steps === steps) return;
    const { analyzer, card, fairnessKey } = this.#options;
    const abort = new AbortController();
    this.#prepared = { steps, abort };
    analyzer.prepare({ record: view.record, open, card, fairnessKey }, abort.signal);
  }

  #endPreparation(): void {
    this.#prepared?.abort.abort();
    this.#prepared = null;
  }

  #ask(request: AnalysisRequest): Asked {
    const { analyzer, onResult } = this.#options;
    const abort = new AbortController();
    const pending = analyzer.analyze(request, abort.signal, this.#rank);
    const asked: Asked = { request, pending, abort, result: null, isOver: false };
    void pending.result.then((result) => {
      if (this.#asked[request.nth] !== asked) return;
      asked.result = result;
      asked.isOver = true;
      onResult();
    });
    return asked;
  }
}
