// One exchange from a step to the close: every seat chooses from its own tiles.
import { letGo } from './letting-go';
import { allBlind, moveTiles, putDown } from './movement';
import { misjudge } from './noise';
import { outlooks } from './outlook';
import { findRack, keepRack } from './rack-memory';

/** Racks remembered for one seat at one step; further ones are worked out anew. */
const REMEMBERED: u32 = 32;
/** A rack, the three tiles it would let go and how many of them it can spare. */
const CHOICE: usize = 40;
const NOISE: usize = 36 * 8;

const racks: usize = memory.data(144, 16);
const agreed: usize = memory.data(4, 4);
const loose: usize = memory.data(4, 4);

let toward: usize = 0;
let unseen: usize = 0;
let steps: u32 = 0;
let vote: u32 = 0;
let ask: u32 = 0;
let noise: usize = 0;
let choices: usize = 0;
let known: usize = 0;
let noisy: usize = 0;

let seed: u32 = 0;
let chooser: u32 = 0;
let dealer: u32 = 0;
let opening: u32 = 0;
let offered: usize = 0;
let world: u32 = 0;

/** Bytes of room that `setSchedule` asks for: 4 × steps places. */
export function roomForPlaces(count: u32): u32 {
  return count * 4 * (NOISE + REMEMBERED * CHOICE + 2);
}

/** `table` holds, step by step, whither tiles go (0–3 to the right), then whether they may go on unseen. */
export function setSchedule(table: usize, count: u32, voteStep: u32, askStep: u32, room: usize): void {
  toward = table;
  unseen = table + count;
  steps = count;
  vote = voteStep;
  ask = askStep;
  const places = count * 4;
  noise = room;
  choices = noise + places * NOISE;
  known = choices + places * REMEMBERED * CHOICE;
  noisy = known + places;
}

/** What all worlds of a batch share; `agreedAt` holds the courtesy numbers agreed on, a byte a seat. */
export function setSetting(seedWord: u32, seat: u32, dealerSeat: u32, step: u32, agreedAt: usize): void {
  seed = seedWord;
  chooser = seat;
  dealer = dealerSeat;
  opening = step;
  offered = agreedAt;
}

/** A new world: forgets what was worked out for the last one. */
export function beginWorld(key: u32): void {
  world = key;
  memory.fill(known, 0, steps * 8);
}

/** Where the three tiles stand that this seat would let go; behind them how many of them it can spare. */
function choose(step: u32, seat: u32): usize {
  const place = step * 4 + seat;
  const rack = racks + seat * 36;
  const entries = choices + place * REMEMBERED * CHOICE;
  const count: u32 = load<u8>(known + place);
  const found = findRack(entries, count, CHOICE, rack);
  if (found !== 0) return found;
  const draws = noise + place * NOISE;
  if (load<u8>(noisy + place) === 0) {
    misjudge(draws, seed, world, seat, step);
    store<u8>(noisy + place, 1);
  }
  let result = loose;
  if (count < REMEMBERED) {
    result = keepRack(entries + count * CHOICE, rack);
    store<u8>(known + place, <u8>(count + 1));
  }
  store<u8>(result, <u8>letGo(rack, draws, result), 3);
  return result;
}

/** `act` is where the chooser's own act stands at its own step, otherwise 0. */
function pass(step: u32, act: usize): void {
  const mayBeBlind = load<u8>(unseen + step) !== 0;
  for (let seat: u32 = 0; seat < 4; seat++) {
    const most: u32 = ask < step ? load<u8>(agreed + seat) : 3;
    let from = loose;
    let given = most;
    if (act !== 0 && seat === chooser) {
      from = act;
      given = load<u8>(act, 3);
    } else if (most > 0) {
      from = choose(step, seat);
      if (mayBeBlind) given = min<u32>(most, load<u8>(from, 3));
    }
    putDown(seat, from, given, most - given);
  }
  // Somebody must begin: the dealer, or the seat after it where the dealer chooses.
  if (mayBeBlind && allBlind()) {
    const seat = dealer === chooser ? (dealer + 1) & 3 : dealer;
    putDown(seat, choose(step, seat), 3, 0);
  }
  moveTiles(racks, load<u8>(toward + step), seed, world, step);
}

function goesOn(act: usize): bool {
  if (act !== 0 && load<i8>(act, 3) === 0) return false;
  for (let seat: u32 = 0; seat < 4; seat++) {
    if ((act === 0 || seat !== chooser) && load<u8>(choose(vote, seat), 3) !== 3) return false;
  }
  return true;
}

function agree(act: usize): bool {
  for (let seat: u32 = 0; seat < 4; seat++) {
    const from = act !== 0 && seat === chooser ? act : choose(ask, seat);
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

/** Plays one act out from the four racks at `from`: eight outlooks to `out`, after the close and after the act. */
export function playOut(from: usize, act: usize, out: usize): void {
  memory.copy(racks, from, 144);
  store<u32>(agreed, load<u32>(offered));
  let step = opening;
  while (step < steps) {
    const chosen = step === opening ? act : 0;
    if (step === vote) step = goesOn(chosen) ? step + 1 : ask;
    else if (step === ask) step = agree(chosen) ? step + 1 : steps;
    else {
      pass(step, chosen);
      step++;
    }
    if (chosen !== 0) outlooks(racks, dealer, out + 32);
  }
  outlooks(racks, dealer, out);
}
