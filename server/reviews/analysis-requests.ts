// A request for each choice in a seat's record, with the one identity that a decision has everywhere.
import { createHash } from 'node:crypto';
import {
  type AnswerChoice,
  choiceAt,
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

/**
 * A hash of all that an analysis depends on: the card, what the seat knew, what it was asked and what it chose. What
 * the others did in the same step is no part of it, so a decision keeps its id when its step is over.
 */
function decisionIdOf({ offered, subject }: RecordedDecision, card: PlayingCard): string {
  const { situation, chosen } = offered;
  const known = [card.key, situation, subject, sorted(choiceAt(chosen, situation.seat))];
  return createHash('sha256').update(JSON.stringify(known)).digest('hex');
}

/** The order in which tiles were picked makes no other choice. */
function sorted(choice: AnswerChoice | null): AnswerChoice | null {
  return choice?.kind === 'pass' ? { ...choice, tiles: [...choice.tiles].sort() } : choice;
}
