// A request for each choice in a seat's record, with the one identity that a decision has everywhere.
import { createHash } from 'node:crypto';
import {
  type Actor,
  type ChoiceReview,
  decisionKey,
  decisionsIn,
  type RecordedDecision,
  type SeatRecord,
} from '../../shared-engine/index.ts';
import type { PlayingCard } from '../ports.ts';
import type { AnalysisRequest } from '../work-ports.ts';

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

/** A choice of a record with what a class report calls it. */
export interface SeatDecision {
  readonly kind: ChoiceReview['kind'];
  readonly step: ChoiceReview['step'];
  readonly by: Actor;
  readonly request: AnalysisRequest;
}

/** In the order of the review's choices. */
export function seatDecisions(
  record: SeatRecord,
  card: PlayingCard,
  fairnessKey: string,
): readonly SeatDecision[] {
  const requests = analysisRequests(record, card, fairnessKey);
  return decisionsIn(record).flatMap(({ offered: { chosen }, subject }, nth): SeatDecision[] => {
    const by = chosen.by[record.seat];
    const request = requests[nth]!;
    if (by === null) return [];
    if (chosen.kind === 'vote') return [{ kind: 'vote', step: 'vote', by, request }];
    if (chosen.kind === 'ask') return [{ kind: 'ask', step: 'courtesy-ask', by, request }];
    return [{ kind: subject === 'number' ? 'blind' : 'pass', step: chosen.step, by, request }];
  });
}

/** A hash of the card and of the decision's key: the same for all who knew and chose the same. */
function decisionIdOf(decision: RecordedDecision, card: PlayingCard): string {
  return createHash('sha256')
    .update(JSON.stringify([card.key, decisionKey(decision)]))
    .digest('hex');
}
