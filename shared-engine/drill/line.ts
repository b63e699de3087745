// One line of play through a deal of a drill: the choices of its seat, with the drill's bots around it.

import { chooseFor } from '../bots/choose.ts';
import { botStream, openStep } from '../bots/play-out.ts';
import type { PreparedDeal } from '../deal/deal.ts';
import { SEATS, type Seat } from '../deal/seat.ts';
import type { AnswerChoice } from '../exchange/command.ts';
import { decide, openRound } from '../exchange/decide.ts';
import type { RoundEvent } from '../exchange/event.ts';
import { begin, evolve } from '../exchange/evolve.ts';
import type { RoundRefusal } from '../exchange/refusal.ts';
import type { Round, Terms } from '../exchange/round.ts';
import type { Kernel } from '../rack/kernel.ts';
import { seatView } from '../view/view.ts';
import type { Drill } from './format.ts';
import { botsAround } from './prepare.ts';

export interface Line {
  readonly ok: true;
  /** Waits for the next choice of the seat, or is closed. */
  readonly round: Round;
  /** From the deal on, as a log that replays to the round. */
  readonly events: readonly RoundEvent[];
}

/** Where a line of play starts from and who sits around its seat. */
export interface LineStart {
  readonly deal: PreparedDeal;
  readonly seat: Seat;
  readonly bots: Drill['bots'];
  readonly terms: Terms;
}

/**
 * Plays the choices of the seat in their order; the bots answer whenever they can. Equal choices give equal rounds,
 * so a class can go on from the line its teacher chose, and pupils who chose alike share a review.
 */
export function playLine(
  { deal, seat, bots, terms }: LineStart,
  choices: readonly AnswerChoice[],
  kernel: Kernel,
): Line | RoundRefusal {
  const dealt = openRound(deal, terms);
  const styles = botsAround(seat, bots);
  const events: RoundEvent[] = [dealt];
  let round = begin(dealt);

  function happen(more: readonly RoundEvent[]): void {
    events.push(...more);
    round = more.reduce(evolve, round);
  }

  function botAnswers(place: Seat): boolean {
    const style = styles[place];
    const view = seatView(round, place);
    const step = openStep(view.stage);
    if (style === null || step === null) return false;
    const choice = chooseFor(style, view, kernel, botStream(deal.seed, step, place));
    const decision = choice && decide(round, { ...choice, seat: place, by: 'bot' });
    if (!decision?.ok) return false;
    happen(decision.events);
    return true;
  }

  function letBotsAnswer(): void {
    for (let answered = true; answered; ) answered = SEATS.some(botAnswers);
  }

  letBotsAnswer();
  for (const choice of choices) {
    const decision = decide(round, { ...choice, seat, by: 'owner' });
    if (!decision.ok) return decision;
    happen(decision.events);
    letBotsAnswer();
  }
  return { ok: true, round, events };
}
