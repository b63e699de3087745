// Every legal pass of a rack, merged by face: which physical copy goes makes no difference.
import type { Bag } from '../../rules/tiles/bag.ts';
import { FACES, type Face, JOKER_INDEX } from '../../rules/tiles/face.ts';

/** All passes of `size` tiles without a joker (rule C2), each in rack order, in a fixed order. */
export function legalPasses(rack: Bag, size: number): readonly (readonly Face[])[] {
  const passes: (readonly Face[])[] = [];
  const extend = (pass: readonly Face[], from: number): void => {
    if (pass.length === size) {
      passes.push(pass);
      return;
    }
    for (let face = from; face < JOKER_INDEX; face++) {
      const taken = pass.filter((other) => other === FACES[face]).length;
      if (taken < rack[face]!) extend([...pass, FACES[face]!], face);
    }
  };
  extend([], 0);
  return passes;
}
