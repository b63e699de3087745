// The deltas of one change of a round as JSON text: what everybody may know is written once, each seat's own part added.
import type { Seat } from '../deal/seat.ts';
import type { Resolved, Round } from '../exchange/round.ts';
import { facesOf } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import { continues } from './delta.ts';
import {
  type Audience,
  ownLeaf,
  publicStage,
  publicStep,
  type SeatAnswer,
  seatAnswer,
  seatStep,
} from './view.ts';

export interface ViewDeltaText {
  /** What `JSON.stringify` makes of the `viewDelta` for the same audience. */
  readonly text: string;
  /** What stands in it that this seat alone may know; null for a spectator. */
  readonly own: { readonly tiles: readonly (readonly Face[])[]; readonly answer: SeatAnswer } | null;
}

/** Of every audience that had the view at `before`; null where `now` does not continue the same round. */
export function viewDeltaTexts(before: Round, now: Round): ((audience: Audience) => ViewDeltaText) | null {
  if (!continues(before, now)) return null;
  const stage = JSON.stringify(publicStage(now));
  const added = now.resolved.slice(before.resolved.length);
  const publicSteps = added.map((step) => JSON.stringify(publicStep(step)));
  const watched = `{"audience":"spectator","stage":${stage},"steps":[${publicSteps.join()}]}`;
  return (audience) => {
    if (audience.kind === 'spectator') return { text: watched, own: null };
    const { seat } = audience;
    const rack = before.racks[seat] === now.racks[seat] ? null : facesOf(now.racks[seat]);
    const answer = seatAnswer(now, seat);
    const leaf = ownLeaf(now, seat);
    const tiles = added.flatMap((step) =>
      step.kind === 'move' ? [step.gave[seat], step.received[seat]] : [],
    );
    const parts = [
      `{"audience":"seat","stage":${stage}`,
      rack && `"rack":${JSON.stringify(rack)}`,
      `"answer":${JSON.stringify(answer)}`,
      `"steps":[${added.map((step, n) => seatStepText(publicSteps[n]!, step, seat)).join()}]`,
      leaf && `"ownLeaf":${JSON.stringify(leaf)}`,
    ];
    const text = `${parts.filter((part) => part !== null).join()}}`;
    return { text, own: { tiles: rack === null ? tiles : [rack, ...tiles], answer } };
  };
}

/** A move is what it is for everybody with the seat's own part behind it; the other steps are all public. */
function seatStepText(shared: string, step: Resolved, seat: Seat): string {
  const known = seatStep(step, seat);
  if (known.kind !== 'move') return shared;
  const { to, from, gave, received } = known;
  return `${shared.slice(0, -1)},${JSON.stringify({ to, from, gave, received }).slice(1)}`;
}
