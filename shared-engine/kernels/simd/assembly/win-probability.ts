// The chance in 100 that a seat wins the play, from the features of its rack and the fitted model.
import { features, readFeatures } from './features';
import { cacheRack, findRack } from './rack-cache';

const FEATURES: usize = 5;
/** Racks cached for one seat: a rack, four bytes that align, its win probability. */
const CACHED: u32 = 64;
const ENTRY: usize = 48;

const entries: usize = memory.data(12288, 16);
const cached: usize = memory.data(4, 4);

let model: usize = 0;
let knots: i32 = 0;

/**
 * `fitted` holds as f64 the start, five weights, four weights by distance from the dealer, then `count` scores and as
 * many win probabilities.
 */
export function setWinModel(fitted: usize, count: u32): void {
  model = fitted;
  knots = count;
}

/** Forgets the racks cached. */
export function clearWinProbabilities(): void {
  store<u32>(cached, 0);
}

function valueAt(score: f64): f64 {
  const scores = model + 80;
  const values = scores + ((<usize>knots) << 3);
  const last = knots - 1;
  if (score <= load<f64>(scores)) return load<f64>(values);
  if (score >= load<f64>(scores + ((<usize>last) << 3))) return load<f64>(values + ((<usize>last) << 3));
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (load<f64>(scores + ((<usize>middle) << 3)) <= score) low = middle;
    else high = middle;
  }
  const from = scores + ((<usize>low) << 3);
  const value = values + ((<usize>low) << 3);
  const share = (score - load<f64>(from)) / (load<f64>(from, 8) - load<f64>(from));
  return load<f64>(value) + share * (load<f64>(value, 8) - load<f64>(value));
}

/** For a rack so many seats to the right of the dealer. */
export function winProbability(rack: usize, place: u32): f64 {
  readFeatures(rack);
  let score = load<f64>(model) + load<f64>(model + 48 + place * 8);
  for (let i: usize = 0; i < FEATURES; i++) {
    score += load<f64>(model + 8 + i * 8) * load<f64>(features + i * 8);
  }
  return valueAt(score);
}

/** For four racks after one another, to `out`. */
export function winProbabilities(racks: usize, dealer: u32, out: usize): void {
  for (let seat: u32 = 0; seat < 4; seat++) {
    const rack = racks + seat * 36;
    const own = entries + seat * CACHED * ENTRY;
    const count: u32 = load<u8>(cached + seat);
    const found = findRack(own, count, ENTRY, rack);
    const value = found === 0 ? winProbability(rack, (seat + 4 - dealer) & 3) : load<f64>(found, 4);
    if (found === 0 && count < CACHED) {
      store<f64>(cacheRack(own + count * ENTRY, rack), value, 4);
      store<u8>(cached + seat, <u8>(count + 1));
    }
    store<f64>(out + seat * 8, value);
  }
}
