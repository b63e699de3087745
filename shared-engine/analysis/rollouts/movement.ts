// Four passes as one movement of tiles between four racks, blind passes included (rules C1, B1–B4).
import { FACE_COUNT } from '../../rules/index.ts';

/** What the four seats pass: three places a seat, −1 where empty. */
export interface Passes {
  readonly tiles: Int8Array;
  /** Own tiles given, by seat. */
  readonly own: Int8Array;
  /** Arriving tiles passed blind, by seat. */
  readonly blind: Int8Array;
}

export function createPasses(): Passes {
  return { tiles: new Int8Array(12).fill(-1), own: new Int8Array(4), blind: new Int8Array(4) };
}

/** Sets that a seat gives the first `own` of these tiles and passes as many more blind. */
export function setPass(
  passes: Passes,
  seat: number,
  tiles: Int8Array,
  [own, blind]: readonly [number, number],
) {
  for (let i = 0; i < 3; i++) passes.tiles[seat * 3 + i] = tiles[i]!;
  passes.own[seat] = own;
  passes.blind[seat] = blind;
}

const bundles = new Int8Array(12);
const sizes = new Int8Array(4);

/**
 * Moves the tiles. `toward` is 1, 2 or 3 seats to the right. `draw(seat)` gives words by which the seat's blind
 * tiles are drawn from the arriving ones. At least one seat must pass no tile blind.
 */
export function moveTiles(
  racks: Uint8Array,
  passes: Passes,
  toward: number,
  draw: (seat: number) => Uint32Array,
): void {
  const { tiles, own, blind } = passes;
  let start = 0;
  for (let seat = 0; seat < 4; seat++) {
    sizes[seat] = own[seat]!;
    for (let i = 0; i < own[seat]!; i++) {
      const face = tiles[seat * 3 + i]!;
      bundles[seat * 3 + i] = face;
      racks[seat * FACE_COUNT + face]!--;
    }
  }
  while (blind[start] !== 0) start++;
  // Across, the walk from one seat meets its partner alone; the other pair is never blind there.
  for (let walked = 0, seat = start; walked < 4; walked++) {
    const to = (seat + toward) % 4;
    let arriving = sizes[seat]!;
    const wanted = Math.min(blind[to]!, arriving);
    if (wanted > 0) {
      const words = draw(to);
      for (let i = 0; i < wanted; i++) {
        const drawn = words[i]! % arriving--;
        bundles[to * 3 + sizes[to]!++] = bundles[seat * 3 + drawn]!;
        bundles[seat * 3 + drawn] = bundles[seat * 3 + arriving]!;
      }
    }
    for (let i = 0; i < arriving; i++) racks[to * FACE_COUNT + bundles[seat * 3 + i]!]!++;
    sizes[seat] = 0;
    seat = toward === 2 && walked === 1 ? (to + 1) % 4 : to;
  }
}
