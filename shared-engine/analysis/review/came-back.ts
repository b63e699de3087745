// Tiles that went, came back and stayed: a part of the review that no single pass tells.
import { FACES, type Face } from '../../rules/index.ts';
import type { ChoiceReview } from './review.ts';

/**
 * In rack order, faces of which a tile was held at the close that came when such a tile had been given away, be it in the
 * same exchange; whether it is the same nobody is told (rule V3). One that was given away once more is told with that pass.
 */
export function cameBack(choices: readonly ChoiceReview[]): readonly Face[] {
  const away = new Set<Face>();
  const back: Face[] = [];
  for (const choice of choices) {
    if (choice.kind !== 'pass') continue;
    for (const face of choice.played.tiles) {
      away.add(face);
      const place = back.indexOf(face);
      if (place !== -1) back.splice(place, 1);
    }
    back.push(...choice.received.filter((face) => away.has(face)));
  }
  return FACES.filter((face) => back.includes(face));
}
