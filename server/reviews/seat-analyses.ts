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
import type { AnalysisRequest, AnalysisResult, DeepAnalyzer, PendingAnalysis } from '../work-ports.ts';
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

  /** Asks for what is new in the seat's view, aborts what was withdrawn, and has what is open prepared. */
  follow(view: SeatView): void {
    const { card, fairnessKey } = this.#options;
    this.#prepare(view);
    const requests = analysisRequests(recordSoFar(view), card, fairnessKey);
    const changed = requests.findIndex(
      ({ decisionId }, nth) => this.#asked[nth]?.request.decisionId !== decisionId,
    );
    const from = changed === -1 ? requests.length : changed;
    for (const { abort } of this.#asked.splice(from)) abort.abort();
    for (const request of requests.slice(from)) this.#ask(request);
    if (view.stage.phase !== 'closed') return;
    for (const { pending } of this.#asked) pending.lowerPriority();
    if (this.#asked.length > 0 && this.#askedLedger === null) this.#askLedger(view.record);
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
    this.#prepared?.abort.abort();
    this.#prepared = null;
    for (const { abort } of this.#asked.splice(0)) abort.abort();
    this.#askedLedger?.abort.abort();
    this.#askedLedger = null;
  }

  #askLedger(record: SeatRecord): void {
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

  #ask(request: AnalysisRequest): void {
    const { analyzer, onResult } = this.#options;
    const abort = new AbortController();
    const pending = analyzer.analyze(request, abort.signal);
    const asked: Asked = { request, pending, abort, result: null, isOver: false };
    this.#asked.push(asked);
    void pending.result.then((result) => {
      if (this.#asked[request.nth] !== asked) return;
      asked.result = result;
      asked.isOver = true;
      onResult();
    });
  }
}
