// One exchange from a step to the close, on four racks of 36 counts: every seat chooses from its own tiles.
import type { CompiledCard } from '../../card/index.ts';
import {
  createPassChooser,
  FITTED_SELECTION,
  type PassChooser,
  type Selection,
  selectPass,
} from '../../kernels/index.ts';
import { FACE_COUNT, PASS_SIZE, SEATS, STANDARD_TERMS, STEPS } from '../../rules/index.ts';
import { chancesOf } from '../win-probability/table-value.ts';
import { ASK, BLIND, type Leaf, type RolloutSetting, TOWARD, VOTE } from './batch.ts';
import { createPasses, moveTiles, setPass } from './movement.ts';
import { drawBlindWords, drawNoise, NEIGHBOR_NOISE } from './noise.ts';
import { createRackCache } from './rack-cache.ts';

const CLOSE = STEPS.length;

/** Racks cached for one seat at one step, and for one seat where its weight is asked for. */
const CACHED_PASSES = 32;
const CACHED_VALUES = 64;

export interface ExchangeRollout {
  /** Begins a sampled deal: forgets what was computed for the one before. */
  begin(setting: RolloutSetting, deal: number): void;
  /** Plays one action out from four racks; four win probabilities to `out`. */
  play(deal: Uint8Array, action: Int8Array, out: Float64Array): void;
  /** The rack of a seat at the end of what was played last: counts by face, until the next play. */
  rackOf(seat: number): Uint8Array;
}

export function createExchangeRollout(
  card: CompiledCard,
  leaf: Leaf,
  policy: Selection = FITTED_SELECTION,
): ExchangeRollout {
  const racks = new Uint8Array(4 * FACE_COUNT);
  const passes = createPasses();
  const words = new Uint32Array(4);
  const agreed = new Int8Array(4);
  const selection = createSelection(createPassChooser(card, policy), racks);
  const values = createValues(leaf, racks);
  const { choose, selected } = selection;
  let now: RolloutSetting = {
    seed: 0,
    seat: 0,
    dealer: 0,
    terms: STANDARD_TERMS.friends,
    step: 0,
    agreed: [0, 0, 0, 0],
    end: 'close',
    neighbors: 'alike',
  };
  let deal = 0;

  function pass(step: number, action: Int8Array | null): void {
    const mayBeBlind = BLIND[step] === true && now.terms.blindPasses;
    for (const seat of SEATS) {
      const most = ASK < step ? agreed[seat]! : PASS_SIZE;
      if (action !== null && seat === now.seat) {
        setPass(passes, seat, action, [action[3]!, most - action[3]!]);
        continue;
      }
      const spare = most === 0 ? 0 : choose(step, seat);
      const own = mayBeBlind ? Math.min(most, spare) : most;
      if (now.neighbors !== 'alike' && seat !== now.seat) selection.misjudge(step, seat);
      setPass(passes, seat, selected, [own, most - own]);
    }
    if (mayBeBlind && passes.blind.every((count) => count > 0)) passOwnTiles(step);
    moveTiles(racks, passes, TOWARD[step]!, (seat) => {
      drawBlindWords(words, { seed: now.seed, deal, seat, step });
      return words;
    });
  }

  /** Where all would pass blind, the dealer gives its own tiles, or the seat after it where the dealer chooses. */
  function passOwnTiles(step: number): void {
    const seat = now.dealer === now.seat ? (now.dealer + 1) % 4 : now.dealer;
    choose(step, seat);
    setPass(passes, seat, selected, [PASS_SIZE, 0]);
  }

  /** By the terms, or by a vote: a seat continues if it can spare all three tiles. */
  function goesOn(action: Int8Array | null): boolean {
    const { secondCharleston } = now.terms;
    return secondCharleston === 'by-vote' ? allContinue(action) : secondCharleston === 'always';
  }

  function allContinue(action: Int8Array | null): boolean {
    if (action !== null && action[3] === 0) return false;
    return SEATS.every((seat) => (action !== null && seat === now.seat) || choose(VOTE, seat) === PASS_SIZE);
  }

  /** Each asks for as many as it can spare. Whether anybody passes anything. */
  function agree(action: Int8Array | null): boolean {
    for (const seat of SEATS) {
      agreed[seat] = action !== null && seat === now.seat ? action[3]! : choose(ASK, seat);
    }
    return takeSmaller(agreed);
  }

  return {
    begin(setting, key) {
      now = setting;
      deal = key;
      selection.begin(setting, key);
      values.begin(setting.dealer);
    },
    play(from, action, out) {
      racks.set(from);
      for (let seat = 0; seat < 4; seat++) agreed[seat] = now.agreed[seat]!;
      let step = now.step;
      while (step < CLOSE) {
        const own = step === now.step ? action : null;
        if (step === VOTE) step = goesOn(own) ? step + 1 : ASK;
        else if (step === ASK) step = now.terms.courtesy !== 'none' && agree(own) ? step + 1 : CLOSE;
        else {
          pass(step, own);
          step = now.end === 'next-pass' && own === null ? CLOSE : step + 1;
        }
        if (now.end === 'step') step = CLOSE;
      }
      values.write(out);
    },
    rackOf: (seat) => racks.subarray(seat * FACE_COUNT, (seat + 1) * FACE_COUNT),
  };
}

/** The smaller number of each pair across holds; whether any is above 0. */
function takeSmaller(agreed: Int8Array): boolean {
  let any = false;
  for (let seat = 0; seat < 2; seat++) {
    const smaller = Math.min(agreed[seat]!, agreed[seat + 2]!);
    agreed[seat] = smaller;
    agreed[seat + 2] = smaller;
    any ||= smaller > 0;
  }
  return any;
}

/** The pass of each seat at each step, cached by rack. */
function createSelection(chooser: PassChooser, racks: Uint8Array) {
  const places = 4 * CLOSE;
  const noise = Array.from({ length: places }, () => new Float64Array(FACE_COUNT));
  const noiseDrawn = new Uint8Array(places);
  const caches = Array.from({ length: places }, () => createRackCache(CACHED_PASSES));
  const cachedTiles = new Int8Array(places * CACHED_PASSES * PASS_SIZE);
  const cachedSpare = new Int8Array(places * CACHED_PASSES);
  const selected = new Int8Array(PASS_SIZE);
  let seed = 0;
  let deal = 0;
  let steadySeat = -1;
  let neighborNoise = 0;
  const misjudged = new Float64Array(FACE_COUNT);

  return {
    selected,
    begin(setting: RolloutSetting, key: number): void {
      seed = setting.seed;
      steadySeat = setting.neighbors === 'alike' ? -1 : setting.seat;
      neighborNoise = NEIGHBOR_NOISE[setting.neighbors];
      deal = key;
      noiseDrawn.fill(0);
      for (const cache of caches) cache.clear();
    },
    /** Writes the tiles that a neighbor on this seat would pass to `selected`, after `choose`. */
    misjudge(step: number, seat: number): void {
      for (const [face, value] of noise[step * 4 + seat]!.entries()) misjudged[face] = neighborNoise * value;
      chooser.hands.read(racks, seat * FACE_COUNT);
      selectPass(chooser, selected, 0, misjudged);
    },
    /** Writes the tiles this seat would pass to `selected`; how many of them it can spare. */
    choose(step: number, seat: number): number {
      const place = step * 4 + seat;
      const cache = caches[place]!;
      const known = cache.find(racks, seat);
      if (known !== -1) {
        const at = (place * CACHED_PASSES + known) * PASS_SIZE;
        for (let i = 0; i < PASS_SIZE; i++) selected[i] = cachedTiles[at + i]!;
        return cachedSpare[place * CACHED_PASSES + known]!;
      }
      if (noiseDrawn[place] === 0) {
        if (seat === steadySeat) noise[place]!.fill(0);
        else drawNoise(noise[place]!, { seed, deal, seat, step });
        noiseDrawn[place] = 1;
      }
      chooser.hands.read(racks, seat * FACE_COUNT);
      const spare = selectPass(chooser, selected, 0, noise[place]!);
      const added = cache.add(racks, seat);
      if (added !== -1) {
        cachedTiles.set(selected, (place * CACHED_PASSES + added) * PASS_SIZE);
        cachedSpare[place * CACHED_PASSES + added] = spare;
      }
      return spare;
    },
  };
}

/** The win probabilities of the four seats; what each rack weighs is cached. */
function createValues(leaf: Leaf, racks: Uint8Array) {
  const caches = Array.from({ length: 4 }, () => createRackCache(CACHED_VALUES));
  const cached = new Float64Array(4 * CACHED_VALUES);
  const weights = new Float64Array(4);
  let dealer = 0;
  return {
    begin(dealerSeat: number): void {
      dealer = dealerSeat;
      for (const cache of caches) cache.clear();
    },
    write(out: Float64Array): void {
      for (let seat = 0; seat < 4; seat++) {
        const known = caches[seat]!.find(racks, seat);
        if (known !== -1) {
          weights[seat] = cached[seat * CACHED_VALUES + known]!;
          continue;
        }
        const weight = leaf.weight(racks, seat * FACE_COUNT, (seat + 4 - dealer) % 4);
        const added = caches[seat]!.add(racks, seat);
        if (added !== -1) cached[seat * CACHED_VALUES + added] = weight;
        weights[seat] = weight;
      }
      chancesOf(weights, leaf.wall, out);
    },
  };
}
