// What has changed in one audience's view of a round since an earlier moment, and the view that it makes with that.
import type { Round } from '../exchange/round.ts';
import { facesOf } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import type { PublicStep, SeatStep } from './record.ts';
import {
  type Audience,
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
      /** Missing where it is as it was. */
      readonly rack?: readonly Face[];
      readonly answer: SeatAnswer;
      /** Those settled meanwhile, behind the ones that the view has. */
      readonly steps: readonly SeatStep[];
    }
  | { readonly audience: 'spectator'; readonly stage: PublicStage; readonly steps: readonly PublicStep[] };

/** For the same audience at an earlier moment; null where the round does not simply go on from there. */
export function viewDelta(before: Round, now: Round, audience: Audience): ViewDelta | null {
  if (!continues(before, now)) return null;
  const stage = publicStage(now);
  const added = now.resolved.slice(before.resolved.length);
  if (audience.kind === 'spectator') return { audience: 'spectator', stage, steps: added.map(publicStep) };
  const { seat } = audience;
  const same = before.racks[seat] === now.racks[seat];
  return {
    audience: 'seat',
    stage,
    ...(!same && { rack: facesOf(now.racks[seat]) }),
    answer: seatAnswer(now, seat),
    steps: added.map((step) => seatStep(step, seat)),
  };
}

/** The later view; null where the news are for another audience. */
export function applyViewDelta(view: View, news: ViewDelta): View | null {
  if (view.audience === 'spectator') {
    if (news.audience !== 'spectator') return null;
    return { ...view, stage: news.stage, steps: [...view.steps, ...news.steps] };
  }
  if (news.audience !== 'seat') return null;
  const { stage, rack = view.rack, answer, steps } = news;
  const record = { ...view.record, steps: [...view.record.steps, ...steps] };
  return { ...view, stage, rack, answer, record };
}

function continues(before: Round, now: Round): boolean {
  if (before.deal !== now.deal || before.actualSteps !== now.actualSteps) return false;
  return before.resolved.every((step, place) => now.resolved[place] === step);
}
