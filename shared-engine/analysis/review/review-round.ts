// (one seat's record, card) → its private review; the true deal cannot get in here by type.

import type { Kernel } from '../../kernels/tiles-to-go/kernel.ts';
import { MOVES } from '../../rules/exchange/schedule.ts';
import type { SeatRecord } from '../../rules/view/record.ts';
import { BASIS } from './basis.ts';
import { familyNames } from './families.ts';
import { judgeAsk, judgeBlind, judgeVote } from './judge-number.ts';
import { judgePass, rankMove } from './judge-pass.ts';
import { QUICK } from './judgement.ts';
import { type OfferedMove, type Relived, relive } from './replay-decisions.ts';
import type { ChoiceReview, NumberReview, PassReview, Review } from './review.ts';
import { lessonOf } from './words/lesson.ts';
import { METHOD } from './words/method.ts';
import { numberWords } from './words/number.ts';
import { passWords } from './words/pass.ts';
import { type Worth, worthOn } from './worth.ts';

type Judged = Omit<PassReview, 'words' | 'judgement'> | Omit<NumberReview, 'words' | 'judgement'>;
type Offer = Relived['offered'][number];

/**
 * Judges every choice of one seat from what it knew when it made it, in the order of the round. A record of a
 * round that is still going on gives the review of the steps that are over. The same record and card give the
 * same bytes on every machine. `earlier`, the review of the same record when fewer steps were over, saves the work
 * that went into it and changes nothing.
 */
export function reviewRound(record: SeatRecord, kernel: Kernel, earlier: Review | null = null): Review {
  const worth = worthOn(kernel);
  const { start, end, offered } = relive(record);
  const known = (offer: Offer) => earlier?.choices.filter(({ step }) => step === stepOf(offer)) ?? [];
  const judged = offered.flatMap((offer): readonly Judged[] => {
    const before = known(offer);
    return before.length > 0 ? before : judge(offer, kernel, worth);
  });
  const ids = judged.flatMap((choice) =>
    choice.kind === 'pass' ? [...choice.open, ...choice.openAfter, ...choice.openAfterBest] : [],
  );
  const families = familyNames(kernel.card, ids);
  const choices = judged.map(
    (choice): ChoiceReview =>
      choice.kind === 'pass'
        ? { ...choice, words: passWords(choice, families), judgement: QUICK }
        : { ...choice, words: numberWords(choice), judgement: QUICK },
  );
  return {
    seat: record.seat,
    cardId: kernel.card.id,
    cardName: kernel.card.name,
    families,
    toGoStart: kernel.toGo(start),
    toGoEnd: kernel.toGo(end),
    basis: BASIS,
    lesson: lessonOf({ choices }),
    choices,
    method: METHOD,
  };
}

/** No step comes twice in a round. */
function stepOf(offer: Offer): ChoiceReview['step'] {
  switch (offer.kind) {
    case 'move':
      return offer.step;
    case 'vote':
      return 'vote';
    case 'ask':
      return 'courtesy-ask';
  }
}

function judge(offer: Offer, kernel: Kernel, worth: Worth): readonly Judged[] {
  switch (offer.kind) {
    case 'move':
      return judgeMove(offer, kernel, worth);
    case 'vote':
      return [judgeVote(offer, kernel, worth)];
    case 'ask':
      return [judgeAsk(offer, kernel, worth)];
  }
}

/** How many went blind is a choice before the tiles; where all three did, no tile was chosen. */
function judgeMove(offer: OfferedMove, kernel: Kernel, worth: Worth): readonly Judged[] {
  const ranking = offer.gave.length > 0 ? rankMove(offer, worth) : null;
  const blind = MOVES[offer.step].blind ? [judgeBlind(offer, ranking, kernel, worth)] : [];
  return ranking ? [...blind, judgePass(offer, ranking, kernel)] : blind;
}
