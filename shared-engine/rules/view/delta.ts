// What has changed in one audience's view of a round since an earlier moment, and the view that it makes with that.
import type { Round } from '../exchange/round.ts';
import { facesOf } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import type { PublicStep, SeatStep } from './record.ts';
import {
  type Audience,
  type OwnAnswer,
  ownAnswer,
  type PublicStage,
  publicStage,
  publicStep,
  seatStep,
  type View,
} from './view.ts';

export type ViewNews =
  | {
      readonly audience: 'seat';
      readonly stage: PublicStage;
      /** Missing where it is as it was. */
      readonly rack?: readonly Face[];
      readonly answer: OwnAnswer;
      /** Those settled meanwhile, behind the ones that the view has. */
      readonly steps: readonly SeatStep[];
    }
  | { readonly audience: 'watcher'; readonly stage: PublicStage; readonly steps: readonly PublicStep[] };

/** For the same audience at an earlier moment; null where the round does not simply go on from there. */
export function viewNews(before: Round, now: Round, audience: Audience): ViewNews | null {
  if (!goesOn(before, now)) return null;
  const stage = publicStage(now);
  const settled = now.settled.slice(before.settled.length);
  if (audience.kind === 'watcher') return { audience: 'watcher', stage, steps: settled.map(publicStep) };
  const { seat } = audience;
  const same = before.racks[seat] === now.racks[seat];
  return {
    audience: 'seat',
    stage,
    ...(!same && { rack: facesOf(now.racks[seat]) }),
    answer: ownAnswer(now, seat),
    steps: settled.map((step) => seatStep(step, seat)),
  };
}

/** The later view; null where the news are for another audience. */
export function withViewNews(view: View, news: ViewNews): View | null {
  if (view.audience === 'watcher') {
    if (news.audience !== 'watcher') return null;
    return { ...view, stage: news.stage, steps: [...view.steps, ...news.steps] };
  }
  if (news.audience !== 'seat') return null;
  const { stage, rack = view.rack, answer, steps } = news;
  const record = { ...view.record, steps: [...view.record.steps, ...steps] };
  return { ...view, stage, rack, answer, record };
}

function goesOn(before: Round, now: Round): boolean {
  if (before.deal !== now.deal || before.own !== now.own) return false;
  return before.settled.every((step, place) => now.settled[place] === step);
}
