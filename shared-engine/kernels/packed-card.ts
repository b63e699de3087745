// The hands of a card packed to one byte each, so that a rack is a sum of a few rows.
import type { CompiledCard, Hand } from '../card/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../rules/index.ts';

/** Counts of one face that a row exists for: no hand wants more than a whole rack of it. */
const COUNTS = 15;

/**
 * One byte a hand. Its high nibble sums min(h, N+E) over the faces, its low nibble ΣE + Σ min(h, N), where h tiles
 * are held and the hand wants N in singles and pairs, E in groups; both are at most 14 whatever the rack, so sums
 * never carry into a neighbor. A lane that pads a pattern or a row is zero in every row and matches nothing.
 */
export interface PackedCard {
  /** Words a row. */
  readonly width: number;
  /** All rows after one another; row 0 is zero and the last one the start of every sum (the ΣE). */
  readonly rows: Int32Array;
  readonly startRow: number;
  /** Offset into `rows` of each face and count (see `rowAt`); 0 where the tiles fit nowhere. */
  readonly offsets: Int32Array;
  /** First lane of each pattern, and the lane after the last pattern. */
  readonly patternStarts: Int32Array;
  /** Lanes that hold no hand. */
  readonly padding: number;
}

/** Where `offsets` holds the row of so many tiles of a face. */
export function rowAt(face: number, count: number): number {
  return face * COUNTS + Math.min(count, COUNTS - 1);
}

/** Patterns start at multiples of `patternLanes`; rows are multiples of `rowLanes` long, itself a multiple of four. */
export function packCard(card: CompiledCard, patternLanes = 4, rowLanes = 4): PackedCard {
  const { lanes, patternStarts } = layoutLanes(card, patternLanes, rowLanes);
  const width = lanes.length / 4;
  const offsets = new Int32Array(FACE_COUNT * COUNTS);
  const rows: Int32Array[] = [new Int32Array(width)];
  const all = lanes.flatMap((hand, lane) => (hand ? [{ hand, lane }] : []));
  for (let face = 0; face < FACE_COUNT; face++) {
    // Most hands want few faces, and only those that want this one have anything in its rows.
    const wanting = face === JOKER_INDEX ? [] : all.filter(({ hand }) => wanted(hand, face) > 0);
    const most = wanting.reduce((sofar, { hand }) => Math.max(sofar, wanted(hand, face)), 0);
    for (let count = 1; count < COUNTS; count++) {
      if (count <= most) rows.push(rowOf(width, wanting, (hand) => packedCount(hand, face, count)));
      offsets[rowAt(face, count)] = most === 0 ? 0 : (rows.length - 1) * width;
    }
  }
  rows.push(rowOf(width, all, (hand) => hand.groups.reduce((sum, count) => sum + count, 0)));
  const joined = new Int32Array(rows.length * width);
  for (const [index, row] of rows.entries()) joined.set(row, index * width);
  return {
    width,
    rows: joined,
    startRow: (rows.length - 1) * width,
    offsets,
    patternStarts,
    padding: lanes.length - card.hands.length,
  };
}

function layoutLanes(
  card: CompiledCard,
  patternLanes: number,
  rowLanes: number,
): { lanes: (Hand | null)[]; patternStarts: Int32Array } {
  const byPattern: Hand[][] = card.patterns.map(() => []);
  for (const hand of card.hands) byPattern[hand.pattern]!.push(hand);
  const lanes: (Hand | null)[] = [];
  const patternStarts = new Int32Array(card.patterns.length + 1);
  for (const [pattern, hands] of byPattern.entries()) {
    lanes.push(...hands);
    while (lanes.length % patternLanes !== 0) lanes.push(null);
    patternStarts[pattern + 1] = lanes.length;
  }
  while (lanes.length % rowLanes !== 0) lanes.push(null);
  return { lanes, patternStarts };
}

function wanted(hand: Hand, face: number): number {
  return hand.singles[face]! + hand.groups[face]!;
}

function packedCount(hand: Hand, face: number, count: number): number {
  return (Math.min(count, wanted(hand, face)) << 4) | Math.min(count, hand.singles[face]!);
}

interface LaneHand {
  readonly hand: Hand;
  readonly lane: number;
}

function rowOf(width: number, filled: readonly LaneHand[], byte: (hand: Hand) => number): Int32Array {
  const row = new Int32Array(width);
  for (const { hand, lane } of filled) row[lane >> 2]! |= byte(hand) << ((lane & 3) * 8);
  return row;
}
