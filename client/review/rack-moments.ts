// The racks of an open round before each pass, worked out backward from those at the end.
import {
  bagOf,
  type Face,
  type Four,
  facesOf,
  forFour,
  type OpenedRound,
} from '../../shared-engine/index.ts';

type OpenMove = OpenedRound['moves'][number];

export interface RackMoment {
  readonly racks: Four<readonly Face[]>;
  /** What each seat passes now; null at the end. */
  readonly move: OpenMove | null;
}

/** The moment before each pass in their order, and the end. */
export function rackMoments(moves: readonly OpenMove[], atEnd: Four<readonly Face[]>): readonly RackMoment[] {
  const moments: RackMoment[] = [{ racks: atEnd, move: null }];
  for (const move of moves.toReversed()) {
    const after = moments[0]!.racks;
    const racks = forFour((seat) => [...without(after[seat], move.received[seat]), ...move.gave[seat]]);
    moments.unshift({ racks: forFour((seat) => facesOf(bagOf(racks[seat]))), move });
  }
  return moments;
}

function without(tiles: readonly Face[], gone: readonly Face[]): Face[] {
  const left = [...tiles];
  for (const face of gone) left.splice(left.indexOf(face), 1);
  return left;
}
