// Lets four choosers finish a round, by the same decide and evolve as a table of players.
import {
  type AnswerChoice,
  type Closed,
  decide,
  evolve,
  type Random,
  type Round,
  type RoundEvent,
  SEATS,
  type Seat,
  type SeatView,
  type Step,
  seatView,
  stepOf,
  stream,
} from '../rules/index.ts';

/** A seat's answer to the open step, or null where it has none to give. */
export type Chooser = (view: SeatView, random: Random) => AnswerChoice | null;

export interface FinishedRound {
  readonly round: Closed;
  /** What happened from the round given to its close. */
  readonly events: readonly RoundEvent[];
}

/** The random numbers of the bot of one seat at one step, so that a bot asked twice answers the same. */
export function botRandom(seed: string, step: Step, seat: Seat): Random {
  return stream(seed, `bot/${step}/${seat}`);
}

/** Throws on a chooser that answers illegally or leaves the table waiting: that is a mistake in its code. */
export function finishRound(start: Round, choose: Chooser): FinishedRound {
  const events: RoundEvent[] = [];
  let round = start;
  while (round.phase !== 'closed') {
    const before = events.length;
    for (const seat of SEATS) {
      const happened = answerOf(round, seat, choose);
      events.push(...happened);
      round = happened.reduce(evolve, round);
    }
    if (events.length === before) throw new Error(`No chooser answered the phase "${round.phase}".`);
  }
  return { round, events };
}

function answerOf(round: Round, seat: Seat, choose: Chooser): readonly RoundEvent[] {
  const view = seatView(round, seat);
  const step = stepOf(view.stage);
  if (step === null || view.answer !== null) return [];
  const choice = choose(view, botRandom(round.deal.seed, step, seat));
  if (choice === null) return [];
  const decision = decide(round, { ...choice, seat, by: 'bot' });
  if (!decision.ok) throw new Error(`Seat ${seat} at ${step}: ${decision.message}`);
  return decision.events;
}
