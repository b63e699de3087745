// Deep analyses shared by everybody who knew and chose the same: each decision is analyzed once.
import { LRUCache } from 'lru-cache';
import type { AnalysisRequest, AnalysisResult, DeepAnalyzer, PendingAnalysis } from '../work-ports.ts';

/** Analyses remembered: those of some classes of sixty with a few deals each, two kilobytes apiece. */
const MAX_REMEMBERED = 8_000;

/** Situations remembered as prepared: those of some classes at one step. */
const MAX_PREPARED = 500;

/** An analysis that several have asked for. */
interface Shared {
  readonly pending: PendingAnalysis;
  readonly abort: AbortController;
  /** How many still wait for it, and how many of them still play. */
  waiting: number;
  playing: number;
}

export function sharedAnalyzer(analyzer: DeepAnalyzer): DeepAnalyzer {
  const remembered = new LRUCache<string, AnalysisResult>({ max: MAX_REMEMBERED });
  const running = new Map<string, Shared>();
  const prepared = new LRUCache<string, true>({ max: MAX_PREPARED });

  function begin(request: AnalysisRequest): Shared {
    const { decisionId } = request;
    const abort = new AbortController();
    const shared = { pending: analyzer.analyze(request, abort.signal), abort, waiting: 0, playing: 0 };
    running.set(decisionId, shared);
    void shared.pending.result.then((result) => {
      if (running.get(decisionId) === shared) running.delete(decisionId);
      // What was aborted, or failed, may be asked for again.
      if (result !== null) remembered.set(decisionId, result);
    });
    return shared;
  }

  return {
    analyze(request, signal) {
      const { decisionId } = request;
      const known = remembered.get(decisionId);
      if (known) return { result: Promise.resolve(known), lowerPriority() {}, raisePriority() {} };
      const shared = running.get(decisionId) ?? begin(request);
      return share(shared, signal, () => {
        if (running.get(decisionId) === shared) running.delete(decisionId);
      });
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

/** One person's part: the analysis goes behind others, or is aborted, when all who asked for it have said so. */
function share(shared: Shared, signal: AbortSignal, forget: () => void): PendingAnalysis {
  let isPlaying = true;
  function lowerPriority(): void {
    if (!isPlaying) return;
    isPlaying = false;
    shared.playing--;
    if (shared.playing === 0) shared.pending.lowerPriority();
  }
  function leave(): void {
    shared.waiting--;
    if (shared.waiting > 0) {
      lowerPriority();
    } else {
      forget();
      shared.abort.abort();
    }
  }
  shared.waiting++;
  shared.playing++;
  signal.addEventListener('abort', leave, { once: true });
  const result = shared.pending.result.finally(() => signal.removeEventListener('abort', leave));
  return { result, lowerPriority, raisePriority: () => shared.pending.raisePriority() };
}
