// Which tiles a seat lets go: the least useful to its near targets, as it misjudges them.
import { held, lossOf, readNear, take, totalWeight } from './near';

const JOKER: usize = 35;

let misjudged: f64 = 0;
let spared: f64 = 0;

/** How much weight a unit of noise is mistaken for, and the share below which a tile can be spared. */
export function setCare(noiseWeight: f64, spareShare: f64): void {
  misjudged = noiseWeight;
  spared = spareShare;
}

/**
 * The three tiles let go, a byte each to `gone`, −1 where none is left, and how many of them, one after another,
 * could be spared. `noise` holds 36 draws as f64.
 */
export function letGo(rack: usize, noise: usize, gone: usize): u32 {
  readNear(rack);
  let spare: u32 = 0;
  for (let done: u32 = 0; done < 3; done++) {
    const total = totalWeight();
    let least: usize = JOKER;
    let lowest = Infinity;
    let share: f64 = 0;
    for (let face: usize = 0; face < JOKER; face++) {
      if (load<u8>(held + face) === 0) continue;
      const own: f64 = total === 0 ? 0 : lossOf(face) / total;
      const seen = own - misjudged * load<f64>(noise + face * 8);
      if (seen < lowest) {
        lowest = seen;
        least = face;
        share = own;
      }
    }
    if (least === JOKER) {
      store<i8>(gone + done, -1);
      continue;
    }
    store<i8>(gone + done, <i8>least);
    if (spare === done && share < spared) spare++;
    if (done < 2) take(least);
  }
  return spare;
}

/** The same of `count` racks after one another: three bytes each to `gone`, one each to `spare`. */
export function letGoMany(racks: usize, count: u32, noise: usize, gone: usize, spare: usize): void {
  for (let nth: u32 = 0; nth < count; nth++) {
    store<u8>(spare + nth, <u8>letGo(racks + nth * 36, noise, gone + nth * 3));
  }
}
