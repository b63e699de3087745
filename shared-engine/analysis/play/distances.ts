// How far a hand with open groups is from each target, kept up to date by the rows that differ.
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { inEachByte, largerWord, largestByte, matchedWord, reaches } from './lane-words.ts';
import type { ExposedGroup, Hand } from './play.ts';
import type { PlayCard } from './play-card.ts';
import { createRunningSums } from './running-sums.ts';

const NO_GROUPS: readonly ExposedGroup[] = [];

/** How many tiles further than the nearest a target may be and still count. */
const SLACK = 2;
/** The slack shrinks where it would let in more targets than this. */
const MANY = 64;

export interface Distances {
  /** Tiles to go to the nearest target the hand can still become, 0–14. */
  toGo(hand: Hand): number;
  /** Writes the lanes of the targets nearest to the hand to the first `count()` places of `lanes`. */
  gather(hand: Hand): void;
  readonly lanes: Int32Array;
  count(): number;
}

/**
 * Laid-open tiles are matched in every target that is still possible, like jokers; natural tiles of an open face
 * serve singles and pairs alone. A target that does not want exactly the open groups, or may not be exposed, is
 * masked out.
 */
export function createDistances(play: PlayCard): Distances {
  const { width, rows, startRow, offsets, openOffsets, masks } = play;
  const running = createRunningSums(rows, startRow, width);
  const { sums } = running;
  const open = new Uint8Array(FACE_COUNT);
  const mask = new Int32Array(width).fill(-1);
  const nothing = new Int32Array(width);
  const lanes = new Int32Array(width * 4);
  const farther = [new Int32Array(width * 4), new Int32Array(width * 4)];
  let groups = NO_GROUPS;
  let gathered = 0;
  let asked: Hand | null = null;
  let answer = 14;

  function lay(exposed: readonly ExposedGroup[]): void {
    const same =
      exposed.length === groups.length &&
      exposed.every(({ face, size }, i) => face === groups[i]!.face && size === groups[i]!.size);
    groups = exposed;
    if (same) return;
    open.fill(0);
    for (const { face } of exposed) open[face] = 1;
    mask.fill(-1);
    for (const { face, size } of exposed) {
      const possible = masks.get(face * 15 + size) ?? nothing;
      for (let w = 0; w < width; w++) mask[w]! &= possible[w]!;
    }
  }

  function hold({ concealed, exposed }: Hand): number {
    if (exposed !== groups) lay(exposed);
    running.hold((face) => (open[face] === 1 ? openOffsets : offsets)[face * 15 + concealed[face]!]!);
    let free = concealed[JOKER_INDEX]!;
    for (const { size } of exposed) free += size;
    return inEachByte(free);
  }

  function most(free: number): number {
    let word = 0;
    for (let w = 0; w < width; w++) word = largerWord(word, matchedWord(sums[w]!, free) & mask[w]!);
    return largestByte(word);
  }

  return {
    lanes,
    count: () => gathered,
    toGo(hand) {
      // A hand is asked about at every discard of the others; it is never changed in place.
      if (hand !== asked) {
        answer = 14 - most(hold(hand));
        asked = hand;
      }
      return answer;
    },
    gather(hand) {
      const free = hold(hand);
      const best = most(free);
      const least = Math.max(1, best - SLACK);
      const bar = inEachByte(least);
      const counts = [0, 0, 0];
      for (let w = 0; w < width; w++) {
        const word = matchedWord(sums[w]!, free) & mask[w]!;
        if (!reaches(word, bar)) continue;
        for (let byte = 0; byte < 4; byte++) {
          const matched = (word >>> (byte * 8)) & 255;
          if (matched < least) continue;
          const behind = best - matched;
          const list = behind === 0 ? lanes : farther[behind - 1]!;
          list[counts[behind]!++] = w * 4 + byte;
        }
      }
      gathered = counts[0]!;
      for (let behind = 1; behind <= SLACK; behind++) {
        if (gathered + counts[behind]! > MANY) break;
        for (let i = 0; i < counts[behind]!; i++) lanes[gathered++] = farther[behind - 1]![i]!;
      }
    },
  };
}
