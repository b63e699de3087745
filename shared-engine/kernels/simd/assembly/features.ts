// The features of a rack from which a chance to win is computed; `analysis/win-probability/features.ts` says what they are.
import { jokersOf, rowBytes, sumRows } from './card';
import { largest } from './packed-words';

/** Faces wanted by one hand: their number, whether its pattern is concealed, then pairs of face and number. */
const WANTS: usize = 32;
/** Weights by packed byte of an exposed pattern, then of a concealed one. */
const WEIGHTS: usize = 2 * 256 * 8;
const MOST_JOKERS: u32 = 8;
/** First hand, hand after the last, and 1 where concealed: 32 bits each. */
const SPAN: usize = 12;

/** The seven features of the rack read last, as f64. */
export const features: usize = memory.data(56, 16);

let sums: usize = 0;
let matched: usize = 0;
let wants: usize = 0;
let copies: usize = 0;
let reachWeights: usize = 0;
let spans: usize = 0;
let spanEnd: usize = 0;
let center: f64 = 0;
let spread: f64 = 1;

/** `room` holds a row for sums and a row for tiles matched; `wanted` 32 bytes a hand, `copiesOf` a byte a face. */
export function setFeatures(room: usize, wanted: usize, copiesOf: usize): void {
  sums = room;
  matched = room + rowBytes();
  wants = wanted;
  copies = copiesOf;
}

/** `list` holds `count` spans of hands. */
export function setReach(weights: usize, list: usize, count: u32): void {
  reachWeights = weights;
  spans = list;
  spanEnd = list + count * SPAN;
}

/** What makes reach comparable from card to card. */
export function setScale(middle: f64, width: f64): void {
  center = middle;
  spread = width;
}

/** Base-2 logarithm of a positive number, operation by operation as in `kernels/portable-math.ts`. */
function log2(value: f64): f64 {
  let exponent: f64 = 0;
  let rest = value;
  for (; rest >= Math.SQRT2; rest /= 2) exponent++;
  for (; rest < Math.SQRT2 / 2; rest *= 2) exponent--;
  const z = (rest - 1) / (rest + 1);
  let sum: f64 = 0;
  for (let power: f64 = 23; power > 0; power -= 2) sum = sum * z * z + 1 / power;
  return exponent + (2 * z * sum) / Math.LN2;
}

function weightSum(jokers: u32): f64 {
  const base = reachWeights + min<u32>(jokers, MOST_JOKERS) * WEIGHTS;
  let a: f64 = 0;
  let b: f64 = 0;
  let c: f64 = 0;
  let d: f64 = 0;
  for (let span = spans; span < spanEnd; span += SPAN) {
    const weights = base + load<u32>(span, 8) * 2048;
    const to = sums + load<u32>(span, 4);
    let at = sums + load<u32>(span);
    // Whole numbers below 2⁵³, so that their order does not matter.
    for (; at + 4 <= to; at += 4) {
      a += load<f64>(weights + ((<usize>load<u8>(at)) << 3));
      b += load<f64>(weights + ((<usize>load<u8>(at, 1)) << 3));
      c += load<f64>(weights + ((<usize>load<u8>(at, 2)) << 3));
      d += load<f64>(weights + ((<usize>load<u8>(at, 3)) << 3));
    }
    for (; at < to; at++) a += load<f64>(weights + ((<usize>load<u8>(at)) << 3));
  }
  return a + b + (c + d);
}

/** Log₂ of the weight of the whole card within reach of a rack. */
export function reach(rack: usize): f64 {
  sumRows(rack, sums, 0);
  return log2(weightSum(jokersOf(rack)) + 1);
}

let pairLack: i32 = 0;
let concealed: i32 = 0;
let missing: i32 = 0;
let live: i32 = 0;

function addNearest(rack: usize, hand: usize): void {
  pairLack += 14 - (load<u8>(sums + hand) & 15);
  let want = wants + hand * WANTS;
  const end = want + 2 + ((<usize>load<u8>(want)) << 1);
  concealed += load<u8>(want, 1);
  for (want += 2; want < end; want += 2) {
    const face = <usize>load<u8>(want);
    const have = <i32>load<u8>(rack + face);
    const lack = max<i32>(0, <i32>load<u8>(want, 1) - have);
    missing += lack;
    live += lack * (<i32>load<u8>(copies + face) - have);
  }
}

/** Writes the features of a rack to `features`. */
export function readFeatures(rack: usize): void {
  const jokers = jokersOf(rack);
  const best = max<u32>(1, largest(sumRows(rack, sums, matched)));
  const bar = i8x16.splat(<i8>best);
  pairLack = 0;
  concealed = 0;
  missing = 0;
  live = 0;
  let count = 0;
  for (let at: usize = 0; at < rowBytes(); at += 16) {
    let bits = <u32>i8x16.bitmask(i8x16.eq(v128.load(matched + at), bar));
    count += <i32>popcnt(bits);
    for (; bits !== 0; bits &= bits - 1) addNearest(rack, at + <usize>ctz(bits));
  }
  store<f64>(features, (log2(weightSum(jokers) + 1) - center) / spread);
  store<f64>(features, <f64>jokers, 8);
  store<f64>(features, <f64>pairLack / <f64>max<i32>(1, count), 16);
  store<f64>(features, <f64>concealed / <f64>max<i32>(1, count), 24);
  store<f64>(features, missing === 0 ? 0 : <f64>live / <f64>missing, 32);
  store<f64>(features, <f64>(jokers * jokers), 40);
  store<f64>(features, load<f64>(features) * <f64>jokers, 48);
}
