// A round as it may be for all that one seat knows: its own part stays, and the hidden tiles are drawn anew (rule G1).
import type { ChoiceModel } from '../../policy/index.ts';
import {
  addTo,
  bagOf,
  dealtSize,
  FACE_COUNT,
  FACES,
  type Face,
  FULL_SET,
  facesOf,
  forFour,
  type PreparedDeal,
  type Resolved,
  SEATS,
  type Seat,
  type SeatView,
  stream,
  takeFrom,
} from '../../rules/index.ts';
import { DEAL_BYTES } from '../rollouts/batch.ts';
import { holderOf, type TileHistory } from './history.ts';
import { createParticleFilter } from './particle-filter.ts';
import { closingSituation } from './situation.ts';

export interface PossibleRound {
  readonly deal: PreparedDeal;
  /** Of the steps that are over, with what the others may have passed. */
  readonly outcomes: readonly Resolved[];
}

/** Batches in which a way is looked for; nearly always the first of the first is one. */
const BATCHES = 24;

/** Sampling knows seeds of 31 bits, counted from 0. */
const SEEDS = 0x8000_0000;

/**
 * `model` says how the others pass. The same view and seed give the same round; null where no way was found that leads to
 * what the seat has seen.
 */
export function possibleRound(model: ChoiceModel, view: SeatView, seed: string): PossibleRound | null {
  const filter = createParticleFilter(model);
  const situation = closingSituation(view.record);
  const drawnFrom = stream(seed, 'possible round').below(SEEDS);
  for (let first = 0; first < BATCHES; first++) {
    const found: PossibleRound[] = [];
    filter.sample(situation, drawnFrom, { first, batches: 1 }, (histories) => {
      for (const history of histories) {
        const round = { deal: dealOf(history, view, seed), outcomes: outcomesOf(history, view) };
        if (leadsTo(round, view)) found.push(round);
      }
    });
    if (found[0]) return found[0];
  }
  return null;
}

function dealOf({ racks }: TileHistory, { record }: SeatView, seed: string): PreparedDeal {
  const prepared = forFour((seat) => (seat === record.seat ? record.start : facesAt(racks, 0, seat)));
  return { seed, dealer: record.dealer, prepared };
}

function outcomesOf(history: TileHistory, { record }: SeatView): readonly Resolved[] {
  let move = -1;
  return record.steps.map((over): Resolved => {
    if (over.kind !== 'move') return over;
    move++;
    const { kind, step, blind, voided, by } = over;
    return {
      kind,
      step,
      blind,
      voided,
      by,
      gave: forFour((seat) => (seat === record.seat ? over.gave : facesAt(history.passes, move, seat))),
      // Which tiles went past a seat that did not look is known to nobody, and nothing asks.
      forwarded: forFour(() => []),
      received: forFour((seat) => (seat === record.seat ? over.received : cameTo(history, move, seat))),
    };
  });
}

function facesAt(counts: Uint8Array, move: number, seat: Seat): readonly Face[] {
  const at = move * DEAL_BYTES + seat * FACE_COUNT;
  return facesOf([...counts.subarray(at, at + FACE_COUNT)]);
}

function cameTo(history: TileHistory, move: number, seat: Seat): readonly Face[] {
  const came: Face[] = [];
  for (let tile = 0; tile < history.tiles; tile++) {
    if (holderOf(history, tile, move) === seat || holderOf(history, tile, move + 1) !== seat) continue;
    came.push(FACES[history.face[tile]!]!);
  }
  return facesOf(bagOf(came));
}

/** Whether one set was dealt, everybody passed what they held and no joker, and the seat holds what it holds. */
function leadsTo({ deal, outcomes }: PossibleRound, { rack, record }: SeatView): boolean {
  const { prepared, dealer } = deal;
  if (takeFrom(FULL_SET, prepared.flat()) === null) return false;
  if (SEATS.some((seat) => prepared[seat].length !== dealtSize(seat, dealer))) return false;
  const racks = SEATS.map((seat) => bagOf(prepared[seat]));
  for (const outcome of outcomes) {
    if (outcome.kind !== 'move') continue;
    const { gave, received } = outcome;
    if (namesOf(gave.flat()) !== namesOf(received.flat()) || gave.flat().includes('joker')) return false;
    for (const seat of SEATS) {
      const rest = takeFrom(racks[seat]!, gave[seat]);
      if (rest === null || gave[seat].length !== received[seat].length) return false;
      racks[seat] = addTo(rest, received[seat]);
    }
  }
  return namesOf(facesOf(racks[record.seat]!)) === namesOf(rack);
}

function namesOf(faces: readonly Face[]): string {
  return facesOf(bagOf(faces)).join();
}
