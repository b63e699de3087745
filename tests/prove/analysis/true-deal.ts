// What passes are worth in the deal as it really was, which no seat knows: the measure of what an analysis chooses.
import type { Alternative } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import { decisionsIn, type RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { DEAL_BYTES, RESULT_WIDTH } from '../../../shared-engine/analysis/rollouts/batch.ts';
import { SEATS, type Seat } from '../../../shared-engine/rules/deal/seat.ts';
import type { Round } from '../../../shared-engine/rules/exchange/round.ts';
import { STEPS } from '../../../shared-engine/rules/exchange/schedule.ts';
import { FACE_COUNT, faceIndex } from '../../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../../shared-engine/rules/view/record.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { analyst } from './choices.ts';

/** How often the rest of each exchange is played out, each time with other noise. */
const ENDINGS = 6;

/** One pass of the seat before the courtesy; each has its turn as `nth` goes up. */
export function passOf(round: Round, seat: Seat, nth: number): RecordedDecision {
  const passes = decisionsIn(seatView(round, seat).record).filter(
    ({ subject, offered }) => subject === 'tiles' && offered.situation.step < STEPS.indexOf('courtesy-ask'),
  );
  return passes[nth % passes.length]!;
}

/** The seat's win probability at the close of the true deal after each of these passes; all else is the same. */
export function worthInTrueDeal(
  round: Round,
  { offered }: RecordedDecision,
  passes: readonly Alternative[],
  deal: number,
): readonly number[] {
  const { situation } = offered;
  const { seat, dealer, step, terms, agreed } = situation;
  const truth = racksBefore(round, situation.past.length);
  const actions = Int8Array.from(passes.flatMap(({ action }) => [...action]));
  const results = analyst.rollouts.run({
    seed: 0x70_0d,
    seat,
    dealer,
    step,
    terms,
    agreed,
    end: 'close',
    neighbors: 'alike',
    count: ENDINGS,
    alternatives: passes.length,
    keys: Uint32Array.from({ length: ENDINGS }, (_, ending) => (deal * 4 + seat) * ENDINGS + ending),
    deals: Uint8Array.from({ length: ENDINGS * truth.length }, (_, i) => truth[i % truth.length]!),
    actions: Int8Array.from({ length: ENDINGS * actions.length }, (_, i) => actions[i % actions.length]!),
  });
  return passes.map((_, nth) => {
    let sum = 0;
    for (let e = 0; e < ENDINGS; e++) sum += results[(e * passes.length + nth) * RESULT_WIDTH + seat]!;
    return sum / ENDINGS;
  });
}

/** The four racks as they were after so many moves. */
function racksBefore(round: Round, moves: number): Uint8Array {
  const racks = new Uint8Array(DEAL_BYTES);
  for (const seat of SEATS) addRack(racks, seat, seatView(round, seat).record, moves);
  return racks;
}

function addRack(racks: Uint8Array, seat: Seat, { start, steps }: SeatRecord, moves: number): void {
  const at = (face: SeatRecord['start'][number]): number => seat * FACE_COUNT + faceIndex(face);
  for (const face of start) racks[at(face)]!++;
  for (const move of steps.filter((step) => step.kind === 'move').slice(0, moves)) {
    for (const face of move.gave) racks[at(face)]!--;
    for (const face of move.received) racks[at(face)]!++;
  }
}
