// What each rack weighs by the fitted model, and the four chances in 100 to win that follow; see `TableValue`.
import { features, readFeatures } from './features';
import { cacheRack, findRack } from './rack-cache';

const FEATURES: usize = 7;
/** Racks cached for one seat: a rack, four bytes that align, its weight. */
const CACHED: u32 = 64;
const ENTRY: usize = 48;

const entries: usize = memory.data(12288, 16);
const cached: usize = memory.data(4, 4);
const weights: usize = memory.data(32, 16);

let model: usize = 0;
let powers: usize = 0;

/**
 * `fitted` holds as f64 the weight of the wall, the ceiling of scores, four offsets by distance from the dealer, and a
 * weight for each feature; `powersAt` e to the power of −n/16 for n from 0 to 1600.
 */
export function setWinModel(fitted: usize, powersAt: usize): void {
  model = fitted;
  powers = powersAt;
}

/** Forgets the racks cached. */
export function clearWeights(): void {
  store<u32>(cached, 0);
}

/** e to the power of −x for 0 ≤ x ≤ 100, operation by operation as in `kernels/portable-math.ts`. */
function expMinus(x: f64): f64 {
  const step = Math.floor(x * 16.0);
  const r: f64 = step / 16.0 - x;
  const series: f64 =
    1.0 +
    r *
      (1.0 +
        r *
          (1.0 / 2.0 +
            r * (1.0 / 6.0 + r * (1.0 / 24.0 + r * (1.0 / 120.0 + r * (1.0 / 720.0 + r * (1.0 / 5040.0)))))));
  return load<f64>(powers + ((<usize>step) << 3)) * series;
}

/** For a rack so many seats to the right of the dealer. */
export function weightOfRack(rack: usize, place: u32): f64 {
  readFeatures(rack);
  let score = load<f64>(model + 16 + place * 8);
  for (let i: usize = 0; i < FEATURES; i++) {
    score += load<f64>(model + 48 + i * 8) * load<f64>(features + i * 8);
  }
  return expMinus(max<f64>(0, min<f64>(100, load<f64>(model, 8) - score)));
}

/** The chances of four racks after one another, to `out`. */
export function winProbabilities(racks: usize, dealer: u32, out: usize): void {
  for (let seat: u32 = 0; seat < 4; seat++) {
    const rack = racks + seat * 36;
    const own = entries + seat * CACHED * ENTRY;
    const count: u32 = load<u8>(cached + seat);
    const found = findRack(own, count, ENTRY, rack);
    const weight = found === 0 ? weightOfRack(rack, (seat + 4 - dealer) & 3) : load<f64>(found, 4);
    if (found === 0 && count < CACHED) {
      store<f64>(cacheRack(own + count * ENTRY, rack), weight, 4);
      store<u8>(cached + seat, <u8>(count + 1));
    }
    store<f64>(weights + seat * 8, weight);
  }
  const total =
    load<f64>(weights) +
    load<f64>(weights, 8) +
    (load<f64>(weights, 16) + load<f64>(weights, 24)) +
    load<f64>(model);
  for (let seat: usize = 0; seat < 4; seat++) {
    store<f64>(out + seat * 8, (100.0 * load<f64>(weights + seat * 8)) / total);
  }
}
