// The targets of a card packed to one byte each, so that a rack is a sum of a few rows.
import type { CompiledCard, Target } from '../card/compiled.ts';
import { FACE_COUNT, JOKER_INDEX } from '../rules/tiles/face.ts';

/** Counts of one face that a row exists for: no target wants more than a whole rack of it. */
const COUNTS = 15;

/**
 * One byte a target. Its high nibble sums min(h, N+E) over the faces, its low nibble ΣE + Σ min(h, N), both at
 * most 14 whatever the rack, so sums never carry into a neighbour. A lane that pads a line or a row is zero in
 * every row and matches nothing.
 */
export interface PackedCard {
  /** Words a row. */
  readonly width: number;
  /** All rows after one another; row 0 is zero and the last one the start of every sum (the ΣE). */
  readonly rows: Int32Array;
  readonly startRow: number;
  /** Offset into `rows` of (face, count), at face × 15 + min(count, 14); 0 where the tiles fit nowhere. */
  readonly offsets: Int32Array;
  /** First lane of each line, and the lane after the last line. */
  readonly lineStarts: Int32Array;
  /** Lanes that hold no target. */
  readonly padding: number;
}

/** Lines start at multiples of `lineLanes`, rows are multiples of `rowLanes` long, itself a multiple of four. */
export function packCard(card: CompiledCard, lineLanes = 4, rowLanes = 4): PackedCard {
  const { lanes, lineStarts } = layOut(card, lineLanes, rowLanes);
  const width = lanes.length / 4;
  const offsets = new Int32Array(FACE_COUNT * COUNTS);
  const rows: Int32Array[] = [new Int32Array(width)];
  for (let face = 0; face < FACE_COUNT; face++) {
    const most =
      face === JOKER_INDEX ? 0 : Math.max(0, ...card.targets.map((target) => wanted(target, face)));
    for (let count = 1; count < COUNTS; count++) {
      if (count <= most) rows.push(rowOf(lanes, (target) => held(target, face, count)));
      offsets[face * COUNTS + count] = most === 0 ? 0 : (rows.length - 1) * width;
    }
  }
  rows.push(rowOf(lanes, (target) => target.groups.reduce((sum, count) => sum + count, 0)));
  const all = new Int32Array(rows.length * width);
  for (const [index, row] of rows.entries()) all.set(row, index * width);
  return {
    width,
    rows: all,
    startRow: (rows.length - 1) * width,
    offsets,
    lineStarts,
    padding: lanes.length - card.targets.length,
  };
}

function layOut(
  card: CompiledCard,
  lineLanes: number,
  rowLanes: number,
): { lanes: (Target | null)[]; lineStarts: Int32Array } {
  const byLine: Target[][] = card.lines.map(() => []);
  for (const target of card.targets) byLine[target.line]!.push(target);
  const lanes: (Target | null)[] = [];
  const lineStarts = new Int32Array(card.lines.length + 1);
  for (const [line, targets] of byLine.entries()) {
    lanes.push(...targets);
    while (lanes.length % lineLanes !== 0) lanes.push(null);
    lineStarts[line + 1] = lanes.length;
  }
  while (lanes.length % rowLanes !== 0) lanes.push(null);
  return { lanes, lineStarts };
}

function wanted(target: Target, face: number): number {
  return target.singles[face]! + target.groups[face]!;
}

function held(target: Target, face: number, count: number): number {
  return (Math.min(count, wanted(target, face)) << 4) | Math.min(count, target.singles[face]!);
}

function rowOf(lanes: readonly (Target | null)[], byte: (target: Target) => number): Int32Array {
  const row = new Int32Array(lanes.length / 4);
  for (const [lane, target] of lanes.entries()) {
    if (target) row[lane >> 2]! |= byte(target) << ((lane & 3) * 8);
  }
  return row;
}
