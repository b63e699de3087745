// The packed sums of a rack, updated from the rack asked about last by whichever way costs less.
import { FACE_COUNT } from '../rules/index.ts';
import type { PackedCard } from './packed-card.ts';

export interface RunningSums {
  /** One byte a hand, four to a word (see `PackedCard`). */
  readonly sums: Int32Array;
  /** Makes `sums` the start row plus the row of each face: by the rows that differ, or anew where that is less work. */
  update(rowOf: (face: number) => number): void;
}

export function createRunningSums({
  rows,
  startRow,
  width,
}: Pick<PackedCard, 'rows' | 'startRow' | 'width'>): RunningSums {
  const start = rows.slice(startRow, startRow + width);
  const sums = start.slice();
  const held = new Int32Array(FACE_COUNT);
  const removed = new Int32Array(FACE_COUNT);
  const added = new Int32Array(FACE_COUNT);
  const wanted = new Int32Array(FACE_COUNT + 4);

  /** Two changes a pass, and an odd one alone. */
  function change(changes: number): void {
    for (let i = 0; i + 1 < changes; i += 2) {
      const out = removed[i]!;
      const out2 = removed[i + 1]!;
      const into = added[i]!;
      const into2 = added[i + 1]!;
      for (let w = 0; w < width; w++) {
        sums[w] = (sums[w]! + rows[into + w]! - rows[out + w]! + rows[into2 + w]! - rows[out2 + w]!) | 0;
      }
    }
    if (changes % 2 === 0) return;
    const out = removed[changes - 1]!;
    const into = added[changes - 1]!;
    for (let w = 0; w < width; w++) sums[w] = (sums[w]! + rows[into + w]! - rows[out + w]!) | 0;
  }

  function rebuild(faces: number): void {
    wanted.fill(0, faces, faces + 4);
    sums.set(start);
    for (let i = 0; i < faces; i += 4) {
      const a = wanted[i]!;
      const b = wanted[i + 1]!;
      const c = wanted[i + 2]!;
      const d = wanted[i + 3]!;
      for (let w = 0; w < width; w++) {
        sums[w] = (sums[w]! + rows[a + w]! + rows[b + w]! + rows[c + w]! + rows[d + w]!) | 0;
      }
    }
  }

  return {
    sums,
    update(rowOf) {
      let changes = 0;
      let faces = 0;
      for (let face = 0; face < FACE_COUNT; face++) {
        const row = rowOf(face);
        const old = held[face]!;
        if (row !== old) {
          removed[changes] = old;
          added[changes++] = row;
          held[face] = row;
        }
        if (row !== 0) wanted[faces++] = row;
      }
      if (changes * 2 <= faces) change(changes);
      else rebuild(faces);
    },
  };
}
