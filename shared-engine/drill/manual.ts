// Racks set by hand: whether the 152 tiles allow them, and the deal with the rest drawn at random.
import { tileName } from '../analysis/index.ts';
import {
  bagOf,
  copiesOf,
  dealtSize,
  FACES,
  type Face,
  type Four,
  FULL_SET,
  facesOf,
  forFour,
  type PreparedDeal,
  SEATS,
  type Seat,
  shuffled,
  sizeOf,
  sortFaces,
  stream,
  takeFrom,
} from '../rules/index.ts';
import { type DealPlace, type DrillProblem, drillProblem } from './problem.ts';

type Racks = Four<readonly Face[]>;

/** Every reason why these racks, whole or in part, cannot be dealt. */
export function rackProblems(racks: Racks, dealer: Seat, deal: DealPlace): DrillProblem[] {
  const all = racks.flat();
  const inSet = sizeOf(FULL_SET);
  if (all.length > inSet) {
    const words = `its racks hold ${all.length} tiles, but there are only ${inSet}; remove ${all.length - inSet}.`;
    return [drillProblem('more-than-the-set', deal, words)];
  }
  return [...copyProblems(all, deal), ...sizeProblems(racks, dealer, deal)];
}

function copyProblems(all: readonly Face[], deal: DealPlace): DrillProblem[] {
  return bagOf(all).flatMap((count, index) => {
    const face = FACES[index]!;
    const copies = copiesOf(face);
    if (count <= copies) return [];
    const words = `it uses ${tileName(face)} ${count} times, but there are only ${copies}; remove ${count - copies}.`;
    return [drillProblem(face === 'joker' ? 'too-many-jokers' : 'too-many-copies', deal, words)];
  });
}

function sizeProblems(racks: Racks, dealer: Seat, deal: DealPlace): DrillProblem[] {
  return SEATS.flatMap((seat) => {
    const held = racks[seat].length;
    const size = dealtSize(seat, dealer);
    if (held <= size) return [];
    const role = seat === dealer ? 'the dealer' : 'a seat that is not the dealer';
    const words = `seat ${seat} has ${held} tiles, but ${role} is dealt ${size}; remove ${held - size}.`;
    return [drillProblem('rack-too-large', deal, words)];
  });
}

/**
 * Fills up racks without problems from a shuffle of the tiles left: every deal that holds the tiles set is equally
 * likely. `roundSeed` is the seed of everything after the deal.
 */
export function completeRacks(racks: Racks, dealer: Seat, seed: string, roundSeed: string): PreparedDeal {
  const rest = shuffled(facesOf(takeFrom(FULL_SET, racks.flat())!), stream(seed, 'the rest of the racks'));
  const prepared = forFour((seat) => {
    const missing = dealtSize(seat, dealer) - racks[seat].length;
    return sortFaces([...racks[seat], ...rest.splice(0, missing)]);
  });
  return { seed: roundSeed, dealer, prepared };
}
