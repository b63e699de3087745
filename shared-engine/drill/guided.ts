// A guided deal: the choices of one seat played in order, with the drill's bots around it.
import { botRandom, chooseFor, scriptedChoice } from '../bots/index.ts';
import type { Kernel } from '../kernels/index.ts';
import {
  type AnswerChoice,
  begin,
  choiceAt,
  type DealScript,
  decide,
  evolve,
  openRound,
  type PreparedDeal,
  type Resolved,
  type Round,
  type RoundEvent,
  type RoundRejection,
  reject,
  SEATS,
  type Seat,
  seatStep,
  seatView,
  stepOf,
  type Terms,
} from '../rules/index.ts';
import type { Drill } from './format.ts';
import { botsAround } from './prepare.ts';

export interface GuidedRound {
  readonly ok: true;
  /** Waits for the next choice of the seat, or is closed. */
  readonly round: Round;
  /** From the deal on, as a log that replays to the round. */
  readonly events: readonly RoundEvent[];
}

/** What a guided deal starts from, and which bots sit around its seat. */
export interface GuidedStart {
  readonly deal: PreparedDeal;
  readonly seat: Seat;
  readonly bots: Drill['bots'];
  readonly terms: Terms;
  /** Missing where the bots choose by themselves. */
  readonly script?: DealScript;
}

/**
 * Plays the choices of the seat in order; the bots answer whenever they can. Equal choices give equal rounds, so all
 * tables of a class can continue from the teacher's choice, and players who chose alike share a review.
 */
export function playGuidedDeal(
  { deal, seat, bots, terms, script }: GuidedStart,
  choices: readonly AnswerChoice[],
  kernel: Kernel,
): GuidedRound | RoundRejection {
  const dealt = { ...openRound(deal, terms), ...(script && { script }) };
  const styles = botsAround(seat, bots);
  const events: RoundEvent[] = [dealt];
  let round = begin(dealt);

  function apply(more: readonly RoundEvent[]): void {
    events.push(...more);
    round = more.reduce(evolve, round);
  }

  function botAnswers(place: Seat): boolean {
    const style = styles[place];
    const view = seatView(round, place);
    const step = stepOf(view.stage);
    if (style === null || step === null) return false;
    const own = chooseFor(style, view, kernel, botRandom(deal.seed, step, place));
    const choice = own && script ? scriptedChoice(script, view, own) : own;
    const decision = choice && decide(round, { ...choice, seat: place, by: 'bot' });
    if (!decision?.ok) return false;
    apply(decision.events);
    return true;
  }

  function letBotsAnswer(): void {
    for (let answered = true; answered; ) answered = SEATS.some(botAnswers);
  }

  letBotsAnswer();
  for (const choice of choices) {
    const decision = decide(round, { ...choice, seat, by: 'player' });
    if (!decision.ok) return decision;
    apply(decision.events);
    letBotsAnswer();
  }
  return { ok: true, round, events };
}

export type GuidedStep =
  | {
      readonly ok: true;
      readonly outcome: Resolved;
      /** Whether the round is closed with it. */
      readonly closed: boolean;
    }
  | RoundRejection;

/**
 * The outcome of the open step with this choice of the seat. `at` is its outcome at any table of the class: the bots
 * have chosen there already, and they choose alike at every table. `choice` is null where the seat has nothing to give.
 */
export function advanceGuidedDeal(
  round: Round,
  at: Resolved,
  seat: Seat,
  choice: AnswerChoice | null,
): GuidedStep {
  let next = round;
  let outcome: Resolved | null = null;
  let closed = false;
  for (const place of SEATS) {
    const answer = place === seat ? choice : choiceAt(seatStep(at, place), place);
    if (answer === null) continue;
    const decision = decide(next, { ...answer, seat: place, by: place === seat ? 'player' : 'bot' });
    if (!decision.ok) return decision;
    next = decision.events.reduce(evolve, next);
    for (const event of decision.events) {
      if (event.kind === 'resolved') outcome = event.outcome;
      if (event.kind === 'closed') closed = true;
    }
  }
  return outcome ? { ok: true, outcome, closed } : reject('wrong-step');
}
