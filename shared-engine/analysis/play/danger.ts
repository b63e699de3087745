// How likely a discard is the tile that another seat waits for, as far as its exposed groups show what it builds.
import { FACE_COUNT, SEATS } from '../../rules/index.ts';
import type { ExposedGroup } from './play.ts';
import { maskAt, type PlayCard } from './play-card.ts';
import type { PlayerView } from './player-view.ts';

/** So many exposed groups show that a seat is close: a hand has two to five groups, and the rest is soon found. */
const CLOSE_GROUPS = 2;

export interface Danger {
  /**
   * For each face, the largest share of the hands still possible for another seat that is close which want a tile of
   * it; null where nobody is close. Valid until the next call.
   */
  of(view: Pick<PlayerView, 'seat' | 'exposed'>): Float64Array | null;
}

/** Of a race: nobody looks at what the others lay open. */
export const NO_DANGER: Danger = { of: () => null };

export function createDanger(play: PlayCard): Danger {
  const wanted = new WeakMap<readonly ExposedGroup[], Float64Array>();
  const most = new Float64Array(FACE_COUNT);

  function wantedWith(exposed: readonly ExposedGroup[]): Float64Array {
    const known = wanted.get(exposed);
    if (known !== undefined) return known;
    const shares = wantedShares(play, exposed);
    wanted.set(exposed, shares);
    return shares;
  }

  return {
    of({ seat, exposed }) {
      let isClose = false;
      most.fill(0);
      for (const other of SEATS) {
        if (other === seat || exposed[other].length < CLOSE_GROUPS) continue;
        isClose = true;
        const shares = wantedWith(exposed[other]);
        for (let face = 0; face < FACE_COUNT; face++) most[face] = Math.max(most[face]!, shares[face]!);
      }
      return isClose ? most : null;
    },
  };
}

/** The share of the hands that these groups leave possible which want a tile of each face besides them. */
function wantedShares(play: PlayCard, exposed: readonly ExposedGroup[]): Float64Array {
  const shares = new Float64Array(FACE_COUNT);
  let possible = 0;
  for (const [lane, wants] of play.wants.entries()) {
    if (!exposed.every(({ face, size }) => allows(play, lane, maskAt(face, size)))) continue;
    possible++;
    for (const { face, single, group } of wants) {
      if (single > 0 || (group > 0 && !exposed.some((open) => open.face === face))) shares[face]!++;
    }
  }
  if (possible > 0) for (let face = 0; face < FACE_COUNT; face++) shares[face]! /= possible;
  return shares;
}

function allows({ masks }: PlayCard, lane: number, group: number): boolean {
  const mask = masks.get(group);
  return mask !== undefined && ((mask[lane >> 2]! >>> ((lane & 3) * 8)) & 255) !== 0;
}
