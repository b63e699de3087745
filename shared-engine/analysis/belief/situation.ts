// What one seat knew when a choice was offered, as numbers: the only door into belief, playouts and race.
import { forFour, giverTo, neighbour, type Seat, withSeat } from '../../rules/deal/seat.ts';
import type { AnswerChoice } from '../../rules/exchange/command.ts';
import type { Actor } from '../../rules/exchange/round.ts';
import { MOVES, type MoveStep, STEPS } from '../../rules/exchange/schedule.ts';
import { addTo, type Bag, bagOf, takeFrom } from '../../rules/tiles/bag.ts';
import { type Face, type Four, faceIndex } from '../../rules/tiles/face.ts';
import { ownStep, type SeatMove, type SeatRecord, type SeatStep } from '../../rules/view/record.ts';

/** A move that is over, as the seat knows it; faces by index. */
export interface PastMove {
  /** Seats to the right that tiles went, 1–3. */
  readonly toward: number;
  readonly gave: readonly number[];
  readonly received: readonly number[];
  /** Tiles each seat passed on unseen. */
  readonly blind: Four<number>;
  /** Tiles the seat itself passed on unseen. */
  readonly forwarded: number;
}

export interface Situation {
  readonly seat: Seat;
  readonly dealer: Seat;
  /** Index into `STEPS` of the step in which the choice was offered. */
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
export function choicesOf(record: SeatRecord): readonly OfferedChoice[] {
  const { seat, dealer, start, steps } = record;
  const choices: OfferedChoice[] = [];
  const past: PastMove[] = [];
  let rack = bagOf(start);
  let agreed = NONE;
  for (const [place, went] of steps.entries()) {
    const step = STEPS.indexOf(went.kind === 'move' ? went.step : STEP_OF[went.kind]);
    const situation = { seat, dealer, step, agreed, start: bagOf(start), rack, past: [...past] };
    const chosen = ownStep(record, place);
    if (chosen && (chosen.kind !== 'move' || chosen.by[seat] !== null)) choices.push({ situation, chosen });
    if (went.kind === 'ask') agreed = went.agreed;
    if (went.kind === 'move') {
      past.push(pastMove(went, seat));
      rack = addTo(takeFrom(rack, went.gave) ?? rack, went.received);
    }
  }
  return choices;
}

/** A choice as it is offered: the record of the steps that are over, and the answer given to the open one. */
export function choiceOffered(record: SeatRecord, answer: AnswerChoice, by: Actor): OfferedChoice {
  return choicesOf(recordWith(record, answer, by)).at(-1)!;
}

/** The record with the answer given to the open step as its last step: enough to judge that answer. */
export function recordWith(record: SeatRecord, answer: AnswerChoice, by: Actor): SeatRecord {
  return { ...record, steps: [...record.steps, stepOf(record.seat, answer, by)] };
}

/** The open step as if it were over; what the others did in it is not known and not used. */
function stepOf(seat: Seat, answer: AnswerChoice, by: Actor): SeatStep {
  const all = forFour(() => by);
  switch (answer.kind) {
    case 'vote':
      return { kind: 'vote', go: withSeat([true, true, true, true], seat, answer.go), by: all };
    case 'ask':
      return { kind: 'ask', asked: withSeat(NONE, seat, answer.count), agreed: NONE, by: all };
    case 'seal': {
      const { step, tiles, blind } = answer;
      const { toward } = MOVES[step];
      const ways = { to: neighbour(seat, toward), from: giverTo(seat, toward) };
      const known = { blind: withSeat(NONE, seat, blind), voided: 0, by: all };
      return { kind: 'move', step, ...known, ...ways, gave: tiles, received: [] };
    }
  }
}

const STEP_OF = { vote: 'vote', ask: 'courtesy-ask' } as const;

function pastMove({ step, gave, received, blind, voided }: SeatMove, seat: Seat): PastMove {
  const forwarded = blind[seat] === 0 ? 0 : Math.max(0, blind[seat] - voided);
  return { toward: towardOf(step), gave: indexes(gave), received: indexes(received), blind, forwarded };
}

/** Seats to the right that a move's tiles go. */
export function towardOf(step: MoveStep): number {
  return neighbour(0, MOVES[step].toward);
}

/** Who gives to this seat when tiles go so far. */
export function giverAt(seat: number, toward: number): number {
  return (seat + 4 - toward) % 4;
}

function indexes(faces: readonly Face[]): number[] {
  return faces.map(faceIndex);
}
