// The reviews of a class with the deeper judgements that are there, and more of them asked for where they are shown.
import { type ChoiceReview, type Review, type SeatRecord, withJudgement } from '../../shared-engine/index.ts';
import type { PlayingCard } from '../ports.ts';
import type { SharedJudges } from './shared-judges.ts';

export interface Deeper {
  readonly judges: SharedJudges;
  /** Choices that are to be looked at now, if nobody has yet; the others only as far as they are known. */
  readonly wanted: (choice: ChoiceReview) => boolean;
  /** Called when one that was not known yet is. */
  readonly onJudged: () => void;
}

export function deepened(
  review: Review,
  record: SeatRecord,
  card: PlayingCard,
  { judges, wanted, onJudged }: Deeper,
): Review {
  return review.choices.reduce((now, choice, nth) => {
    const asked = { record, nth, card };
    const known = judges.known(asked);
    if (known) return withJudgement(now, nth, known.judgement);
    if (choice.by === 'owner' && wanted(choice)) {
      void judges.judge(asked).result.then((judged) => judged && onJudged());
    }
    return now;
  }, review);
}
