// Which tiles a seat lets go: the least useful to its near targets, as it misjudges them.
import { held, lossOf, readNear, take, totalWeight } from './near';

const JOKER: usize = 35;
const NONE: usize = 36;

/** The faces of the rack, a byte each, and how many there are. */
const faces: usize = memory.data(36, 16);
let size: usize = 0;

/** By face, as f64: the least that the loss of a tile can be, and what it seems to be worth then. */
const losses: usize = memory.data(36 * 8, 16);
const worths: usize = memory.data(36 * 8, 16);

let misjudged: f64 = 0;
let spared: f64 = 0;

/** How much weight a unit of noise is mistaken for, and the share below which a tile can be spared. */
export function setCare(noiseWeight: f64, spareShare: f64): void {
  misjudged = noiseWeight;
  spared = spareShare;
}

function listFaces(): void {
  size = 0;
  for (let face: usize = 0; face < JOKER; face++) {
    store<u8>(faces + size, <u8>face);
    size += <usize>(load<u8>(held + face) !== 0);
  }
}

/** What a tile of this face seems to be worth, its loss being so large. */
function seenAt(loss: f64, total: f64, noise: usize, face: usize): f64 {
  const own: f64 = total === 0 ? 0 : loss / total;
  return own - misjudged * load<f64>(noise + face * 8);
}

function seen(total: f64, noise: usize, face: usize): f64 {
  const loss = lossOf(face);
  store<f64>(losses + face * 8, loss);
  return seenAt(loss, total, noise, face);
}

/** The face that seems least useful, the first where several do; `NONE` where no tile is held. */
function leastOfAll(total: f64, noise: usize): usize {
  let least = NONE;
  let lowest = Infinity;
  for (let nth: usize = 0; nth < size; nth++) {
    const face = <usize>load<u8>(faces + nth);
    const worth = seen(total, noise, face);
    if (worth < lowest) {
      lowest = worth;
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
    const worth = seenAt(load<f64>(losses + face * 8), total, noise, face);
    store<f64>(worths + face * 8, worth);
    if (worth < lowest) {
      lowest = worth;
      least = face;
    }
  }
  if (least === NONE) return NONE;
  const promising = least;
  lowest = seen(total, noise, promising);
  for (let nth: usize = 0; nth < size; nth++) {
    const face = <usize>load<u8>(faces + nth);
    if (load<u8>(held + face) === 0 || face === promising || load<f64>(worths + face * 8) > lowest) continue;
    const worth = seen(total, noise, face);
    if (worth < lowest || (worth === lowest && face < least)) {
      lowest = worth;
      least = face;
    }
  }
  return least;
}

/** Takes the tile away. Targets that it moved away weigh less, so other losses fall by its own loss at most. */
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
 * The three tiles let go, a byte each to `gone`, −1 where none is left, and how many of them, one after another,
 * could be spared. `noise` holds 36 draws as f64.
 */
export function letGo(rack: usize, noise: usize, gone: usize): u32 {
  readNear(rack);
  listFaces();
  let spare: u32 = 0;
  for (let done: u32 = 0; done < 3; done++) {
    const total = totalWeight();
    const least = done === 0 ? leastOfAll(total, noise) : leastAgain(total, noise);
    store<i8>(gone + done, least === NONE ? -1 : <i8>least);
    if (least === NONE) continue;
    const share: f64 = total === 0 ? 0 : load<f64>(losses + least * 8) / total;
    if (spare === done && share < spared) spare++;
    if (done < 2) takeAway(least);
  }
  return spare;
}

/** The same of `count` racks after one another: three bytes each to `gone`, one each to `spare`. */
export function letGoMany(racks: usize, count: u32, noise: usize, gone: usize, spare: usize): void {
  for (let nth: u32 = 0; nth < count; nth++) {
    store<u8>(spare + nth, <u8>letGo(racks + nth * 36, noise, gone + nth * 3));
  }
}
