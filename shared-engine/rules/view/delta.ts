// The difference between two views of a round for one audience, and how it is applied.
import type { LeafProof } from '../deal/commitment.ts';
import type { Round } from '../exchange/round.ts';
import { facesOf } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import type { PublicStep, SeatStep } from './record.ts';
import {
  type Audience,
  ownLeaf,
  type PublicStage,
  publicStage,
  publicStep,
  type SeatAnswer,
  seatAnswer,
  seatStep,
  type View,
} from './view.ts';

export type ViewDelta =
  | {
      readonly audience: 'seat';
      readonly stage: PublicStage;
      /** Missing where it has not changed. */
      readonly rack?: readonly Face[];
      readonly answer: SeatAnswer;
      /** Steps resolved since; they follow the steps of the earlier view. */
      readonly steps: readonly SeatStep[];
      /** Missing where there is none. */
      readonly ownLeaf?: LeafProof;
    }
  | { readonly audience: 'spectator'; readonly stage: PublicStage; readonly steps: readonly PublicStep[] };

/** From the view at `before` to the view `now`; null where `now` does not continue the same round. */
export function viewDelta(before: Round, now: Round, audience: Audience): ViewDelta | null {
  if (!continues(before, now)) return null;
  const stage = publicStage(now);
  const added = now.resolved.slice(before.resolved.length);
  if (audience.kind === 'spectator') return { audience: 'spectator', stage, steps: added.map(publicStep) };
  const { seat } = audience;
  const same = before.racks[seat] === now.racks[seat];
  const leaf = ownLeaf(now, seat);
  return {
    audience: 'seat',
    stage,
    ...(!same && { rack: facesOf(now.racks[seat]) }),
    answer: seatAnswer(now, seat),
    steps: added.map((step) => seatStep(step, seat)),
    ...(leaf && { ownLeaf: leaf }),
  };
}

/** The later view; null where the delta is for another audience. */
export function applyViewDelta(view: View, delta: ViewDelta): View | null {
  if (view.audience === 'spectator') {
    if (delta.audience !== 'spectator') return null;
    return { ...view, stage: delta.stage, steps: [...view.steps, ...delta.steps] };
  }
  if (delta.audience !== 'seat') return null;
  const { stage, rack = view.rack, answer, steps, ownLeaf: leaf = view.ownLeaf } = delta;
  const record = { ...view.record, steps: [...view.record.steps, ...steps] };
  return { ...view, stage, rack, answer, record, ownLeaf: leaf };
}

/** Whether `now` is the same round as `before`, a few events later. */
export function continues(before: Round, now: Round): boolean {
  if (before.deal !== now.deal || before.actualSteps !== now.actualSteps) return false;
  return before.resolved.every((step, place) => now.resolved[place] === step);
}
