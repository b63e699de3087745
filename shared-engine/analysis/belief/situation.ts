// What one seat knew when a choice was offered, as numbers: all that belief, rollouts and comparison may use.
import {
  type Actor,
  type AnswerChoice,
  actualStep,
  addTo,
  type Bag,
  bagOf,
  choiceIn,
  type ExchangeTerms,
  type Face,
  type Four,
  faceIndex,
  forFour,
  giverTo,
  MOVES,
  neighbor,
  type Seat,
  type SeatMove,
  type SeatRecord,
  type SeatStep,
  type SeatView,
  STEPS,
  stepOfOutcome,
  takeFrom,
  withSeat,
} from '../../rules/index.ts';
import { TOWARD } from '../rollouts/batch.ts';

/** A move that is over, as the seat knows it; faces by index. */
export interface PastMove {
  /** Seats to the right that tiles went, 1–3. */
  readonly toward: number;
  readonly gave: readonly number[];
  readonly received: readonly number[];
  /** Tiles each seat passed blind. */
  readonly blind: Four<number>;
  /** Tiles the seat itself passed blind. */
  readonly forwarded: number;
  /** Tiles that each seat gave in a courtesy pass; missing where all passed as many. */
  readonly agreed?: Four<number>;
}

export interface Situation {
  readonly seat: Seat;
  readonly dealer: Seat;
  readonly terms: ExchangeTerms;
  /** Index into `STEPS` of the step in which the choice was offered; one more than the last at the close. */
  readonly step: number;
  /** Tiles agreed on, by seat, for a courtesy pass; 0 otherwise. */
  readonly agreed: Four<number>;
  readonly start: Bag;
  readonly rack: Bag;
  readonly past: readonly PastMove[];
}

export interface OfferedChoice {
  readonly situation: Situation;
  /** What the seat then did and what came of it. */
  readonly chosen: SeatStep;
}

const NONE: Four<number> = [0, 0, 0, 0];

/** Every choice of a record with what was known when it was offered, in the order of the round. */
export function offeredChoices(record: SeatRecord): readonly OfferedChoice[] {
  const { seat, dealer, start, steps } = record;
  const { secondCharleston, blindPasses, courtesy } = record.terms;
  const terms = { secondCharleston, blindPasses, courtesy };
  const choices: OfferedChoice[] = [];
  const past: PastMove[] = [];
  let rack = bagOf(start);
  let agreed = NONE;
  for (const [place, went] of steps.entries()) {
    const step = STEPS.indexOf(stepOfOutcome(went));
    const situation = { seat, dealer, terms, step, agreed, start: bagOf(start), rack, past: [...past] };
    const chosen = actualStep(record, place);
    if (chosen && (chosen.kind !== 'move' || chosen.by[seat] !== null)) choices.push({ situation, chosen });
    if (went.kind === 'ask') agreed = went.agreed;
    if (went.kind === 'move') past.push(pastMove(went, seat, agreed));
    rack = rackAfter(rack, went);
  }
  return choices;
}

/** What the seat knew when the round was closed: nothing is to be chosen any more. */
export function closingSituation(record: SeatRecord): Situation {
  const { seat, dealer, start, steps } = record;
  const { secondCharleston, blindPasses, courtesy } = record.terms;
  let agreed = NONE;
  const past = steps.flatMap((went) => {
    if (went.kind === 'ask') agreed = went.agreed;
    return went.kind === 'move' ? [pastMove(went, seat, agreed)] : [];
  });
  return {
    seat,
    dealer,
    terms: { secondCharleston, blindPasses, courtesy },
    step: STEPS.length,
    agreed: NONE,
    start: bagOf(start),
    rack: finalRack(record),
    past,
  };
}

/** What the seat holds when the last step of the record is over. */
export function finalRack({ start, steps }: SeatRecord): Bag {
  return steps.reduce(rackAfter, bagOf(start));
}

function rackAfter(rack: Bag, step: SeatStep): Bag {
  return step.kind === 'move' ? addTo(takeFrom(rack, step.gave) ?? rack, step.received) : rack;
}

/** A choice as it is offered: the record of the steps that are over, and the answer given to the open step. */
export function offeredChoice(record: SeatRecord, answer: AnswerChoice, by: Actor): OfferedChoice {
  return offeredChoices(recordWithAnswer(record, answer, by)).at(-1)!;
}

/** The steps that are over and, where the seat has answered the open one, its answer as the last step. */
export function recordSoFar(view: SeatView): SeatRecord {
  const answer = choiceIn(view);
  // An analysis does not depend on who chose.
  return answer ? recordWithAnswer(view.record, answer, 'player') : view.record;
}

/** The record with the answer given to the open step as its last step: enough to analyze that answer. */
export function recordWithAnswer(record: SeatRecord, answer: AnswerChoice, by: Actor): SeatRecord {
  return { ...record, steps: [...record.steps, answeredStep(record.seat, answer, by)] };
}

/** The open step as if it were over; what the others did in it is not known and not used. */
function answeredStep(seat: Seat, answer: AnswerChoice, by: Actor): SeatStep {
  const all = forFour(() => by);
  switch (answer.kind) {
    case 'vote':
      return { kind: 'vote', go: withSeat([true, true, true, true], seat, answer.go), by: all };
    case 'ask':
      return { kind: 'ask', asked: withSeat(NONE, seat, answer.count), agreed: NONE, by: all };
    case 'pass': {
      const { step, tiles, blind } = answer;
      const { toward } = MOVES[step];
      const seats = { to: neighbor(seat, toward), from: giverTo(seat, toward) };
      const known = { blind: withSeat(NONE, seat, blind), voided: 0, by: all };
      return { kind: 'move', step, ...known, ...seats, gave: tiles, received: [] };
    }
  }
}

function pastMove(
  { step, gave, received, blind, voided }: SeatMove,
  seat: Seat,
  agreed: Four<number>,
): PastMove {
  const forwarded = blind[seat] === 0 ? 0 : Math.max(0, blind[seat] - voided);
  const toward = TOWARD[STEPS.indexOf(step)]!;
  const moved = { toward, gave: indexes(gave), received: indexes(received), blind, forwarded };
  return step === 'courtesy-pass' ? { ...moved, agreed } : moved;
}

/** Who gives to this seat when tiles go so far. */
export function giverAt(seat: number, toward: number): number {
  return (seat + 4 - toward) % 4;
}

function indexes(faces: readonly Face[]): number[] {
  return faces.map(faceIndex);
}
