// The packed sums of a hand, brought from the hand asked about last to the next by whatever costs less.
import { FACE_COUNT } from '../../rules/tiles/face.ts';

export interface RunningSums {
  /** One byte a target, four to a word (see `PackedCard`). */
  readonly sums: Int32Array;
  /** Makes `sums` the start row plus the row of each face: by what differs, or anew where that is less. */
  hold(rowOf: (face: number) => number): void;
}

/** `rows` holds rows of `width` words, row offset 0 being zero. */
export function createRunningSums(rows: Int32Array, startRow: number, width: number): RunningSums {
  const start = rows.slice(startRow, startRow + width);
  const sums = start.slice();
  const held = new Int32Array(FACE_COUNT);
  const gone = new Int32Array(FACE_COUNT + 1);
  const came = new Int32Array(FACE_COUNT + 1);
  const next = new Int32Array(FACE_COUNT + 4);

  function step(changed: number): void {
    for (let i = 0; i < changed; i++) {
      const out = gone[i]!;
      const inn = came[i]!;
      for (let w = 0; w < width; w++) sums[w] = (sums[w]! + rows[inn + w]! - rows[out + w]!) | 0;
    }
  }

  function rebuild(faces: number): void {
    next.fill(0, faces, faces + 4);
    sums.set(start);
    for (let i = 0; i < faces; i += 4) {
      const a = next[i]!;
      const b = next[i + 1]!;
      const c = next[i + 2]!;
      const d = next[i + 3]!;
      for (let w = 0; w < width; w++) {
        sums[w] = (sums[w]! + rows[a + w]! + rows[b + w]! + rows[c + w]! + rows[d + w]!) | 0;
      }
    }
  }

  return {
    sums,
    hold(rowOf) {
      let changed = 0;
      let faces = 0;
      for (let face = 0; face < FACE_COUNT; face++) {
        const row = rowOf(face);
        const old = held[face]!;
        if (row !== old) {
          gone[changed] = old;
          came[changed++] = row;
          held[face] = row;
        }
        if (row !== 0) next[faces++] = row;
      }
      if (changed * 2 <= faces) step(changed);
      else rebuild(faces);
    },
  };
}
