// The hands nearest to a rack as sets of bits, and what each tile of the rack means to them.
import { jokersOf, rowBytes, sumRows } from './card';
import { allOf, largest } from './packed-words';

/** No hand matches so many tiles. */
const NEVER: u32 = 0xff;

/**
 * One record for each 64 hands among which some are near: where they stand in a set; the hands at each of five
 * distances, the nearest, two behind it and what two removals add; then those that match all their tiles, and those
 * that have one and two tiles more than singles and pairs let them match.
 */
const RECORD: usize = 72;
const MATCH_ALL: usize = 48;
const ONE_MORE: usize = 56;
const TWO_MORE: usize = 64;

/** What a hand at each of the five distances counts, as f64, and what it loses when a tile of it goes. */
const weights: usize = memory.data(40, 16);
const drops: usize = memory.data(40, 16);

/** Tiles held, by face, now and when they were saved. */
export const held: usize = memory.data(36, 16);
const heldSaved: usize = memory.data(36, 16);

let sums: usize = 0;
let matched: usize = 0;
let records: usize = 0;
let recordsSaved: usize = 0;
let end: usize = 0;
let setOf: usize = 0;
/** Whether a tile has been taken away, so that the last two distances count. */
let deep = false;

/**
 * `room` holds a row for sums, a row for tiles matched and twice 72 bytes for each 64 hands. `sets` is a table of
 * addresses by face × 16 + count: pairs of 64-bit words, the hands where the last of so many tiles stands in a
 * single or pair, and those where it stands in a group; 0 where it stands nowhere.
 */
export function setNearHands(room: usize, sets: usize): void {
  sums = room;
  matched = room + rowBytes();
  records = matched + rowBytes();
  recordsSaved = records + (rowBytes() >>> 6) * RECORD;
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

/** Tiles that 16 hands have for any place beyond those they match. */
function unmatchedOf(at: usize, jokers: v128, matchedHere: v128): v128 {
  return i8x16.sub(allOf(v128.load(at), jokers), matchedHere);
}

/** Reads a rack and finds its near hands. */
export function readNearHands(rack: usize): void {
  v128.store(held, v128.load(rack));
  v128.store(held, v128.load(rack, 16), 16);
  store<u32>(held, load<u32>(rack, 32), 32);
  const jokers = i8x16.splat(<i8>jokersOf(rack));
  const best = largest(sumRows(rack, sums, matched));
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
    // Where some tiles are unmatched, singles and pairs set the limit.
    const here = sums + at;
    a = unmatchedOf(here, jokers, a);
    b = unmatchedOf(here + 16, jokers, b);
    c = unmatchedOf(here + 32, jokers, c);
    d = unmatchedOf(here + 48, jokers, d);
    store<u64>(end, at >>> 2);
    store<u64>(end, first, 8);
    store<u64>(end, next, 16);
    store<u64>(end, last, 24);
    store<u64>(end, 0, 32);
    store<u64>(end, 0, 40);
    store<u64>(end, bitsEqual(a, b, c, d, i8x16.splat(0)), MATCH_ALL);
    store<u64>(end, bitsEqual(a, b, c, d, one), ONE_MORE);
    store<u64>(end, bitsEqual(a, b, c, d, two), TWO_MORE);
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

/** Summed weight of the near hands as the rack is now; whole numbers, so their order does not matter. */
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

/** How much less `totalWeight` is when a tile of this face goes. */
export function dropOf(face: usize): f64 {
  const set = setNow(face);
  if (set === 0) return 0;
  let first: u64 = 0;
  let second: u64 = 0;
  let third: u64 = 0;
  let fourth: u64 = 0;
  let fifth: u64 = 0;
  for (let at = records; at < end; at += RECORD) {
    const pair = set + <usize>load<u64>(at);
    const hit = load<u64>(pair) | (load<u64>(pair, 8) & load<u64>(at, MATCH_ALL));
    first += popcnt(hit & load<u64>(at, 8));
    second += popcnt(hit & load<u64>(at, 16));
    third += popcnt(hit & load<u64>(at, 24));
    if (!deep) continue;
    fourth += popcnt(hit & load<u64>(at, 32));
    fifth += popcnt(hit & load<u64>(at, 40));
  }
  return weigh(drops, first, second, third, fourth, fifth);
}

/** Saves the rack and its near hands, which were just read. */
export function save(): void {
  memory.copy(recordsSaved, records, end - records);
  memory.copy(heldSaved, held, 36);
}

/** Restores what was saved. */
export function restore(): void {
  memory.copy(records, recordsSaved, end - records);
  memory.copy(held, heldSaved, 36);
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
    const limit = load<u64>(at, MATCH_ALL);
    const hit = load<u64>(pair) | (group & limit);
    const rest = ~hit;
    for (let level: usize = 40; level > 8; level -= 8) {
      const from = load<u64>(at + level - 8) & hit;
      store<u64>(at + level, (load<u64>(at + level) & rest) | from);
    }
    store<u64>(at, load<u64>(at, 8) & rest, 8);
    const next = load<u64>(at, ONE_MORE);
    const last = load<u64>(at, TWO_MORE);
    store<u64>(at, limit | (group & next), MATCH_ALL);
    store<u64>(at, (next & ~group) | (last & group), ONE_MORE);
    store<u64>(at, last & ~group, TWO_MORE);
  }
}
