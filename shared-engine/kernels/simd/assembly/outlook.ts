// Outlook: what a rack is worth in the play that follows, from a few measures of it and a fitted model.
import { addUp, gather, jokersOf, largest, rowBytes } from './card';
import { log2 } from './log2';
import { findRack, keepRack } from './rack-memory';

const MEASURES: usize = 5;
/** Racks remembered for one seat: a rack, four bytes that align, its worth. */
const REMEMBERED: u32 = 64;
const LOOK: usize = 48;
/** Faces wanted by one target: their number, whether its line is concealed, then pairs of face and number. */
const WANTS: usize = 32;
/** Weights by packed byte of an open line, then of a concealed one. */
const WEIGHTS: usize = 2 * 256 * 8;
const MOST_JOKERS: u32 = 8;
/** First target, target after the last, and 1 where concealed: 32 bits each. */
const STRETCH: usize = 12;

const looks: usize = memory.data(12288, 16);
const known: usize = memory.data(4, 4);
const values: usize = memory.data(40, 16);

let sums: usize = 0;
let matched: usize = 0;
let reachWeights: usize = 0;
let stretches: usize = 0;
let stretchEnd: usize = 0;
let wants: usize = 0;
let copies: usize = 0;
let model: usize = 0;
let knots: i32 = 0;
let padding: f64 = 0;
let centre: f64 = 0;
let spread: f64 = 1;

/** `room` holds a row for sums and a row for tiles matched; `extra` is what the lanes without a target add. */
export function setReach(room: usize, weights: usize, list: usize, count: u32, extra: f64): void {
  sums = room;
  matched = room + rowBytes();
  reachWeights = weights;
  stretches = list;
  stretchEnd = list + count * STRETCH;
  padding = extra;
}

/**
 * `wanted` has 32 bytes a target, `copiesOf` a byte a face. `fitted` holds as f64 the start, five weights, four
 * places, then `count` scores and as many chances.
 */
export function setOutlook(
  wanted: usize,
  copiesOf: usize,
  fitted: usize,
  count: u32,
  middle: f64,
  width: f64,
): void {
  wants = wanted;
  copies = copiesOf;
  model = fitted;
  knots = count;
  centre = middle;
  spread = width;
}

/** Forgets the racks looked at. */
export function beginLooks(): void {
  store<u32>(known, 0);
}

function weightSum(jokers: u32): f64 {
  const base = reachWeights + min<u32>(jokers, MOST_JOKERS) * WEIGHTS;
  let a = padding;
  let b: f64 = 0;
  let c: f64 = 0;
  let d: f64 = 0;
  for (let list = stretches; list < stretchEnd; list += STRETCH) {
    const weights = base + load<u32>(list, 8) * 2048;
    const to = sums + load<u32>(list, 4);
    let at = sums + load<u32>(list);
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
export function reachOf(rack: usize): f64 {
  const jokers = jokersOf(rack);
  addUp(gather(rack), jokers, sums, 0);
  return log2(weightSum(jokers) + 1);
}

let pairLack: i32 = 0;
let concealed: i32 = 0;
let missing: i32 = 0;
let live: i32 = 0;

function addNearest(rack: usize, target: usize): void {
  pairLack += 14 - (load<u8>(sums + target) & 15);
  let want = wants + target * WANTS;
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

/** The five measures of a rack, to `values`. */
function measure(rack: usize): void {
  const jokers = jokersOf(rack);
  const best = max<u32>(1, largest(addUp(gather(rack), jokers, sums, matched)));
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
  store<f64>(values, (log2(weightSum(jokers) + 1) - centre) / spread);
  store<f64>(values, <f64>jokers, 8);
  store<f64>(values, <f64>pairLack / <f64>count, 16);
  store<f64>(values, <f64>concealed / <f64>count, 24);
  store<f64>(values, missing === 0 ? 0 : <f64>live / <f64>missing, 32);
}

function chanceAt(score: f64): f64 {
  const scores = model + 80;
  const chances = scores + ((<usize>knots) << 3);
  const last = knots - 1;
  if (score <= load<f64>(scores)) return load<f64>(chances);
  if (score >= load<f64>(scores + ((<usize>last) << 3))) return load<f64>(chances + ((<usize>last) << 3));
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (load<f64>(scores + ((<usize>middle) << 3)) <= score) low = middle;
    else high = middle;
  }
  const from = scores + ((<usize>low) << 3);
  const chance = chances + ((<usize>low) << 3);
  const share = (score - load<f64>(from)) / (load<f64>(from, 8) - load<f64>(from));
  return load<f64>(chance) + share * (load<f64>(chance, 8) - load<f64>(chance));
}

/** Chance in 100 for a rack, so many seats to the right of the dealer. */
export function outlookOf(rack: usize, place: u32): f64 {
  measure(rack);
  let score = load<f64>(model) + load<f64>(model + 48 + place * 8);
  for (let i: usize = 0; i < MEASURES; i++) {
    score += load<f64>(model + 8 + i * 8) * load<f64>(values + i * 8);
  }
  return chanceAt(score);
}

/** The outlooks of four racks after one another, to `out`. */
export function outlooks(racks: usize, dealer: u32, out: usize): void {
  for (let seat: u32 = 0; seat < 4; seat++) {
    const rack = racks + seat * 36;
    const entries = looks + seat * REMEMBERED * LOOK;
    const count: u32 = load<u8>(known + seat);
    const found = findRack(entries, count, LOOK, rack);
    const worth = found === 0 ? outlookOf(rack, (seat + 4 - dealer) & 3) : load<f64>(found, 4);
    if (found === 0 && count < REMEMBERED) {
      store<f64>(keepRack(entries + count * LOOK, rack), worth, 4);
      store<u8>(known + seat, <u8>(count + 1));
    }
    store<f64>(out + seat * 8, worth);
  }
}
