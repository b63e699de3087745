// One exchange from a step to the close: every seat chooses from its own tiles.
import { allBlind, moveTiles, setPass } from './movement';
import { drawNoise, setNoiseKey } from './noise';
import { selectPass } from './pass-selection';
import { cacheRack, findRack } from './rack-cache';
import { winProbabilities } from './win-probability';

/** Racks cached for one seat at one step; the passes of further ones are computed each time. */
const CACHED: u32 = 32;
/** A rack, the three tiles it would pass and how many of them it can spare. */
const ENTRY: usize = 40;
const NOISE: usize = 36 * 8;

/** Bits of the terms: whether the second Charleston always or never takes place, and what there is none of. */
const ALWAYS_SECOND: u32 = 1;
const NO_SECOND: u32 = 2;
const NO_BLIND: u32 = 4;
const NO_COURTESY: u32 = 8;
/**
 * From this bit on: how many times the noise the other seats misjudge tiles by while the seat that chooses misjudges
 * nothing; 0 where all four misjudge a little.
 */
const NEIGHBOR_NOISE: u32 = 4;

/** Where rollouts end, unless at the close. */
const AFTER_STEP: u32 = 1;
const AFTER_NEXT_PASS: u32 = 2;

const racks: usize = memory.data(144, 16);
const agreed: usize = memory.data(4, 4);
const uncached: usize = memory.data(4, 4);
const misjudgedTiles: usize = memory.data(4, 4);
const neighborNoise: usize = memory.data(288, 16);

let toward: usize = 0;
let blindSteps: usize = 0;
let steps: u32 = 0;
let vote: u32 = 0;
let ask: u32 = 0;
let noise: usize = 0;
let entries: usize = 0;
let cached: usize = 0;
let noiseDrawn: usize = 0;

let seed: u32 = 0;
let chooser: u32 = 0;
let dealer: u32 = 0;
let opening: u32 = 0;
let terms: u32 = 0;
let ending: u32 = 0;
let offered: usize = 0;

/** Bytes of room that `setSchedule` asks for: 4 × steps places. */
export function scheduleBytes(count: u32): u32 {
  return count * 4 * (NOISE + CACHED * ENTRY + 2);
}

/**
 * `table` holds a byte each: step by step, how many seats to the right tiles go; then whether they may be passed
 * blind; then the numbers of the step of the vote and of the courtesy ask.
 */
export function setSchedule(table: usize, count: u32, room: usize): void {
  toward = table;
  blindSteps = table + count;
  steps = count;
  vote = load<u8>(table + count * 2);
  ask = load<u8>(table + count * 2, 1);
  const places = count * 4;
  noise = room;
  entries = noise + places * NOISE;
  cached = entries + places * CACHED * ENTRY;
  noiseDrawn = cached + places;
}

/** What all deals of a batch share, as `setBatch` of the index has it. */
export function setSetting(header: usize, agreedAt: usize): void {
  seed = load<u32>(header);
  chooser = load<u32>(header, 4);
  dealer = load<u32>(header, 8);
  opening = load<u32>(header, 12);
  terms = load<u32>(header, 24);
  ending = load<u32>(header, 28);
  offered = agreedAt;
}

/** Begins a sampled deal: forgets what was computed for the one before. */
export function beginDeal(key: u32): void {
  setNoiseKey(seed, key);
  memory.fill(cached, 0, steps * 8);
}

/** The address of the three tiles that this seat would pass; behind them how many of them it can spare. */
function choosePass(step: u32, seat: u32): usize {
  const place = step * 4 + seat;
  const rack = racks + seat * 36;
  const own = entries + place * CACHED * ENTRY;
  const count: u32 = load<u8>(cached + place);
  const found = findRack(own, count, ENTRY, rack);
  if (found !== 0) return found;
  const values = noise + place * NOISE;
  if (load<u8>(noiseDrawn + place) === 0) {
    if (terms >>> NEIGHBOR_NOISE !== 0 && seat === chooser) memory.fill(values, 0, NOISE);
    else drawNoise(values, seat, step);
    store<u8>(noiseDrawn + place, 1);
  }
  let result = uncached;
  if (count < CACHED) {
    result = cacheRack(own + count * ENTRY, rack);
    store<u8>(cached + place, <u8>(count + 1));
  }
  store<u8>(result, <u8>selectPass(rack, values, result), 3);
  return result;
}

/** The address of the tiles that a neighbor on this seat would pass, after `choosePass`. */
function misjudged(step: u32, seat: u32): usize {
  const values = noise + (step * 4 + seat) * NOISE;
  const times = <f64>(terms >>> NEIGHBOR_NOISE);
  for (let face: usize = 0; face < NOISE; face += 8) {
    store<f64>(neighborNoise + face, times * load<f64>(values + face));
  }
  selectPass(racks + seat * 36, neighborNoise, misjudgedTiles);
  return misjudgedTiles;
}

/** `action` is where the chooser's own action stands at its own step, otherwise 0. */
function pass(step: u32, action: usize): void {
  const mayBeBlind = (terms & NO_BLIND) === 0 && load<u8>(blindSteps + step) !== 0;
  for (let seat: u32 = 0; seat < 4; seat++) {
    const most: u32 = ask < step ? load<u8>(agreed + seat) : 3;
    let from = uncached;
    let given = most;
    if (action !== 0 && seat === chooser) {
      from = action;
      given = load<u8>(action, 3);
    } else if (most > 0) {
      from = choosePass(step, seat);
      if (mayBeBlind) given = min<u32>(most, load<u8>(from, 3));
      if (terms >>> NEIGHBOR_NOISE !== 0 && seat !== chooser) from = misjudged(step, seat);
    }
    setPass(seat, from, given, most - given);
  }
  // Where all would pass blind, the dealer gives its own tiles, or the seat after it where the dealer chooses.
  if (mayBeBlind && allBlind()) {
    const seat = dealer === chooser ? (dealer + 1) & 3 : dealer;
    setPass(seat, choosePass(step, seat), 3, 0);
  }
  moveTiles(racks, load<u8>(toward + step), step);
}

/** By the terms, or by a vote. */
function goesOn(action: usize): bool {
  if ((terms & (ALWAYS_SECOND | NO_SECOND)) !== 0) return (terms & ALWAYS_SECOND) !== 0;
  return allContinue(action);
}

function allContinue(action: usize): bool {
  if (action !== 0 && load<i8>(action, 3) === 0) return false;
  for (let seat: u32 = 0; seat < 4; seat++) {
    if ((action === 0 || seat !== chooser) && load<u8>(choosePass(vote, seat), 3) !== 3) return false;
  }
  return true;
}

/** Whether anybody passes anything by courtesy: the smaller number of each pair holds. */
function agree(action: usize): bool {
  for (let seat: u32 = 0; seat < 4; seat++) {
    const from = action !== 0 && seat === chooser ? action : choosePass(ask, seat);
    store<u8>(agreed + seat, load<u8>(from, 3));
  }
  let any = false;
  for (let seat: u32 = 0; seat < 2; seat++) {
    const smaller = min<u32>(load<u8>(agreed + seat), load<u8>(agreed + seat, 2));
    store<u8>(agreed + seat, <u8>smaller);
    store<u8>(agreed + seat, <u8>smaller, 2);
    if (smaller > 0) any = true;
  }
  return any;
}

/** Plays one action out from the four racks at `from`: the win probabilities where it ends. */
export function playAction(from: usize, action: usize, out: usize): void {
  memory.copy(racks, from, 144);
  store<u32>(agreed, load<u32>(offered));
  let step = opening;
  while (step < steps) {
    const chosen = step === opening ? action : 0;
    if (step === vote) step = goesOn(chosen) ? step + 1 : ask;
    else if (step === ask) step = (terms & NO_COURTESY) === 0 && agree(chosen) ? step + 1 : steps;
    else {
      pass(step, chosen);
      step = ending === AFTER_NEXT_PASS && chosen === 0 ? steps : step + 1;
    }
    if (ending === AFTER_STEP) step = steps;
  }
  winProbabilities(racks, dealer, out);
}
