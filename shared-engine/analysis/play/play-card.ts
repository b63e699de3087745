// A card made ready for the play: packed rows, and which hands want which groups.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { type PackedCard, packCard, rowAt } from '../../kernels/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';

/** Counts of one face that a row exists for. */
const COUNTS = 15;

/** How many tiles of one face a hand wants in singles and pairs, and in groups. */
export interface Want {
  readonly face: number;
  readonly single: number;
  readonly group: number;
}

export interface PlayCard {
  readonly card: CompiledCard;
  /** With more rows: those of `exposedOffsets`. */
  readonly packed: PackedCard;
  /** As `PackedCard.offsets`, for a face whose group is exposed: only singles and pairs still want its tiles. */
  readonly exposedOffsets: Int32Array;
  /** The hand in each lane, or null for a lane that pads a pattern. */
  readonly lanes: readonly (Hand | null)[];
  /** What the hand in each lane wants. */
  readonly wants: readonly (readonly Want[])[];
  /** For an exposed group of (face, size), at face × 15 + size: 0xff in each lane that it leaves possible. */
  readonly masks: ReadonlyMap<number, Int32Array>;
  /** Sizes of the groups of a face that some pattern that may be exposed wants, smallest first; by face index. */
  readonly groupSizes: readonly (readonly number[])[];
}

/** Where `masks` holds an exposed group. */
export function maskAt(face: number, size: number): number {
  return face * COUNTS + size;
}

export function preparePlayCard(card: CompiledCard): PlayCard {
  const packed = packCard(card);
  const lanes: (Hand | null)[] = new Array(packed.width * 4).fill(null);
  const next = Array.from(packed.patternStarts);
  for (const hand of card.hands) lanes[next[hand.pattern]!++] = hand;
  const exposed = exposedRows(lanes, packed);
  const groupSizes = Array.from({ length: FACE_COUNT }, (_, face) => groupSizesOf(card, face));
  const rows = new Int32Array(packed.rows.length + exposed.rows.length);
  rows.set(packed.rows);
  rows.set(exposed.rows, packed.rows.length);
  return {
    card,
    packed: { ...packed, rows },
    exposedOffsets: exposed.offsets,
    lanes,
    wants: lanes.map((hand) => (hand ? wantsOf(hand) : [])),
    masks: new Map(
      groupSizes.flatMap((sizes, face) =>
        sizes.map((size) => [maskAt(face, size), maskOf(card, lanes, face, size)] as const),
      ),
    ),
    groupSizes,
  };
}

function maskOf(card: CompiledCard, lanes: readonly (Hand | null)[], face: number, size: number): Int32Array {
  const mask = new Int32Array(lanes.length / 4);
  for (const [lane, hand] of lanes.entries()) {
    if (hand === null || card.patterns[hand.pattern]!.concealed || hand.groups[face] !== size) continue;
    mask[lane >> 2]! |= 0xff << ((lane & 3) * 8);
  }
  return mask;
}

function wantsOf({ singles, groups }: Hand): Want[] {
  return singles.flatMap((single, face) => {
    const group = groups[face]!;
    return single + group > 0 ? [{ face, single, group }] : [];
  });
}

function groupSizesOf(card: CompiledCard, face: number): number[] {
  const sizes = card.hands
    .filter((hand) => !card.patterns[hand.pattern]!.concealed && hand.groups[face]! > 0)
    .map((hand) => hand.groups[face]!);
  return [...new Set(sizes)].sort((a, b) => a - b);
}

/** Rows for faces that some hand wants in a single or pair beside a group; row offset 0 is the row of zeros. */
function exposedRows(lanes: readonly (Hand | null)[], { width, rows: packedRows }: PackedCard) {
  const offsets = new Int32Array(FACE_COUNT * COUNTS);
  const rows: number[] = [];
  for (let face = 0; face < JOKER_INDEX; face++) {
    const beside = lanes.map((hand) => (hand && hand.groups[face]! > 0 ? hand.singles[face]! : 0));
    if (Math.max(0, ...beside) === 0) continue;
    for (let count = 1; count < COUNTS; count++) {
      offsets[rowAt(face, count)] = packedRows.length + rows.length;
      const row = new Array<number>(width).fill(0);
      for (const [lane, single] of beside.entries()) {
        row[lane >> 2]! |= (Math.min(count, single) * 0x11) << ((lane & 3) * 8);
      }
      rows.push(...row);
    }
  }
  return { offsets, rows };
}
