// The worker for what would keep the page waiting: playing the choices of a round on many times, following a seat that
// plays, surveying a card, telling how often its hands are reached from a rack, drawing deals for a kind of mistake.
import {
  type Analyst,
  analyzeDecision,
  bagOf,
  type CardFile,
  type CompiledCard,
  createAnalyst,
  createDealMemory,
  createSwarKernel,
  DEEP_BUDGET,
  type DealTools,
  type DealWish,
  type DeepAnalysis,
  type DrawnDeal,
  drawDeal,
  type Face,
  LEDGER_BATCHES,
  type Ledger,
  ledgerOf,
  loadSimd,
  prepareDecision,
  type Reach,
  reachOf,
  type SeatRecord,
  SURVEY_DEALS,
  type SurveyProgress,
  surveyCard,
} from '../../shared-engine/index.ts';
import {
  createSeatWork,
  type KeyedAnalysis,
  type RecordedLedger,
  type SeatKnowledge,
  type SeatWork,
} from './seat-work.ts';

export interface RoundAnalysisRequest {
  readonly record: SeatRecord;
  readonly card: CompiledCard;
  /** Which choices of the review of the record, in the order wanted. */
  readonly choices: readonly number[];
  /** Whether luck and choices of the round are wanted after them. */
  readonly withLedger: boolean;
}

/** The same for a worker; `card` is null for that of the task before. */
export type AnalysisTask = Omit<RoundAnalysisRequest, 'card'> & { readonly card: CompiledCard | null };

export interface ChoiceAnalysis {
  readonly nth: number;
  readonly analysis: DeepAnalysis;
}

/** A seat to be followed from now on. */
export interface FollowRequest {
  readonly follow: SeatKnowledge;
  /** Comes with the first request alone. */
  readonly card: CompiledCard | null;
}

export interface LedgerAnswer {
  readonly ledger: Ledger;
}

/** A card to be looked at over dealt racks. */
export interface SurveyRequest {
  readonly survey: CardFile;
  readonly seed: string;
}

/** Kept from task to task: what it has worked out of a card and of the steps before helps with the next choice. */
let kept: Analyst | null = null;

/** A rack to be compared with a card, which comes with the first request and stays. */
export interface ReachRequest {
  readonly reach: { readonly rack: readonly Face[]; readonly gone: readonly Face[] };
  readonly nth: number;
  readonly card: CompiledCard | null;
}

export interface ReachAnswer {
  readonly nth: number;
  readonly reach: readonly Reach[];
}

let cardOfRacks: CompiledCard | null = null;

/** A deal to be drawn; the card comes with the first request and stays. */
export interface DrawRequest {
  readonly draw: DealWish;
  readonly seed: string;
  readonly card: CompiledCard | null;
}

/** How many deals have been looked at for the one wished for, or that one. */
export type DrawAnswer = { readonly tried: number } | { readonly drawn: DrawnDeal };

let drawing: DealTools | null = null;

type Request = AnalysisTask | FollowRequest | SurveyRequest | ReachRequest | DrawRequest;

self.addEventListener('message', ({ data }: MessageEvent<Request>) => {
  if ('survey' in data) survey(data);
  else if ('follow' in data) void follow(data);
  else if ('reach' in data) tellReach(data);
  else if ('draw' in data) void draw(data);
  else void work(data);
});

// Whoever opened the worker hears of what fails in a later turn as well.
self.addEventListener('unhandledrejection', ({ reason }) => self.reportError(reason));

function survey({ survey: card, seed }: SurveyRequest): void {
  for (const step of surveyCard(card, seed, SURVEY_DEALS)) self.postMessage(step satisfies SurveyProgress);
}

function tellReach({ reach: { rack, gone }, nth, card }: ReachRequest): void {
  cardOfRacks = card ?? cardOfRacks;
  if (cardOfRacks === null) return;
  const answer: ReachAnswer = { nth, reach: reachOf(cardOfRacks, bagOf(rack), gone) };
  self.postMessage(answer);
}

async function draw({ draw: wish, seed, card }: DrawRequest): Promise<void> {
  if (card !== null) {
    const analyst: Analyst = { ...createAnalyst(card, await loadSimd()), memory: createDealMemory() };
    drawing = { analyst, kernel: createSwarKernel(card) };
  }
  if (drawing === null) throw new Error('The first request of a worker brings its card.');
  const looking = drawDeal(drawing, wish, seed);
  for (let next = looking.next(); ; next = looking.next()) {
    if (next.done) return self.postMessage({ drawn: next.value } satisfies DrawAnswer);
    self.postMessage({ tried: next.value } satisfies DrawAnswer);
  }
}

async function work({ record, card, choices, withLedger }: AnalysisTask): Promise<void> {
  // A coach asks about several answers to one situation.
  if (card !== null) kept = { ...createAnalyst(card, await loadSimd()), memory: createDealMemory(1) };
  const analyst = kept;
  if (analyst === null) throw new Error('The first task of a worker brings its card.');
  for (const nth of choices) {
    const answer: ChoiceAnalysis = {
      nth,
      analysis: analyzeDecision(analyst, record, nth, { budget: DEEP_BUDGET }),
    };
    self.postMessage(answer);
  }
  if (!withLedger) return;
  self.postMessage({ ledger: ledgerOf(analyst, record, LEDGER_BATCHES.deep) } satisfies LedgerAnswer);
}

let seatWork: Promise<SeatWork> | null = null;

async function follow({ follow: knowledge, card }: FollowRequest): Promise<void> {
  if (card !== null) seatWork = seatWorkOn(card);
  (await seatWork)?.follow(knowledge);
}

async function seatWorkOn(card: CompiledCard): Promise<SeatWork> {
  const analyst: Analyst = { ...createAnalyst(card, await loadSimd()), memory: createDealMemory() };
  const terms = { budget: DEEP_BUDGET };
  return createSeatWork({
    analyze: (record, nth) => analyzeDecision(analyst, record, nth, terms),
    prepare: (record, open) => prepareDecision(analyst, record, open, terms),
    ledger: (record) => ledgerOf(analyst, record, LEDGER_BATCHES.deep),
    pause: () => new Promise((resolve) => setTimeout(resolve)),
    onAnalysis: (answer) => self.postMessage(answer satisfies KeyedAnalysis),
    onLedger: (answer) => self.postMessage(answer satisfies RecordedLedger),
  });
}
