// The reviews that a class is shown: with the deep analyses that are there, and more asked for where they are shown.
import {
  type ChoiceReview,
  type Review,
  type SeatRecord,
  withDeepAnalysis,
} from '../../shared-engine/index.ts';
import type { AnalysisRequest, PlayingCard, Reviewer } from '../ports.ts';
import { analysisRequests } from './analysis-requests.ts';
import type { SharedAnalyzer } from './shared-analyses.ts';

export interface ClassReviewSources {
  readonly reviewer: Reviewer;
  /** First answers alone where it is null. */
  readonly analyzer: SharedAnalyzer | null;
  /** Choices to be analyzed now; the others get an analysis only if it has been made. */
  readonly wanted: (choice: ChoiceReview) => boolean;
  /** Called when one that was not known yet has been made. */
  readonly onAnalyzed: () => void;
}

/** Null where none can be made: the spread of the choices does not wait for it. */
export async function classReview(
  record: SeatRecord,
  card: PlayingCard,
  fairnessKey: string,
  sources: ClassReviewSources,
): Promise<Review | null> {
  const { reviewer, analyzer } = sources;
  const first = await reviewer.review({ record, card, fairnessKey }).catch(() => null);
  if (first === null || !analyzer) return first;
  const requests = analysisRequests(record, card, fairnessKey);
  return first.choices.reduce((review, choice, nth) => {
    const request = requests[nth]!;
    const known = analyzer.known(request.decisionId);
    if (known) return withDeepAnalysis(review, nth, known.analysis);
    if (choice.by === 'player' && sources.wanted(choice)) askFor(request, analyzer, sources.onAnalyzed);
    return review;
  }, first);
}

/** Never aborted: whoever looks at the same choice next finds it made. */
function askFor(request: AnalysisRequest, analyzer: SharedAnalyzer, onAnalyzed: () => void): void {
  const { signal } = new AbortController();
  void analyzer.analyze(request, signal).result.then((result) => result && onAnalyzed());
}
