// A request for each choice in a seat's record, with the one identity that a decision has everywhere.
import { createHash } from 'node:crypto';
import {
  decisionKey,
  decisionsIn,
  type RecordedDecision,
  type SeatRecord,
} from '../../shared-engine/index.ts';
import type { AnalysisRequest, PlayingCard } from '../ports.ts';

/** In the order of the review's choices. */
export function analysisRequests(
  record: SeatRecord,
  card: PlayingCard,
  fairnessKey: string,
): readonly AnalysisRequest[] {
  return decisionsIn(record).map((decision, nth) => {
    return { decisionId: decisionIdOf(decision, card), record, nth, card, fairnessKey };
  });
}

/** A hash of the card and of the decision's key: the same for all who knew and chose the same. */
function decisionIdOf(decision: RecordedDecision, card: PlayingCard): string {
  return createHash('sha256')
    .update(JSON.stringify([card.key, decisionKey(decision)]))
    .digest('hex');
}
