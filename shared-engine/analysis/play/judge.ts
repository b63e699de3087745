// How promising a hand is in the play, and what each of its tiles adds to that, in the eyes of one seat.
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { createDistances } from './distances.ts';
import type { PlayCard, Want } from './play-card.ts';
import type { Sight } from './player-view.ts';

/** What a seat sees when it weighs a hand; the hand may be one it considers rather than holds. */
export type Prospect = Pick<Sight, 'hand' | 'live' | 'wallLeft'>;

/** A natural copy counts this often for a group: it may be called as well as drawn. */
const CALLED = 2;
/** What one unseen joker adds to the copies that could fill a place in a group. */
const JOKER_SHARE = 0.25;
/**
 * With so many live copies and the whole wall to come, a missing tile is as likely to come as not. Seats that use
 * 20 won more often than seats that use 7 at the same tables, and those more often than seats that use 4.
 */
const EVEN_CHANCE = 20;
/** Tiles in the wall before the first draw, and what is added to it so that a hand keeps some promise to the end. */
const WALL = 99;
const BEYOND_WALL = 10;

export interface Judge {
  /** Tiles to go to the nearest target the hand can still become, 0–14. */
  toGo(hand: Sight['hand']): number;
  /**
   * The summed chances of the nearest targets, each the product of the chances that its missing tiles come.
   * A measure for comparing hands of one seat at one moment; no unit.
   */
  promise(prospect: Prospect): number;
  /** How much of `promise` goes with one tile of each face; length 36, valid until the next call. */
  shares(prospect: Prospect): Float64Array;
}

export function createJudge(play: PlayCard): Judge {
  const distances = createDistances(play);
  const shares = new Float64Array(FACE_COUNT);
  /** Chances of the group places of one target that natural tiles leave open, best first. */
  const places = new Float64Array(16);

  function weigh(prospect: Prospect, share: boolean): number {
    const { hand, live, wallLeft } = prospect;
    const { concealed, exposed } = hand;
    const jokers = concealed[JOKER_INDEX]!;
    const against = (EVEN_CHANCE * (WALL + BEYOND_WALL)) / (wallLeft + BEYOND_WALL);
    const helping = live[JOKER_INDEX]! * JOKER_SHARE;
    const single = (face: number, already: number): number => {
      const copies = live[face]! - already;
      return copies <= 0 ? 0 : copies / (copies + against);
    };
    const grouped = (face: number, already: number): number => {
      const copies = Math.max(0, live[face]! - already) * CALLED + helping;
      return copies / (copies + against);
    };
    const isOpen = (face: number): boolean => {
      for (const group of exposed) if (group.face === face) return true;
      return false;
    };

    distances.gather(hand);
    let total = 0;
    for (let i = 0; i < distances.count(); i++) {
      const wants = play.wants[distances.lanes[i]!]!;
      let chance = 1;
      let open = 0;
      for (const want of wants) {
        const have = concealed[want.face]!;
        for (let missing = have; missing < want.single; missing++)
          chance *= single(want.face, missing - have);
        if (want.group === 0 || isOpen(want.face)) continue;
        const inGroup = Math.max(0, have - want.single);
        const before = Math.max(0, want.single - have);
        for (let missing = inGroup; missing < want.group; missing++) {
          const place = grouped(want.face, before + missing - inGroup);
          let at = open++;
          for (; at > 0 && places[at - 1]! < place; at--) places[at] = places[at - 1]!;
          places[at] = place;
        }
      }
      // Jokers go where a natural tile is least likely to come.
      const left = Math.max(0, open - jokers);
      for (let place = 0; place < left; place++) chance *= places[place]!;
      total += chance;
      if (!share) continue;
      if (jokers > 0 && open >= jokers) shares[JOKER_INDEX]! += chance * (1 - places[left]!);
      for (const want of wants) addShare(want, chance);
    }
    return total;

    function addShare({ face, single: pair, group }: Want, chance: number): void {
      const have = concealed[face]!;
      if (have === 0) return;
      if (have <= pair) shares[face]! += chance * (1 - single(face, pair - have));
      else if (have <= pair + group && !isOpen(face)) {
        shares[face]! += chance * (1 - grouped(face, pair + group - have));
      }
    }
  }

  return {
    toGo: distances.toGo,
    promise: (prospect) => weigh(prospect, false),
    shares(prospect) {
      shares.fill(0);
      weigh(prospect, true);
      return shares;
    },
  };
}
