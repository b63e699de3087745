// What each hand of the card weighs for a rack, the more the nearer it is, and what each tile of the rack adds to that.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/index.ts';
import { packCard, rowAt } from '../packed-card.ts';
import { createRunningSums } from '../running-sums.ts';

/** How often the weight of a hand is halved: whole numbers, so that weights are and sums do not depend on their order. */
export interface WeightSteps {
  /** For each tile to go; 1 to 3. */
  readonly tile: number;
  /** In addition, for each tile but one that lacks in singles and pairs, which no joker stands for; 0 to 3. */
  readonly pair: number;
  /** For a pattern that may not be exposed; 0 to 8. */
  readonly concealed: number;
}

/** What the nearest hand weighs; so many halvings behind it a hand still counts when the rack is read. */
const HEAVIEST = 128;
const SLACK = 4;

/** A rack and the weights of its hands while tiles are taken away one at a time. */
export interface HandWeights {
  /** Reads the rack at `racks[at..at + 36)`. */
  read(racks: Uint8Array, at: number): void;
  /** Summed weight of all hands as the rack is now. */
  total(): number;
  /** The weight of the hands that move away when a tile of this face goes; 0 where none is held. */
  loss(face: number): number;
  /** Takes one tile away; what falls below 1 counts no more. */
  take(face: number): void;
  /** Tiles held now, by face. */
  readonly held: Uint8Array;
}

const NIBBLE = 16;
/** A hand that nothing fits is this far away. */
export const NEVER = 128;

/** Halvings by tiles matched, and by what singles and pairs limit them to. */
export function levelTables({ tile, pair }: WeightSteps): {
  readonly byMatched: readonly number[];
  readonly byLimit: readonly number[];
} {
  const nibbles = [...new Array<number>(NIBBLE).keys()];
  return {
    byMatched: nibbles.map((matched) => (matched === 0 ? NEVER : Math.max(0, tile * (14 - matched)))),
    byLimit: nibbles.map((limit) => Math.max(0, pair * (13 - limit))),
  };
}

export function createHandWeights(card: CompiledCard, steps: WeightSteps): HandWeights {
  const packed = packCard(card);
  const { rows, offsets, width, patternStarts } = packed;
  const bytes = new Uint8Array(rows.buffer, rows.byteOffset, rows.byteLength);
  const running = createRunningSums(packed);
  const sums = new Uint8Array(running.sums.buffer);
  const { byMatched, byLimit } = levelTables(steps);
  const lanes = width * 4;
  const added = new Uint8Array(lanes);
  for (const [pattern, { concealed }] of card.patterns.entries()) {
    if (concealed) added.fill(steps.concealed, patternStarts[pattern], patternStarts[pattern + 1]);
  }
  const levels = new Uint8Array(lanes);
  const held = new Uint8Array(FACE_COUNT);
  /** The hands that count, their weights, and by how many tiles they have more for all places than they can match. */
  const lane = new Int32Array(lanes);
  const weight = new Uint8Array(lanes);
  const surplus = new Int8Array(lanes);
  let count = 0;

  const byteRow = (face: number, copies: number): number => offsets[rowAt(face, copies)]! * 4;

  function leastLevel(jokers: number): number {
    let least = NEVER;
    for (let n = 0; n < lanes; n++) {
      const sum = sums[n]!;
      const limit = sum & 15;
      const level = byMatched[Math.min((sum >> 4) + jokers, limit)]! + byLimit[limit]! + added[n]!;
      levels[n] = level;
      if (level < least) least = level;
    }
    return least;
  }

  return {
    held,
    read(racks, at) {
      for (let face = 0; face < FACE_COUNT; face++) held[face] = racks[at + face]!;
      running.update((face) => offsets[rowAt(face, held[face]!)]!);
      const jokers = held[JOKER_INDEX]!;
      const least = leastLevel(jokers);
      count = 0;
      if (least === NEVER) return;
      for (let n = 0; n < lanes; n++) {
        const away = levels[n]! - least;
        if (away > SLACK) continue;
        lane[count] = n;
        weight[count] = HEAVIEST >> away;
        surplus[count++] = (sums[n]! >> 4) + jokers - (sums[n]! & 15);
      }
    },
    total() {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += weight[i]!;
      return sum;
    },
    loss(face) {
      if (held[face] === 0) return 0;
      const now = byteRow(face, held[face]!);
      const then = byteRow(face, held[face]! - 1);
      if (now === then) return 0;
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const part = bytes[now + lane[i]!]! - bytes[then + lane[i]!]!;
        // 0x11: fits a single or pair; 0x10: fits a group, which matters where no tile is too many.
        if (part === 0x11 || (part === 0x10 && surplus[i]! <= 0)) sum += weight[i]!;
      }
      return sum;
    },
    take(face) {
      const now = byteRow(face, held[face]!);
      const then = byteRow(face, held[face]! - 1);
      held[face]!--;
      if (now === then) return;
      for (let i = 0; i < count; i++) {
        const part = bytes[now + lane[i]!]! - bytes[then + lane[i]!]!;
        if (part === 0x11) weight[i]! >>= steps.tile + steps.pair;
        if (part !== 0x10) continue;
        if (surplus[i]! <= 0) weight[i]! >>= steps.tile;
        surplus[i]!--;
      }
    },
  };
}
