// Four passes as one movement of tiles between four racks, blind passes included.
import { drawBlindWords } from './noise';

/** Three places a seat, and how many of its own tiles a seat gives and how many it passes blind. */
const tiles: usize = memory.data(12, 4);
const own: usize = memory.data(4, 4);
const blind: usize = memory.data(4, 4);

const bundles: usize = memory.data(12, 4);
const sizes: usize = memory.data(4, 4);
const words: usize = memory.data(16, 16);

/** Sets what a seat passes: the first `given` of the three tiles at `from`, and so many arriving ones blind. */
export function setPass(seat: u32, from: usize, given: u32, passedBlind: u32): void {
  const at = tiles + seat * 3;
  store<u8>(at, load<u8>(from));
  store<u8>(at, load<u8>(from, 1), 1);
  store<u8>(at, load<u8>(from, 2), 2);
  store<u8>(own + seat, <u8>given);
  store<u8>(blind + seat, <u8>passedBlind);
}

/** Whether all four seats would pass blind. */
export function allBlind(): bool {
  for (let seat: u32 = 0; seat < 4; seat++) {
    if (load<u8>(blind + seat) === 0) return false;
  }
  return true;
}

function countOf(racks: usize, seat: u32, face: u32): usize {
  return racks + seat * 36 + face;
}

/** Moves the tiles `toward` seats to the right; blind tiles are drawn by the words of seat and step. */
export function moveTiles(racks: usize, toward: u32, step: u32): void {
  for (let seat: u32 = 0; seat < 4; seat++) {
    const given: u32 = load<u8>(own + seat);
    store<u8>(sizes + seat, <u8>given);
    for (let i: u32 = 0; i < given; i++) {
      const face = load<u8>(tiles + seat * 3 + i);
      store<u8>(bundles + seat * 3 + i, face);
      const at = countOf(racks, seat, face);
      store<u8>(at, load<u8>(at) - 1);
    }
  }
  let seat: u32 = 0;
  while (load<u8>(blind + seat) !== 0) seat++;
  // Across, the walk from one seat meets its partner alone; the other pair is never blind there.
  for (let walked = 0; walked < 4; walked++) {
    const to = (seat + toward) & 3;
    const from = bundles + seat * 3;
    let arriving: u32 = load<u8>(sizes + seat);
    const wanted = min<u32>(load<u8>(blind + to), arriving);
    if (wanted > 0) {
      drawBlindWords(words, to, step);
      for (let i: u32 = 0; i < wanted; i++) {
        const drawn = from + (load<u32>(words + i * 4) % arriving);
        arriving--;
        const size: u32 = load<u8>(sizes + to);
        store<u8>(bundles + to * 3 + size, load<u8>(drawn));
        store<u8>(sizes + to, <u8>(size + 1));
        store<u8>(drawn, load<u8>(from + arriving));
      }
    }
    for (let i: u32 = 0; i < arriving; i++) {
      const at = countOf(racks, to, load<u8>(from + i));
      store<u8>(at, load<u8>(at) + 1);
    }
    store<u8>(sizes + seat, 0);
    seat = toward === 2 && walked === 1 ? (to + 1) & 3 : to;
  }
}
