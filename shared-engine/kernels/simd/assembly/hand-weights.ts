// What each hand of the card weighs for a rack, and what each tile of the rack adds to that; see `hand-weights/reference.ts`.
import { jokersOf, rowBytes, sumRows } from './card';
import { allOf, largest } from './packed-words';

/**
 * One record for each 16 hands of which one counts: where they stand in a row; then a byte each for their weights, for
 * 1 where they have more tiles for all their places than they can match, and for how many more.
 */
const RECORD: usize = 64;
const WEIGHT: usize = 16;
const TOO_MANY: usize = 32;
const SURPLUS: usize = 48;
/** Bytes of 255 records: two weights of 128 in each lane of 16 bits fit so often. */
const CHUNK: usize = 255 * RECORD;

/** Where the last tile of a face stands in a hand: such a tile is of use where its number exceeds `TOO_MANY`. */
const IN_GROUP: i8 = 1;
const IN_SINGLE: i8 = 2;

/** A hand that nothing fits is so far away. */
const NEVER: u32 = 128;

/** Tiles held now, by face. */
export const held: usize = memory.data(36, 16);

let sums: usize = 0;
let levels: usize = 0;
let records: usize = 0;
let end: usize = 0;
let added: usize = 0;
let tables: usize = 0;
let placesTable: usize = 0;
let groupStep: i32 = 0;
let singleStep: i32 = 0;

/**
 * `room` holds two rows and 64 bytes for each 16 hands; `addedAt` a row of what lowers a hand whatever the rack;
 * `tablesAt` 16 bytes of halvings by tiles matched, then 16 by what singles and pairs limit them to; `places` a table of
 * addresses by face × 16 + count: rows that say where the last of so many tiles stands, 0 where it stands nowhere.
 */
export function setHandWeights(room: usize, addedAt: usize, tablesAt: usize, places: usize): void {
  sums = room;
  levels = room + rowBytes();
  records = levels + rowBytes();
  added = addedAt;
  tables = tablesAt;
  placesTable = places;
}

/** Halvings of a hand's weight when a tile that stands in a group goes, and one in a single or pair. */
export function setWeightSteps(inGroup: i32, inSingle: i32): void {
  groupStep = inGroup;
  singleStep = inSingle;
}

/** Writes how far away each hand is to `levels`; how far the nearest is. */
function writeLevels(rack: usize): u32 {
  sumRows(rack, sums, levels);
  const byMatched = v128.load(tables);
  const byLimit = v128.load(tables, 16);
  const nibble = i8x16.splat(0x0f);
  let least = i8x16.splat(-1);
  for (let at: usize = 0; at < rowBytes(); at += 16) {
    const limit = v128.and(v128.load(sums + at), nibble);
    const away = i8x16.add(
      i8x16.swizzle(byMatched, v128.load(levels + at)),
      i8x16.add(i8x16.swizzle(byLimit, limit), v128.load(added + at)),
    );
    v128.store(levels + at, away);
    least = i8x16.min_u(least, away);
  }
  return 255 - largest(v128.not(least));
}

/** Reads a rack. */
export function readHandWeights(rack: usize): void {
  v128.store(held, v128.load(rack));
  v128.store(held, v128.load(rack, 16), 16);
  store<u32>(held, load<u32>(rack, 32), 32);
  const nearest = writeLevels(rack);
  end = records;
  if (nearest >= NEVER) return;
  const least = i8x16.splat(<i8>nearest);
  const jokers = i8x16.splat(<i8>jokersOf(rack));
  const powers = i8x16(-128, 64, 32, 16, 8, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
  const nibble = i8x16.splat(0x0f);
  for (let at: usize = 0; at < rowBytes(); at += 16) {
    // Hands further behind do not count; beyond the table a swizzle gives 0.
    const weight = i8x16.swizzle(powers, i8x16.sub(v128.load(levels + at), least));
    if (!v128.any_true(weight)) continue;
    const here = v128.load(sums + at);
    const surplus = i8x16.sub(allOf(here, jokers), v128.and(here, nibble));
    store<u32>(end, <u32>at);
    v128.store(end, weight, WEIGHT);
    writeSurplus(end, surplus);
    end += RECORD;
  }
}

/** The sum of four lanes of 32 bits. */
function sumOf(lanes: v128): f64 {
  const low = <u32>i32x4.extract_lane(lanes, 0) + <u32>i32x4.extract_lane(lanes, 1);
  return <f64>(low + <u32>i32x4.extract_lane(lanes, 2) + <u32>i32x4.extract_lane(lanes, 3));
}

/** Where the records end of which the weights fit lanes of 16 bits, two weights a lane. */
function endOfChunk(at: usize): usize {
  return min<usize>(end, at + CHUNK);
}

/** Summed weight of all hands as the rack is now. */
export function totalWeight(): f64 {
  let sum = i32x4.splat(0);
  for (let at = records; at < end; ) {
    let part = i16x8.splat(0);
    for (const chunk = endOfChunk(at); at < chunk; at += RECORD) {
      part = i16x8.add(part, i16x8.extadd_pairwise_i8x16_u(v128.load(at, WEIGHT)));
    }
    sum = i32x4.add(sum, i32x4.extadd_pairwise_i16x8_u(part));
  }
  return sumOf(sum);
}

/** Where the last tile held of a face stands, a byte a hand; 0 where it stands nowhere. */
function placesOf(face: usize): usize {
  return load<u32>(placesTable + ((face << 4) + <usize>min<u32>(load<u8>(held + face), 15)) * 4);
}

/** The weight of the hands that move away when a tile of this face goes. */
export function lossOf(face: usize): f64 {
  const places = placesOf(face);
  if (places === 0) return 0;
  let sum = i32x4.splat(0);
  for (let at = records; at < end; ) {
    let part = i16x8.splat(0);
    for (const chunk = endOfChunk(at); at < chunk; at += RECORD) {
      const place = v128.load(places + <usize>load<u32>(at));
      const hit = v128.and(i8x16.gt_s(place, v128.load(at, TOO_MANY)), v128.load(at, WEIGHT));
      part = i16x8.add(part, i16x8.extadd_pairwise_i8x16_u(hit));
    }
    sum = i32x4.add(sum, i32x4.extadd_pairwise_i16x8_u(part));
  }
  return sumOf(sum);
}

/** Takes one tile away. */
export function take(face: usize): void {
  const places = placesOf(face);
  store<u8>(held + face, load<u8>(held + face) - 1);
  if (places === 0) return;
  const single = i8x16.splat(IN_SINGLE);
  const group = i8x16.splat(IN_GROUP);
  const one = i8x16.splat(1);
  for (let at = records; at < end; at += RECORD) {
    const place = v128.load(places + <usize>load<u32>(at));
    const inGroup = i8x16.eq(place, group);
    const weight = v128.load(at, WEIGHT);
    const surplus = v128.load(at, SURPLUS);
    const tooMany = v128.load(at, TOO_MANY);
    const fewer = v128.bitselect(i8x16.shr_u(weight, singleStep), weight, i8x16.eq(place, single));
    const hit = v128.andnot(inGroup, i8x16.eq(tooMany, one));
    v128.store(at, v128.bitselect(i8x16.shr_u(weight, groupStep), fewer, hit), WEIGHT);
    // The mask is −1 in each lane that it names.
    writeSurplus(at, i8x16.add(surplus, inGroup));
  }
}

function writeSurplus(at: usize, surplus: v128): void {
  v128.store(at, surplus, SURPLUS);
  v128.store(at, v128.and(i8x16.gt_s(surplus, i8x16.splat(0)), i8x16.splat(1)), TOO_MANY);
}
