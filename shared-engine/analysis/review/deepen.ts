// From the first answer to the deeper one: choices judged one at a time, in any order, and put into the review.

import { MOVES } from '../../rules/exchange/schedule.ts';
import type { SeatRecord } from '../../rules/view/record.ts';
import { BATCH } from '../belief/belief.ts';
import { choicesOf, type OfferedChoice } from '../belief/situation.ts';
import { type Analyst, type Asked, analyse, facesIn } from '../comparison/analyse.ts';
import type { Budget } from '../comparison/budget.ts';
import type { Race, Raced } from '../comparison/comparison.ts';
import type { Estimate } from '../comparison/estimate.ts';
import { SMALL_LOSS } from '../comparison/verdict.ts';
import type { DeepJudgement, Finalist, Judgement, Measured } from './judgement.ts';
import type { ChoiceReview, Review } from './review.ts';
import { thousandth } from './rounding.ts';
import { judgementWords } from './words/judgement.ts';
import { lessonOf } from './words/lesson.ts';
import { DEEP_METHOD, LOWERED, METHOD } from './words/method.ts';

/**
 * Judges choice number `nth` of the review of this record. The same record, card and budget give the same bytes,
 * whatever was judged before. `seed` is for checks of exactly that.
 */
export function judgeDeeply(
  analyst: Analyst,
  record: SeatRecord,
  nth: number,
  budget: Budget,
  seed?: number,
): Judgement {
  const question = questionsIn(record)[nth];
  if (!question) throw new RangeError(`The record has no choice number ${nth}.`);
  return judgeOffered(analyst, question.offered, question.asked, budget, seed);
}

/** The same for a choice as it is offered, before its step is over. */
export function judgeOffered(
  analyst: Analyst,
  offered: OfferedChoice,
  asked: Asked,
  budget: Budget,
  seed?: number,
): Judgement {
  const result = analyse(analyst, offered, asked, budget, seed);
  if (result === null) throw new RangeError('Nothing of that kind was chosen.');
  return judgementOf(result, offered, asked);
}

/** The review with one choice judged more deeply; the lesson follows once no choice is left unjudged. */
export function withJudgement(review: Review, nth: number, judgement: Judgement): Review {
  const choices = review.choices.map(
    (choice, n): ChoiceReview => (n === nth ? { ...choice, judgement } : choice),
  );
  return { ...review, choices, lesson: lessonOf({ choices }), method: `${METHOD} ${DEEP_METHOD}` };
}

/** The review of which some choices were judged on a smaller budget than there would be time for elsewhere. */
export function sayLowered(review: Review): Review {
  return { ...review, method: `${review.method} ${LOWERED}` };
}

export interface Question {
  readonly offered: OfferedChoice;
  readonly asked: Asked;
}

/** What a review asks of a record, in the order of its choices: how many went blind comes before the tiles. */
export function questionsIn(record: SeatRecord): readonly Question[] {
  return choicesOf(record).flatMap((offered) => {
    const { chosen } = offered;
    const asked: Asked[] = [];
    if (chosen.kind !== 'move' || MOVES[chosen.step].blind) asked.push('number');
    if (chosen.kind === 'move' && chosen.gave.length > 0) asked.push('tiles');
    return asked.map((kind) => ({ offered, asked: kind }));
  });
}

function judgementOf(race: Race, { chosen: { kind } }: OfferedChoice, asked: Asked): DeepJudgement {
  const { verdict, finalists, chosen, rival, baseline, batches } = race;
  const judged = {
    depth: 'deep' as const,
    verdict,
    decided: verdict !== 'too-close',
    loss: rival && measured(rival.ahead),
    gift: chosen.gift && measured(chosen.gift),
    played: finalists.indexOf(chosen),
    rival: rival && finalists.indexOf(rival),
    finalists: finalists.map(finalist),
    rivals: finalists.length - 1,
    mean: baseline && measured(baseline),
    worlds: batches * BATCH,
    smallLoss: SMALL_LOSS,
  };
  const choice = asked === 'tiles' ? 'pass' : kind === 'move' ? 'blind' : kind;
  return { ...judged, words: judgementWords(judged, choice) };
}

function finalist({ alternative, outlook, ahead, gift, inFront }: Raced): Finalist {
  return {
    tiles: facesIn(alternative),
    number: alternative.number,
    outlook: measured(outlook),
    ahead: measured(ahead),
    gift: gift && measured(gift),
    inFront,
  };
}

function measured({ value, within }: Estimate): Measured {
  return { value: thousandth(value), within: thousandth(within) };
}
