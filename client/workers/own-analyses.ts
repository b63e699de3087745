// The deep analyses of one's own seat, made in this page while somebody plays, from what that seat knows and nothing else.
import {
  type CompiledCard,
  type DeepAnalysis,
  decisionKey,
  decisionsIn,
  type Ledger,
  pendingDecision,
  type Review,
  recordSoFar,
  type SeatRecord,
  type SeatView,
  withDeepAnalysis,
  withLedger,
} from '../../shared-engine/index.ts';
import type { FollowRequest } from './deep-analysis-worker.ts';
import type { KeyedAnalysis, RecordedLedger } from './seat-work.ts';

export interface OwnAnalyses {
  /** To be called with each new view of the seat. */
  follow(view: SeatView): void;
  /** A review of the record followed, with each analysis that was made here; what it told of a choice once stays. */
  into(review: Review): Review;
  stop(): void;
}

/** A worker that follows; a failing one leaves the first answers. */
export interface FollowingWorker {
  send(request: FollowRequest): void;
  end(): void;
}

export type OpenFollowingWorker = (
  onAnswer: (answer: KeyedAnalysis | RecordedLedger) => void,
  onFailure: () => void,
) => FollowingWorker;

export interface OwnAnalysesPorts {
  readonly card: CompiledCard;
  /** Called after each analysis. */
  readonly onAnalysis: () => void;
  /** Called when nothing more is to come. */
  readonly onFailure?: () => void;
  readonly openWorker?: OpenFollowingWorker;
}

export type StartOwnAnalyses = (ports: OwnAnalysesPorts) => OwnAnalyses;

export function startOwnAnalyses({
  card,
  onAnalysis,
  onFailure = () => {},
  openWorker = openBrowserWorker,
}: OwnAnalysesPorts): OwnAnalyses {
  let record: SeatRecord | null = null;
  let known: ReadonlyMap<string, DeepAnalysis> = new Map();
  /** Those of them that the server was first with. */
  let ofServer: ReadonlySet<string> = new Set();
  let ledger: Ledger | null = null;
  const worker = openWorker((answer) => {
    if ('ledger' in answer) {
      if (answer.start !== record?.start.join()) return;
      ledger ??= answer.ledger;
      // What the server was quicker with has been told.
    } else if (!known.has(answer.key)) known = new Map(known).set(answer.key, answer.analysis);
    onAnalysis();
  }, onFailure);
  /** What the worker was told last, as JSON; null before anything was. */
  let told: string | null = null;

  function keys(): readonly string[] {
    return record === null ? [] : decisionsIn(record).map(decisionKey);
  }

  return {
    follow(view) {
      if (record !== null && record.start.join() !== view.record.start.join()) {
        known = new Map();
        ofServer = new Set();
        ledger = null;
      }
      record = recordSoFar(view);
      const follow = { record, open: pendingDecision(view), isClosed: view.stage.phase === 'closed' };
      const text = JSON.stringify(follow);
      // Much that a table tells changes nothing for this seat, and the worker goes on with what it is at.
      if (text === told) return;
      worker.send({ follow, card: told === null ? card : null });
      told = text;
    },
    into(review) {
      const news = keys().flatMap((key, nth): (readonly [string, DeepAnalysis])[] => {
        const { analysis } = review.choices[nth]!;
        return known.has(key) || analysis.depth === 'quick' ? [] : [[key, analysis]];
      });
      known = new Map([...known, ...news]);
      ofServer = new Set([...ofServer, ...news.map(([key]) => key)]);
      ledger ??= review.ledger;
      const told = withAll(
        review,
        keys().map((key) => known.get(key)),
      );
      // Where a loaded server looked less closely at some, its review says so.
      const whole = ofServer.size > 0 ? { ...told, method: review.method } : told;
      return ledger === null ? whole : withLedger(whole, ledger);
    },
    stop: () => worker.end(),
  };
}

function withAll(review: Review, analyses: readonly (DeepAnalysis | undefined)[]): Review {
  return analyses.reduce<Review>(
    (now, analysis, nth) => (analysis ? withDeepAnalysis(now, nth, analysis) : now),
    review,
  );
}

function openBrowserWorker(...[onAnswer, onFailure]: Parameters<OpenFollowingWorker>): FollowingWorker {
  const worker = new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<KeyedAnalysis | RecordedLedger>) =>
    onAnswer(data),
  );
  worker.addEventListener('error', ({ message }) => {
    console.warn(message);
    onFailure();
  });
  return { send: (request) => worker.postMessage(request), end: () => worker.terminate() };
}
