// How much potential a holding has in the play, and what each of its tiles adds to that, as one seat can know it.
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import { createDistances } from './distances.ts';
import type { PlayCard, Want } from './play-card.ts';
import type { PlayerView } from './player-view.ts';

/** What is evaluated; the holding may be one that the seat considers rather than has. */
export type EvaluatedView = Pick<PlayerView, 'holding' | 'live' | 'wallLeft'>;

/** A natural copy counts this often for a group: it may be called as well as drawn. */
const CALLED = 2;
/** What one live joker adds to the copies that could fill a place in a group. */
const JOKER_SHARE = 0.25;
/**
 * With so many live copies and the whole wall to come, a missing tile is as likely to come as not. Seats that use
 * 20 won more often than seats that use 7 at the same tables, and those more often than seats that use 4.
 */
const EVEN_CHANCE = 20;
/** Tiles in the wall before the first draw, and what is added so that some potential is left at its end. */
const WALL = 99;
const BEYOND_WALL = 10;

export interface Evaluator {
  /** Tiles to go to the nearest hand that can still be completed, 0–14. */
  toGo(holding: PlayerView['holding']): number;
  /**
   * The summed chances of the nearest hands, each the product of the chances that its missing tiles come. For
   * comparing holdings of one seat at one moment; no unit.
   */
  potential(view: EvaluatedView): number;
  /** How much of the potential goes with one tile of each face; length 36, valid until the next call. */
  shares(view: EvaluatedView): Float64Array;
}

export function createEvaluator(play: PlayCard): Evaluator {
  const distances = createDistances(play);
  const shares = new Float64Array(FACE_COUNT);
  /** Chances of the places in groups of one hand that natural tiles leave open, best first. */
  const places = new Float64Array(16);

  function evaluate(view: EvaluatedView, withShares: boolean): number {
    const { concealed } = view.holding;
    const jokers = concealed[JOKER_INDEX]!;
    const chances = chancesFor(view);
    distances.gather(view.holding);
    let total = 0;
    for (let i = 0; i < distances.count(); i++) {
      const wants = play.wants[distances.lanes[i]!]!;
      let chance = 1;
      let open = 0;
      for (const want of wants) {
        const have = concealed[want.face]!;
        for (let missing = have; missing < want.single; missing++) {
          chance *= chances.single(want.face, missing - have);
        }
        if (want.group === 0 || chances.isExposed(want.face)) continue;
        const inGroup = Math.max(0, have - want.single);
        const before = Math.max(0, want.single - have);
        for (let missing = inGroup; missing < want.group; missing++) {
          const place = chances.grouped(want.face, before + missing - inGroup);
          let at = open++;
          for (; at > 0 && places[at - 1]! < place; at--) places[at] = places[at - 1]!;
          places[at] = place;
        }
      }
      // Jokers go where a natural tile is least likely to come.
      const left = Math.max(0, open - jokers);
      for (let place = 0; place < left; place++) chance *= places[place]!;
      total += chance;
      if (!withShares) continue;
      if (jokers > 0 && open >= jokers) shares[JOKER_INDEX]! += chance * (1 - places[left]!);
      for (const want of wants) shares[want.face]! += chance * shareOf(want, concealed[want.face]!, chances);
    }
    return total;
  }

  return {
    toGo: distances.toGo,
    potential: (view) => evaluate(view, false),
    shares(view) {
      shares.fill(0);
      evaluate(view, true);
      return shares;
    },
  };
}

interface Chances {
  /** That a tile of this face comes for a single or pair, so many copies being wanted before it. */
  single(face: number, already: number): number;
  /** The same for a group, where it may be called and jokers help. */
  grouped(face: number, already: number): number;
  isExposed(face: number): boolean;
}

function chancesFor({ holding, live, wallLeft }: EvaluatedView): Chances {
  const against = (EVEN_CHANCE * (WALL + BEYOND_WALL)) / (wallLeft + BEYOND_WALL);
  const helping = live[JOKER_INDEX]! * JOKER_SHARE;
  return {
    single(face, already) {
      const copies = live[face]! - already;
      return copies <= 0 ? 0 : copies / (copies + against);
    },
    grouped(face, already) {
      const copies = Math.max(0, live[face]! - already) * CALLED + helping;
      return copies / (copies + against);
    },
    isExposed(face) {
      for (const group of holding.exposed) if (group.face === face) return true;
      return false;
    },
  };
}

/** The share of a hand's chance that goes with one tile of a face of which so many are held. */
function shareOf({ face, single, group }: Want, have: number, chances: Chances): number {
  if (have === 0) return 0;
  if (have <= single) return 1 - chances.single(face, single - have);
  if (have > single + group || chances.isExposed(face)) return 0;
  return 1 - chances.grouped(face, single + group - have);
}
