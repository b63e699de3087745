// A card made ready for the play: packed rows, and which targets want which groups.
import type { CompiledCard, Target } from '../../card/compiled.ts';
import { packCard } from '../../kernels/packed-card.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';

/** Counts of one face that a row exists for. */
const COUNTS = 15;

/** One target as a list of the faces it wants. */
export interface Want {
  readonly face: number;
  readonly single: number;
  readonly group: number;
}

export interface PlayCard {
  readonly card: CompiledCard;
  /** Words a row; see `PackedCard`. */
  readonly width: number;
  readonly rows: Int32Array;
  readonly startRow: number;
  /** Offset into `rows` of (face, count), at face × 15 + min(count, 14). */
  readonly offsets: Int32Array;
  /** The same for a face whose group is laid open: only singles and pairs still want its tiles. */
  readonly openOffsets: Int32Array;
  /** First lane of each line, a whole word's, and the lane after the last line. */
  readonly lineStarts: Int32Array;
  /** The target in each lane, or null for a lane that pads a line. */
  readonly lanes: readonly (Target | null)[];
  readonly wants: readonly (readonly Want[])[];
  /** For a laid-open group of (face, size), at face × 15 + size: 0xff in each lane that it leaves possible. */
  readonly masks: ReadonlyMap<number, Int32Array>;
  /** Sizes of the groups of a face that some line that may be exposed wants, smallest first; by face index. */
  readonly groupSizes: readonly (readonly number[])[];
}

export function preparePlayCard(card: CompiledCard): PlayCard {
  const { width, rows, startRow, offsets, lineStarts } = packCard(card);
  const lanes: (Target | null)[] = new Array(width * 4).fill(null);
  const next = Array.from(lineStarts);
  for (const target of card.targets) lanes[next[target.line]!++] = target;
  const open = openRows(lanes, width, rows.length);
  const groupSizes = Array.from({ length: FACE_COUNT }, (_, face) => groupSizesOf(card, face));
  const all = new Int32Array(rows.length + open.rows.length);
  all.set(rows);
  all.set(open.rows, rows.length);
  return {
    card,
    width,
    rows: all,
    startRow,
    offsets,
    openOffsets: open.offsets,
    lineStarts,
    lanes,
    wants: lanes.map((target) => (target ? wantsOf(target) : [])),
    masks: new Map(
      groupSizes.flatMap((sizes, face) =>
        sizes.map((size) => [face * COUNTS + size, maskOf(card, lanes, face, size)] as const),
      ),
    ),
    groupSizes,
  };
}

function maskOf(
  card: CompiledCard,
  lanes: readonly (Target | null)[],
  face: number,
  size: number,
): Int32Array {
  const mask = new Int32Array(lanes.length / 4);
  for (const [lane, target] of lanes.entries()) {
    if (target === null || card.lines[target.line]!.concealed || target.groups[face] !== size) continue;
    mask[lane >> 2]! |= 0xff << ((lane & 3) * 8);
  }
  return mask;
}

function wantsOf({ singles, groups }: Target): Want[] {
  return singles.flatMap((single, face) => {
    const group = groups[face]!;
    return single + group > 0 ? [{ face, single, group }] : [];
  });
}

function groupSizesOf(card: CompiledCard, face: number): number[] {
  const sizes = card.targets
    .filter((target) => !card.lines[target.line]!.concealed && target.groups[face]! > 0)
    .map((target) => target.groups[face]!);
  return [...new Set(sizes)].sort((a, b) => a - b);
}

/** Rows for faces that some target wants in a single or pair beside a group; row offset 0 is the zero row. */
function openRows(lanes: readonly (Target | null)[], width: number, start: number) {
  const offsets = new Int32Array(FACE_COUNT * COUNTS);
  const rows: number[] = [];
  for (let face = 0; face < JOKER_INDEX; face++) {
    const beside = lanes.map((target) => (target && target.groups[face]! > 0 ? target.singles[face]! : 0));
    if (Math.max(0, ...beside) === 0) continue;
    for (let count = 1; count < COUNTS; count++) {
      offsets[face * COUNTS + count] = start + rows.length;
      const row = new Array<number>(width).fill(0);
      for (const [lane, single] of beside.entries()) {
        row[lane >> 2]! |= (Math.min(count, single) * 0x11) << ((lane & 3) * 8);
      }
      rows.push(...row);
    }
  }
  return { offsets, rows };
}
