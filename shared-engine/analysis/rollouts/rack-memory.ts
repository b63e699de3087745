// What was worked out for a rack, kept for as long as one world lasts: most alternatives leave most racks alone.
import { FACE_COUNT } from '../../rules/tiles/face.ts';

const WORDS = FACE_COUNT / 4;

/** A short list of racks; each has a number under which its owner keeps what belongs to it. */
export interface RackMemory {
  /** The number of this rack, or −1 when it is not remembered. */
  find(racks: Uint8Array, seat: number): number;
  /** Remembers a rack that `find` did not know; its number, or −1 where the list is full. */
  add(racks: Uint8Array, seat: number): number;
  clear(): void;
}

export function createRackMemory(most: number): RackMemory {
  const kept = new Int32Array(most * WORDS);
  let size = 0;
  return {
    clear() {
      size = 0;
    },
    find(racks, seat) {
      const asked = new Int32Array(racks.buffer, racks.byteOffset + seat * FACE_COUNT, WORDS);
      for (let n = 0; n < size; n++) {
        let w = 0;
        while (w < WORDS && kept[n * WORDS + w] === asked[w]) w++;
        if (w === WORDS) return n;
      }
      return -1;
    },
    add(racks, seat) {
      if (size === most) return -1;
      kept.set(new Int32Array(racks.buffer, racks.byteOffset + seat * FACE_COUNT, WORDS), size * WORDS);
      return size++;
    },
  };
}
