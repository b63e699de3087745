// Results cached by rack while one sampled deal lasts: most alternatives leave most racks as they are.
import { FACE_COUNT } from '../../rules/index.ts';

const WORDS = FACE_COUNT / 4;

/** A short list of racks; each has a number under which its owner stores what belongs to it. */
export interface RackCache {
  /** The number of this rack, or −1 when it is not in the list. */
  find(racks: Uint8Array, seat: number): number;
  /** Adds a rack that `find` did not know; its number, or −1 where the list is full. */
  add(racks: Uint8Array, seat: number): number;
  clear(): void;
}

export function createRackCache(capacity: number): RackCache {
  const stored = new Int32Array(capacity * WORDS);
  let size = 0;
  return {
    clear() {
      size = 0;
    },
    find(racks, seat) {
      const wanted = new Int32Array(racks.buffer, racks.byteOffset + seat * FACE_COUNT, WORDS);
      for (let n = 0; n < size; n++) {
        let w = 0;
        while (w < WORDS && stored[n * WORDS + w] === wanted[w]) w++;
        if (w === WORDS) return n;
      }
      return -1;
    },
    add(racks, seat) {
      if (size === capacity) return -1;
      stored.set(new Int32Array(racks.buffer, racks.byteOffset + seat * FACE_COUNT, WORDS), size * WORDS);
      return size++;
    },
  };
}
