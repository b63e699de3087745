// The deltas of one change of a round as JSON text: what everybody may know is written once, each seat's own part added.
import { giverTo, neighbor, type Seat } from '../deal/seat.ts';
import type { ResolvedMove, Round } from '../exchange/round.ts';
import { MOVES } from '../exchange/schedule.ts';
import { facesOf } from '../tiles/bag.ts';
import type { Face } from '../tiles/face.ts';
import { continues } from './delta.ts';
import { type Audience, ownLeaf, publicStage, publicStep, type SeatAnswer, seatAnswer } from './view.ts';

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
  const shared = added.map((step) => JSON.stringify(publicStep(step)));
  return (audience) => {
    if (audience.kind === 'spectator') {
      return { text: `{"audience":"spectator","stage":${stage},"steps":[${shared.join()}]}`, own: null };
    }
    const { seat } = audience;
    const tiles: (readonly Face[])[] = [];
    // Put together piece by piece: nothing is copied before the whole text is sent.
    let text = `{"audience":"seat","stage":${stage}`;
    if (before.racks[seat] !== now.racks[seat]) {
      const rack = facesOf(now.racks[seat]);
      tiles.push(rack);
      text += `,"rack":${facesText(rack)}`;
    }
    const answer = seatAnswer(now, seat);
    text += `,"answer":${JSON.stringify(answer)},"steps":[`;
    for (const [n, step] of added.entries()) {
      if (n > 0) text += ',';
      text += step.kind === 'move' ? moveText(shared[n]!, step, seat) : shared[n]!;
      if (step.kind === 'move') tiles.push(step.gave[seat], step.received[seat]);
    }
    const leaf = ownLeaf(now, seat);
    text += leaf ? `],"ownLeaf":${JSON.stringify(leaf)}}` : ']}';
    return { text, own: { tiles, answer } };
  };
}

/** What the move is for everybody, with the seat's own part behind it; the other steps are all public. */
function moveText(shared: string, { step, gave, received }: ResolvedMove, seat: Seat): string {
  const { toward } = MOVES[step];
  const places = `"to":${neighbor(seat, toward)},"from":${giverTo(seat, toward)}`;
  return `${shared.slice(0, -1)},${places},"gave":${facesText(gave[seat])},"received":${facesText(received[seat])}}`;
}

/** No name of a face has anything in it that JSON would escape. */
function facesText(faces: readonly Face[]): string {
  return faces.length === 0 ? '[]' : `["${faces.join('","')}"]`;
}
