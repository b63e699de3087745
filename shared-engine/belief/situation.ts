// What one seat knew when a choice was offered, as numbers: the only door into belief, playouts and race.
import { neighbour, type Seat } from '../deal/seat.ts';
import { MOVES, type MoveStep, STEPS } from '../exchange/schedule.ts';
import { addTo, type Bag, bagOf, takeFrom } from '../tiles/bag.ts';
import { type Face, type Four, faceIndex } from '../tiles/face.ts';
import type { SeatMove, SeatRecord, SeatStep } from '../view/record.ts';

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
export function choicesOf({ seat, dealer, start, steps }: SeatRecord): readonly OfferedChoice[] {
  const choices: OfferedChoice[] = [];
  const past: PastMove[] = [];
  let rack = bagOf(start);
  let agreed = NONE;
  for (const chosen of steps) {
    const step = STEPS.indexOf(chosen.kind === 'move' ? chosen.step : STEP_OF[chosen.kind]);
    const situation = { seat, dealer, step, agreed, start: bagOf(start), rack, past: [...past] };
    if (chosen.kind !== 'move' || chosen.by[seat] !== null) choices.push({ situation, chosen });
    if (chosen.kind === 'ask') agreed = chosen.agreed;
    if (chosen.kind === 'move') {
      past.push(pastMove(chosen, seat));
      rack = addTo(takeFrom(rack, chosen.gave) ?? rack, chosen.received);
    }
  }
  return choices;
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
