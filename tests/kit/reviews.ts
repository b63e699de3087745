// Records to review: from rounds played by the product's bots and a careless seat, or written by hand.
import type { PassReview, Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import type { Kernel } from '../../shared-engine/kernels/tiles-to-go/kernel.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice, Choice } from '../../shared-engine/rules/exchange/command.ts';
import type { Actor, Round } from '../../shared-engine/rules/exchange/round.ts';
import type { MoveStep } from '../../shared-engine/rules/exchange/schedule.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatMove, SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { anyChoice, opened, type Played, playOn } from './rounds.ts';

export const houseKernel: Kernel = createSwarKernel(houseCard());

/** Seat 0 plays strongly, 1 casually, 2 any legal way, 3 avoids risky passes. */
export function mixedChoice(round: Round, seat: Seat, random: Random): Choice {
  const style = (['strong', 'casual', null, 'guarded'] as const)[seat];
  const answer: AnswerChoice | null = style && chooseFor(style, seatView(round, seat), houseKernel, random);
  return answer ?? anyChoice(round, seat, random);
}

export function mixedRound(name: string, dealer: Seat = 0): Played {
  return playOn(opened(name, dealer), stream(name, 'players'), undefined, mixedChoice);
}

/** `count` records of closed rounds, each from the next seat and with the next dealer. */
export function records(name: string, count: number): SeatRecord[] {
  return Array.from({ length: count }, (_, n) => {
    const { round } = mixedRound(`${name} ${n}`, SEATS[Math.floor(n / 4) % 4]!);
    return seatView(round, SEATS[n % 4]!).record;
  });
}

/** One pass of seat 0, written by hand; what the other seats did is public and of no weight. */
export function move(
  step: MoveStep,
  gave: readonly Face[],
  received: readonly Face[],
  extra: { readonly by?: Actor; readonly blind?: number } = {},
): SeatMove {
  const by = extra.by ?? 'player';
  return {
    kind: 'move',
    step,
    blind: [extra.blind ?? 0, 0, 0, 0],
    voided: 0,
    by: [by, 'bot', 'bot', 'bot'],
    to: 1,
    from: 3,
    gave,
    received,
  };
}

/** The review of a record of seat 0, not the dealer. */
export function reviewOf(start: readonly Face[], steps: SeatRecord['steps']): Review {
  return reviewRound({ seat: 0, dealer: 1, terms: STANDARD_TERMS.friends, start, steps }, houseKernel);
}

/** All that is told of choice number `nth`. */
export function toldOf({ story }: Review, nth = 0): string {
  return story.choices[nth]!.sentences.join(' ');
}

export function passesOf({ choices }: Review): PassReview[] {
  return choices.filter((choice): choice is PassReview => choice.kind === 'pass');
}
