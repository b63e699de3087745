// Deep analyses shared by everybody who knew and chose the same: each decision is analyzed once.
import { LRUCache } from 'lru-cache';
import type {
  AnalysisRank,
  AnalysisRequest,
  AnalysisResult,
  DeepAnalyzer,
  PendingAnalysis,
} from '../work-ports.ts';

/** Analyses remembered: those of some classes of sixty with a few deals each, two kilobytes apiece. */
const MAX_REMEMBERED = 8_000;

/** Situations remembered as prepared: those of some classes at one step. */
const MAX_PREPARED = 500;

/** From the one that goes first to the one that goes last. */
const RANKS: readonly AnalysisRank[] = ['interactive', 'live', 'background', 'spare'];

/** One who has asked for an analysis and still waits for it. */
interface Asker {
  rank: AnalysisRank;
}

/** An analysis that several have asked for. */
interface Shared {
  readonly pending: PendingAnalysis;
  readonly abort: AbortController;
  readonly askers: Set<Asker>;
  rank: AnalysisRank;
}

export function sharedAnalyzer(analyzer: DeepAnalyzer): DeepAnalyzer {
  const remembered = new LRUCache<string, AnalysisResult>({ max: MAX_REMEMBERED });
  const running = new Map<string, Shared>();
  const prepared = new LRUCache<string, true>({ max: MAX_PREPARED });

  function begin(request: AnalysisRequest, rank: AnalysisRank): Shared {
    const { decisionId } = request;
    const abort = new AbortController();
    const pending = analyzer.analyze(request, abort.signal, rank);
    const shared: Shared = { pending, abort, askers: new Set(), rank };
    running.set(decisionId, shared);
    void shared.pending.result.then((result) => {
      if (running.get(decisionId) === shared) running.delete(decisionId);
      // What was aborted, or failed, may be asked for again.
      if (result !== null) remembered.set(decisionId, result);
    });
    return shared;
  }

  return {
    analyze(request, signal, rank) {
      const { decisionId } = request;
      const known = remembered.get(decisionId);
      if (known) return { result: Promise.resolve(known), rank() {} };
      const shared = running.get(decisionId) ?? begin(request, rank);
      const forget = () => {
        if (running.get(decisionId) === shared) running.delete(decisionId);
      };
      return share(shared, { rank }, signal, forget);
    },
    prepare(request) {
      const key = JSON.stringify([request.card.key, request.record, request.open]);
      if (prepared.has(key)) return;
      prepared.set(key, true);
      // Somebody else who knows the same may choose later.
      analyzer.prepare(request, new AbortController().signal);
    },
    // Of a whole round, which hardly any two share.
    ledger: (request, signal) => analyzer.ledger(request, signal),
  };
}

/** One person's part: the analysis stands as it does for the most urgent who asked, and is aborted with the last of them. */
function share(shared: Shared, asker: Asker, signal: AbortSignal, forget: () => void): PendingAnalysis {
  const { askers, pending, abort } = shared;
  function settle(): void {
    const first = RANKS.find((rank) => [...askers].some((other) => other.rank === rank));
    if (first === undefined || first === shared.rank) return;
    shared.rank = first;
    pending.rank(first);
  }
  function leave(): void {
    askers.delete(asker);
    settle();
    if (askers.size > 0) return;
    forget();
    abort.abort();
  }
  askers.add(asker);
  settle();
  signal.addEventListener('abort', leave, { once: true });
  const result = pending.result.finally(() => signal.removeEventListener('abort', leave));
  return {
    result,
    rank(to) {
      asker.rank = to;
      settle();
    },
  };
}
