// The pairs, pungs and kongs of a rack, and what a pass does to them.
import { type Bag, bagOf, FACES, type Face, faceIndex } from '../../rules/index.ts';
import type { PassFindings, PassParts, RackGroup } from './review.ts';

export function groupsOf(rack: Bag): readonly RackGroup[] {
  return FACES.flatMap((face, index) => {
    const count = rack[index]!;
    return face !== 'joker' && count >= 2 ? [{ face, count }] : [];
  });
}

/** The groups that hold at least one of these tiles. */
export function touchedBy(groups: readonly RackGroup[], tiles: readonly Face[]): readonly RackGroup[] {
  return groups.filter(({ face }) => tiles.includes(face));
}

/** Tiles of `some` that are not in `others`, copies counted. */
export function without(some: readonly Face[], others: readonly Face[]): readonly Face[] {
  const left = [...bagOf(others)];
  return some.filter((face) => left[faceIndex(face)]!-- <= 0);
}

/** What came in the move before, what of all that came the seat had given away, and which tiles sections needed. */
interface Beside {
  readonly receivedLast: readonly Face[];
  readonly returned: readonly Face[];
  readonly sectionTiles: PassParts['sectionTiles'];
}

export function passPartsOf(
  rack: Bag,
  { receivedLast, returned, sectionTiles }: Beside,
  findings: Omit<PassFindings, 'parts'>,
): PassParts {
  const { played, best, sectionsInReach, sectionsInReachAfter, sectionsInReachAfterBest } = findings;
  const groups = groupsOf(rack);
  const broken = touchedBy(groups, played.tiles);
  const brokenByBest = touchedBy(groups, best.tiles);
  return {
    groups,
    formed: touchedBy(groups, receivedLast),
    broken,
    brokenByBest,
    groupCount: groups.length,
    groupsKept: groups.length - broken.length,
    groupsKeptByBest: groups.length - brokenByBest.length,
    sectionCount: sectionsInReach.length,
    sectionsKept: sectionsInReach.filter((id) => sectionsInReachAfter.includes(id)).length,
    sectionsKeptByBest: sectionsInReach.filter((id) => sectionsInReachAfterBest.includes(id)).length,
    sectionTiles,
    returned: without(played.tiles, without(played.tiles, returned)),
    betterToGive: without(best.tiles, played.tiles),
    betterToKeep: without(played.tiles, best.tiles),
  };
}
