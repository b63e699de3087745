// Tiles that went, came back and stayed: a part of the review that no single pass tells.
import { FACES, type Face } from '../../rules/index.ts';
import type { ChoiceReview } from './review.ts';

/**
 * In rack order, faces of which a tile was held at the close that came when such a tile had been given away, be it in the
 * same exchange; whether it is the same nobody is told (rule V3). One that was given away once more is told with that pass.
 */
export function cameBack(choices: readonly ChoiceReview[]): readonly Face[] {
  const away: Face[] = [];
  const back: Face[] = [];
  for (const choice of choices) {
    if (choice.kind !== 'pass') continue;
    for (const face of choice.played.tiles) move(back, face, null);
    away.push(...choice.played.tiles);
    for (const face of choice.received) move(away, face, back);
  }
  return FACES.filter((face) => back.includes(face));
}

/** Takes one tile of the face from `from`, where there is one, and puts it `to`. */
function move(from: Face[], face: Face, to: Face[] | null): void {
  const place = from.indexOf(face);
  if (place === -1) return;
  from.splice(place, 1);
  to?.push(face);
}
