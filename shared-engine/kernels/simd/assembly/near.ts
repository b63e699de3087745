// The targets nearest to a rack as sets of bits, and what each tile of the rack means to them.
import { addUp, gather, jokersOf, largest, rowBytes } from './card';

/** No target matches so many tiles. */
const NEVER: u32 = 0xff;

/**
 * One record for each 64 targets among which some are near: where they stand in a set; the targets at each of five
 * distances, the nearest, two behind it and what two removals add; then those that match all their places hold (B),
 * and those whose places hold one and two tiles more than singles and pairs let them match.
 */
const RECORD: usize = 72;
const B: usize = 48;
const ABOVE: usize = 56;
const FAR_ABOVE: usize = 64;

/** What a target at each of the five distances counts, as f64, and what it loses when a tile of it goes. */
const weights: usize = memory.data(40, 16);
const drops: usize = memory.data(40, 16);

/** Tiles held, by face, now and when they were remembered. */
export const held: usize = memory.data(36, 16);
const heldThen: usize = memory.data(36, 16);

let sums: usize = 0;
let matched: usize = 0;
let records: usize = 0;
let recordsThen: usize = 0;
let end: usize = 0;
let setOf: usize = 0;
/** Whether a tile has been taken away, so that the last two distances count. */
let deep = false;

/**
 * `room` holds a row for sums, a row for tiles matched and twice 72 bytes for each 64 targets. `sets` is a table of
 * addresses by face × 16 + count: pairs of 64-bit words, the targets where the last of so many tiles stands in a
 * single or pair, and those where it stands in a group; 0 where it stands nowhere.
 */
export function setNear(room: usize, sets: usize): void {
  sums = room;
  matched = room + rowBytes();
  records = matched + rowBytes();
  recordsThen = records + (rowBytes() >>> 6) * RECORD;
  setOf = sets;
}

export function setWeight(level: usize, weight: f64, further: f64): void {
  store<f64>(weights + level * 8, weight);
  store<f64>(drops + level * 8, weight - further);
}

function bitsOf(a: v128, b: v128, c: v128, d: v128): u64 {
  const low = <u32>i8x16.bitmask(a) | ((<u32>i8x16.bitmask(b)) << 16);
  const high = <u32>i8x16.bitmask(c) | ((<u32>i8x16.bitmask(d)) << 16);
  return <u64>low | ((<u64>high) << 32);
}

function levelValue(best: u32, level: u32): v128 {
  return i8x16.splat(<i8>(best > level ? best - level : NEVER));
}

function bitsEqual(a: v128, b: v128, c: v128, d: v128, value: v128): u64 {
  return bitsOf(i8x16.eq(a, value), i8x16.eq(b, value), i8x16.eq(c, value), i8x16.eq(d, value));
}

/** All places and jokers of 16 targets, less what they match. */
function above(at: usize, jokers: v128, matchedHere: v128): v128 {
  const all = i8x16.add(v128.and(i16x8.shr_u(v128.load(at), 4), i8x16.splat(0x0f)), jokers);
  return i8x16.sub(all, matchedHere);
}

/** Reads a rack and finds its near targets. */
export function readNear(rack: usize): void {
  v128.store(held, v128.load(rack));
  v128.store(held, v128.load(rack, 16), 16);
  store<u32>(held, load<u32>(rack, 32), 32);
  const jokers = i8x16.splat(<i8>jokersOf(rack));
  const best = largest(addUp(gather(rack), jokersOf(rack), sums, matched));
  const nearest = levelValue(best, 0);
  const second = levelValue(best, 1);
  const third = levelValue(best, 2);
  const one = i8x16.splat(1);
  const two = i8x16.splat(2);
  deep = false;
  end = records;
  for (let at: usize = 0; at < rowBytes(); at += 64) {
    let a = v128.load(matched + at);
    let b = v128.load(matched + at, 16);
    let c = v128.load(matched + at, 32);
    let d = v128.load(matched + at, 48);
    const first = bitsEqual(a, b, c, d, nearest);
    const next = bitsEqual(a, b, c, d, second);
    const last = bitsEqual(a, b, c, d, third);
    if ((first | next | last) === 0) continue;
    // What all places match beyond the limit; singles and pairs set the limit where this is not 0.
    const here = sums + at;
    a = above(here, jokers, a);
    b = above(here + 16, jokers, b);
    c = above(here + 32, jokers, c);
    d = above(here + 48, jokers, d);
    store<u64>(end, at >>> 2);
    store<u64>(end, first, 8);
    store<u64>(end, next, 16);
    store<u64>(end, last, 24);
    store<u64>(end, 0, 32);
    store<u64>(end, 0, 40);
    store<u64>(end, bitsEqual(a, b, c, d, i8x16.splat(0)), B);
    store<u64>(end, bitsEqual(a, b, c, d, one), ABOVE);
    store<u64>(end, bitsEqual(a, b, c, d, two), FAR_ABOVE);
    end += RECORD;
  }
}

function setNow(face: usize): usize {
  return load<u32>(setOf + ((face << 4) + <usize>min<u32>(load<u8>(held + face), 15)) * 4);
}

function weigh(by: usize, first: u64, second: u64, third: u64, fourth: u64, fifth: u64): f64 {
  return (
    <f64>first * load<f64>(by) +
    <f64>second * load<f64>(by, 8) +
    <f64>third * load<f64>(by, 16) +
    <f64>fourth * load<f64>(by, 24) +
    <f64>fifth * load<f64>(by, 32)
  );
}

/** Summed weight of the near targets as the rack is now; whole numbers, so their order does not matter. */
export function totalWeight(): f64 {
  let first: u64 = 0;
  let second: u64 = 0;
  let third: u64 = 0;
  let fourth: u64 = 0;
  let fifth: u64 = 0;
  for (let at = records; at < end; at += RECORD) {
    first += popcnt(load<u64>(at, 8));
    second += popcnt(load<u64>(at, 16));
    third += popcnt(load<u64>(at, 24));
    if (!deep) continue;
    fourth += popcnt(load<u64>(at, 32));
    fifth += popcnt(load<u64>(at, 40));
  }
  return weigh(weights, first, second, third, fourth, fifth);
}

function sumOfHit(by: usize, face: usize): f64 {
  const set = setNow(face);
  if (set === 0) return 0;
  let first: u64 = 0;
  let second: u64 = 0;
  let third: u64 = 0;
  let fourth: u64 = 0;
  let fifth: u64 = 0;
  for (let at = records; at < end; at += RECORD) {
    const pair = set + <usize>load<u64>(at);
    const hit = load<u64>(pair) | (load<u64>(pair, 8) & load<u64>(at, B));
    first += popcnt(hit & load<u64>(at, 8));
    second += popcnt(hit & load<u64>(at, 16));
    third += popcnt(hit & load<u64>(at, 24));
    if (!deep) continue;
    fourth += popcnt(hit & load<u64>(at, 32));
    fifth += popcnt(hit & load<u64>(at, 40));
  }
  return weigh(by, first, second, third, fourth, fifth);
}

/** The part of `totalWeight` whose targets move one tile away when a tile of this face goes. */
export function lossOf(face: usize): f64 {
  return sumOfHit(weights, face);
}

/** How much less `totalWeight` is when a tile of this face goes. */
export function dropOf(face: usize): f64 {
  return sumOfHit(drops, face);
}

/** Remembers the rack and its near targets, which were just read. */
export function remember(): void {
  memory.copy(recordsThen, records, end - records);
  memory.copy(heldThen, held, 36);
}

/** Brings back what was remembered. */
export function bringBack(): void {
  memory.copy(records, recordsThen, end - records);
  memory.copy(held, heldThen, 36);
  deep = false;
}

/** Takes one tile away; two may go. */
export function take(face: usize): void {
  const set = setNow(face);
  store<u8>(held + face, load<u8>(held + face) - 1);
  if (set === 0) return;
  deep = true;
  for (let at = records; at < end; at += RECORD) {
    const pair = set + <usize>load<u64>(at);
    const group = load<u64>(pair, 8);
    const limit = load<u64>(at, B);
    const hit = load<u64>(pair) | (group & limit);
    const stay = ~hit;
    for (let level: usize = 40; level > 8; level -= 8) {
      const from = load<u64>(at + level - 8) & hit;
      store<u64>(at + level, (load<u64>(at + level) & stay) | from);
    }
    store<u64>(at, load<u64>(at, 8) & stay, 8);
    const next = load<u64>(at, ABOVE);
    const last = load<u64>(at, FAR_ABOVE);
    store<u64>(at, limit | (group & next), B);
    store<u64>(at, (next & ~group) | (last & group), ABOVE);
    store<u64>(at, last & ~group, FAR_ABOVE);
  }
}
