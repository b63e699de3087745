// Which tiles a simulated seat passes: those that add least to the weight of its hands, as it misjudges them.
import { held, lossOf, readHandWeights, take, totalWeight } from './hand-weights';

const JOKER: usize = 35;
const NONE: usize = 36;

/** The faces of the rack, a byte each, and how many there are. */
const faces: usize = memory.data(36, 16);
let size: usize = 0;

/** By face, as f64: the least that the loss of a tile can be, and the value perceived then. */
const losses: usize = memory.data(36 * 8, 16);
const perceivedValues: usize = memory.data(36 * 8, 16);

let noiseScale: f64 = 0;
let spareShare: f64 = 0;

/** The share of the weight that a unit of noise is mistaken for, and the share below which a tile can be spared. */
export function setPassSelection(noise: f64, spare: f64): void {
  noiseScale = noise;
  spareShare = spare;
}

function listFaces(): void {
  size = 0;
  for (let face: usize = 0; face < JOKER; face++) {
    store<u8>(faces + size, <u8>face);
    size += <usize>(load<u8>(held + face) !== 0);
  }
}

/** The value perceived of a tile of this face, its loss being so large. */
function perceivedAt(loss: f64, total: f64, noise: usize, face: usize): f64 {
  const value: f64 = total === 0 ? 0 : loss / total;
  return value - noiseScale * load<f64>(noise + face * 8);
}

function perceived(total: f64, noise: usize, face: usize): f64 {
  const loss = lossOf(face);
  store<f64>(losses + face * 8, loss);
  return perceivedAt(loss, total, noise, face);
}

/** The face that seems least useful, the first where several do; `NONE` where no tile is held. */
function leastOfAll(total: f64, noise: usize): usize {
  let least = NONE;
  let lowest = Infinity;
  for (let nth: usize = 0; nth < size; nth++) {
    const face = <usize>load<u8>(faces + nth);
    const value = perceived(total, noise, face);
    if (value < lowest) {
      lowest = value;
      least = face;
    }
  }
  return least;
}

/**
 * The same where `losses` holds the least that each loss can be. Division and subtraction keep the order of losses,
 * so a face that cannot seem least by its least loss need not be weighed.
 */
function leastAgain(total: f64, noise: usize): usize {
  let least = NONE;
  let lowest = Infinity;
  for (let nth: usize = 0; nth < size; nth++) {
    const face = <usize>load<u8>(faces + nth);
    if (load<u8>(held + face) === 0) continue;
    const value = perceivedAt(load<f64>(losses + face * 8), total, noise, face);
    store<f64>(perceivedValues + face * 8, value);
    if (value < lowest) {
      lowest = value;
      least = face;
    }
  }
  if (least === NONE) return NONE;
  const promising = least;
  lowest = perceived(total, noise, promising);
  for (let nth: usize = 0; nth < size; nth++) {
    const face = <usize>load<u8>(faces + nth);
    if (load<u8>(held + face) === 0 || face === promising || load<f64>(perceivedValues + face * 8) > lowest)
      continue;
    const value = perceived(total, noise, face);
    if (value < lowest || (value === lowest && face < least)) {
      lowest = value;
      least = face;
    }
  }
  return least;
}

/** Takes the tile away. Hands that it moved away weigh less, so other losses fall by its own loss at most. */
function takeAway(least: usize): void {
  const loss = load<f64>(losses + least * 8);
  for (let nth: usize = 0; nth < size; nth++) {
    const at = losses + ((<usize>load<u8>(faces + nth)) << 3);
    store<f64>(at, max<f64>(0, load<f64>(at) - loss));
  }
  store<f64>(losses + least * 8, 0);
  take(least);
}

/**
 * The three tiles selected, a byte each to `tiles`, −1 where none is left, and how many of them, one after another,
 * can be spared. `noise` holds 36 values as f64.
 */
export function selectPass(rack: usize, noise: usize, tiles: usize): u32 {
  readHandWeights(rack);
  listFaces();
  let spare: u32 = 0;
  for (let taken: u32 = 0; taken < 3; taken++) {
    const total = totalWeight();
    const least = taken === 0 ? leastOfAll(total, noise) : leastAgain(total, noise);
    store<i8>(tiles + taken, least === NONE ? -1 : <i8>least);
    if (least === NONE) continue;
    const share: f64 = total === 0 ? 0 : load<f64>(losses + least * 8) / total;
    if (spare === taken && share < spareShare) spare++;
    if (taken < 2) takeAway(least);
  }
  return spare;
}

/** The same of `count` racks after one another: three bytes each to `tiles`, one each to `spare`. */
export function selectPasses(racks: usize, count: u32, noise: usize, tiles: usize, spare: usize): void {
  for (let nth: u32 = 0; nth < count; nth++) {
    store<u8>(spare + nth, <u8>selectPass(racks + nth * 36, noise, tiles + nth * 3));
  }
}
