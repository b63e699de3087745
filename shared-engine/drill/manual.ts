// Racks set by hand: whether one set of 152 tiles can hold them, and the deal that chance completes.

import { tileName } from '../analysis/review/words/tiles.ts';
import { dealtSize, type PreparedDeal } from '../rules/deal/deal.ts';
import { shuffled, stream } from '../rules/deal/random.ts';
import { forFour, SEATS, type Seat } from '../rules/deal/seat.ts';
import { bagOf, FULL_SET, facesOf, sizeOf, sortFaces, takeFrom } from '../rules/tiles/bag.ts';
import { copiesOf, FACES, type Face, type Four } from '../rules/tiles/face.ts';
import { type DrillProblem, drillProblem } from './problem.ts';

type Racks = Four<readonly Face[]>;

/** Every reason why these racks, whole or in part, cannot be dealt; `deal` names the deal in the sentences. */
export function rackProblems(racks: Racks, dealer: Seat, deal: string): DrillProblem[] {
  const all = racks.flat();
  const inSet = sizeOf(FULL_SET);
  if (all.length > inSet) {
    const words = `its racks hold ${all.length} tiles and the set has ${inSet}; take ${all.length - inSet} away.`;
    return [drillProblem('more-than-the-set', deal, words)];
  }
  return [...copyProblems(all, deal), ...sizeProblems(racks, dealer, deal)];
}

function copyProblems(all: readonly Face[], deal: string): DrillProblem[] {
  return bagOf(all).flatMap((count, index) => {
    const face = FACES[index]!;
    const copies = copiesOf(face);
    if (count <= copies) return [];
    const words = `it sets the tile ${tileName(face)} ${count} times and the set has ${copies} of it; take ${count - copies} away.`;
    return [drillProblem(face === 'joker' ? 'too-many-jokers' : 'too-many-copies', deal, words)];
  });
}

function sizeProblems(racks: Racks, dealer: Seat, deal: string): DrillProblem[] {
  return SEATS.flatMap((seat) => {
    const held = racks[seat].length;
    const size = dealtSize(seat, dealer);
    if (held <= size) return [];
    const role = seat === dealer ? 'is the dealer and is dealt' : 'is not the dealer and is dealt';
    const words = `seat ${seat} has ${held} tiles; it ${role} ${size}, so take ${held - size} away.`;
    return [drillProblem('rack-too-large', deal, words)];
  });
}

/**
 * Racks without problems, filled up from a shuffle of the tiles that are left: every deal that holds the tiles
 * set is equally likely. `later` is the seed of what comes after the deal.
 */
export function completed(racks: Racks, dealer: Seat, seed: string, later: string): PreparedDeal {
  const rest = shuffled(facesOf(takeFrom(FULL_SET, racks.flat())!), stream(seed, 'the rest of the racks'));
  const prepared = forFour((seat) => {
    const missing = dealtSize(seat, dealer) - racks[seat].length;
    return sortFaces([...racks[seat], ...rest.splice(0, missing)]);
  });
  return { seed: later, dealer, prepared };
}
