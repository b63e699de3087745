// How far the tiles of a seat, exposed groups included, are from each hand of the card.
import {
  createRunningSums,
  inEachByte,
  largerWord,
  largestByte,
  matchedWord,
  reaches,
  rowAt,
} from '../../kernels/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import type { ExposedGroup, Holding } from './play.ts';
import { maskAt, type PlayCard } from './play-card.ts';

const NO_GROUPS: readonly ExposedGroup[] = [];

/** How many tiles further than the nearest a hand may be and still count. */
const SLACK = 2;
/** The slack shrinks where it would let in more hands than this. */
const MANY = 64;

export interface Distances {
  /** Tiles to go to the nearest hand that can still be completed, 0–14. */
  toGo(holding: Holding): number;
  /** Writes the lanes of the nearest hands to the first `count()` places of `lanes`. */
  gather(holding: Holding): void;
  readonly lanes: Int32Array;
  count(): number;
}

/**
 * Exposed tiles are matched in every hand that is still possible, like jokers; natural tiles of an exposed face
 * serve singles and pairs alone. A hand that does not want exactly the exposed groups, or may not be exposed, is
 * masked out.
 */
export function createDistances(play: PlayCard): Distances {
  const { packed, exposedOffsets } = play;
  const { width, offsets } = packed;
  const running = createRunningSums(packed);
  const { sums } = running;
  const possible = createExposureMask(play);
  const { mask, isExposed } = possible;
  const lanes = new Int32Array(width * 4);
  const farther = [new Int32Array(width * 4), new Int32Array(width * 4)];
  let gathered = 0;
  let last: Holding | null = null;
  let lastToGo = 14;

  /** Brings `sums` to these tiles; those that fit any group, in each byte. */
  function read({ concealed, exposed }: Holding): number {
    possible.set(exposed);
    running.update(
      (face) => (isExposed[face] === 1 ? exposedOffsets : offsets)[rowAt(face, concealed[face]!)]!,
    );
    let free = concealed[JOKER_INDEX]!;
    for (const { size } of exposed) free += size;
    return inEachByte(free);
  }

  function mostMatched(free: number): number {
    let word = 0;
    for (let w = 0; w < width; w++) word = largerWord(word, matchedWord(sums[w]!, free) & mask[w]!);
    return largestByte(word);
  }

  /** Lists the lanes by how many tiles they are behind `best`; how many of each. */
  function listLanes(best: number, free: number): readonly number[] {
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
    return counts;
  }

  return {
    lanes,
    count: () => gathered,
    toGo(holding) {
      // Asked at every discard of the others; a holding is never changed in place.
      if (holding !== last) {
        lastToGo = 14 - mostMatched(read(holding));
        last = holding;
      }
      return lastToGo;
    },
    gather(holding) {
      const free = read(holding);
      const counts = listLanes(mostMatched(free), free);
      gathered = counts[0]!;
      for (let behind = 1; behind <= SLACK; behind++) {
        if (gathered + counts[behind]! > MANY) break;
        for (let i = 0; i < counts[behind]!; i++) lanes[gathered++] = farther[behind - 1]![i]!;
      }
    },
  };
}

/** Which hands the exposed groups leave possible. */
interface ExposureMask {
  /** 0xff in the lane of each possible hand. */
  readonly mask: Int32Array;
  /** 1 for a face whose group is exposed. */
  readonly isExposed: Uint8Array;
  set(exposed: readonly ExposedGroup[]): void;
}

function createExposureMask({ packed: { width }, masks }: PlayCard): ExposureMask {
  const mask = new Int32Array(width).fill(-1);
  const isExposed = new Uint8Array(FACE_COUNT);
  const nothing = new Int32Array(width);
  let groups = NO_GROUPS;
  return {
    mask,
    isExposed,
    set(exposed) {
      if (exposed === groups) return;
      const same =
        exposed.length === groups.length &&
        exposed.every(({ face, size }, i) => face === groups[i]!.face && size === groups[i]!.size);
      groups = exposed;
      if (same) return;
      isExposed.fill(0);
      for (const { face } of exposed) isExposed[face] = 1;
      mask.fill(-1);
      for (const { face, size } of exposed) {
        const possible = masks.get(maskAt(face, size)) ?? nothing;
        for (let w = 0; w < width; w++) mask[w]! &= possible[w]!;
      }
    },
  };
}
