// One exchange from a step to the close, on flat racks: every seat chooses from its own tiles.
import type { CompiledCard } from '../../card/compiled.ts';
import { letGo } from '../../kernels/near-hands/pass-selection.ts';
import { createNear } from '../../kernels/near-hands/reference.ts';
import { neighbour, SEATS } from '../../rules/deal/seat.ts';
import { MOVES, PASS_SIZE, STEPS } from '../../rules/exchange/schedule.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';
import type { PlayoutBatch } from './batch.ts';
import type { Leaf } from './leaf.ts';
import { createPasses, moveTiles } from './movement.ts';
import { drawWords, misjudge } from './noise.ts';
import { createRackMemory } from './rack-memory.ts';

export const VOTE = STEPS.indexOf('vote');
export const ASK = STEPS.indexOf('courtesy-ask');
const CLOSE = STEPS.length;
export const TOWARD = STEPS.map((step) =>
  step in MOVES ? neighbour(0, MOVES[step as keyof typeof MOVES].toward) : 0,
);
export const BLIND = STEPS.map((step) => step in MOVES && MOVES[step as keyof typeof MOVES].blind);

/** Racks remembered for one seat at one step; further ones are worked out anew. */
const REMEMBERED = 32;
const LOOKS_REMEMBERED = 64;

type Setting = Pick<PlayoutBatch, 'seed' | 'seat' | 'dealer' | 'step' | 'agreed'>;

export interface Exchange {
  /** A new world: forgets what was worked out for the last one. */
  begin(setting: Setting, world: number): void;
  /** Plays one act out and writes its eight outlooks to `out[outAt..]`. */
  play(
    worlds: Uint8Array,
    at: number,
    acts: Int8Array,
    actAt: number,
    out: Float64Array,
    outAt: number,
  ): void;
}

export function createExchange(card: CompiledCard, leaf: Leaf): Exchange {
  const near = createNear(card);
  const racks = new Uint8Array(4 * FACE_COUNT);
  const passes = createPasses();
  const words = new Uint32Array(4);
  const places = 4 * CLOSE;
  const noise = new Float64Array(places * FACE_COUNT);
  const noisy = new Uint8Array(places);
  const memories = Array.from({ length: places }, () => createRackMemory(REMEMBERED));
  const goneOf = new Int8Array(places * REMEMBERED * PASS_SIZE);
  const spareOf = new Int8Array(places * REMEMBERED);
  const gone = new Int8Array(PASS_SIZE);
  const looked = Array.from({ length: 4 }, () => createRackMemory(LOOKS_REMEMBERED));
  const lookOf = new Float64Array(4 * LOOKS_REMEMBERED);
  const agreed = new Int8Array(4);
  let now: Setting = { seed: 0, seat: 0, dealer: 0, step: 0, agreed: [0, 0, 0, 0] };
  let world = 0;

  /** The tiles this seat would let go into `gone`, and how many of them it can spare. */
  function choose(step: number, seat: number): number {
    const place = step * 4 + seat;
    const memory = memories[place]!;
    const known = memory.find(racks, seat);
    if (known !== -1) {
      const at = (place * REMEMBERED + known) * PASS_SIZE;
      for (let i = 0; i < PASS_SIZE; i++) gone[i] = goneOf[at + i]!;
      return spareOf[place * REMEMBERED + known]!;
    }
    if (noisy[place] === 0) {
      misjudge(noise, place * FACE_COUNT, now.seed, world, seat, step);
      noisy[place] = 1;
    }
    near.read(racks, seat * FACE_COUNT);
    const spare = letGo(near, PASS_SIZE, gone, 0, noise, place * FACE_COUNT);
    const kept = memory.add(racks, seat);
    if (kept !== -1) {
      goneOf.set(gone, (place * REMEMBERED + kept) * PASS_SIZE);
      spareOf[place * REMEMBERED + kept] = spare;
    }
    return spare;
  }

  function pass(step: number, acts: Int8Array | null, actAt: number): void {
    for (const seat of SEATS) {
      const most = ASK < step ? agreed[seat]! : PASS_SIZE;
      if (acts !== null && seat === now.seat) {
        for (let i = 0; i < PASS_SIZE; i++) passes.tiles[seat * PASS_SIZE + i] = acts[actAt + i]!;
        passes.own[seat] = acts[actAt + 3]!;
      } else {
        const spare = most === 0 ? 0 : choose(step, seat);
        for (let i = 0; i < PASS_SIZE; i++) passes.tiles[seat * PASS_SIZE + i] = gone[i]!;
        passes.own[seat] = BLIND[step] ? Math.min(most, spare) : most;
      }
      passes.blind[seat] = most - passes.own[seat]!;
    }
    if (BLIND[step]) openRing(step);
    moveTiles(racks, passes, TOWARD[step]!, (seat) => {
      drawWords(words, now.seed, world, seat, step);
      return words;
    });
  }

  /** Where all four would pass blind, the dealer, or the seat after it where the dealer chooses, gives three of its own. */
  function openRing(step: number): void {
    for (let seat = 0; seat < 4; seat++) if (passes.blind[seat] === 0) return;
    const seat = now.dealer === now.seat ? (now.dealer + 1) % 4 : now.dealer;
    choose(step, seat);
    for (let i = 0; i < PASS_SIZE; i++) passes.tiles[seat * PASS_SIZE + i] = gone[i]!;
    passes.own[seat] = PASS_SIZE;
    passes.blind[seat] = 0;
  }

  function goesOn(act: number): boolean {
    let all = act !== 0;
    for (let seat = 0; all && seat < 4; seat++) {
      if (act === -1 || seat !== now.seat) all = choose(VOTE, seat) === PASS_SIZE;
    }
    return all;
  }

  function ask(act: number): boolean {
    let any = false;
    for (let seat = 0; seat < 4; seat++) {
      agreed[seat] = act !== -1 && seat === now.seat ? act : choose(ASK, seat);
    }
    for (let seat = 0; seat < 2; seat++) {
      const smaller = Math.min(agreed[seat]!, agreed[seat + 2]!);
      agreed[seat] = smaller;
      agreed[seat + 2] = smaller;
      any ||= smaller > 0;
    }
    return any;
  }

  function look(out: Float64Array, outAt: number): void {
    for (let seat = 0; seat < 4; seat++) {
      const known = looked[seat]!.find(racks, seat);
      if (known !== -1) {
        out[outAt + seat] = lookOf[seat * LOOKS_REMEMBERED + known]!;
        continue;
      }
      const worth = leaf.of(racks, seat * FACE_COUNT, (seat + 4 - now.dealer) % 4);
      const kept = looked[seat]!.add(racks, seat);
      if (kept !== -1) lookOf[seat * LOOKS_REMEMBERED + kept] = worth;
      out[outAt + seat] = worth;
    }
  }

  return {
    begin(setting, key) {
      now = setting;
      world = key;
      noisy.fill(0);
      for (const memory of [...looked, ...memories]) memory.clear();
    },
    play(worlds, at, acts, actAt, out, outAt) {
      for (let i = 0; i < racks.length; i++) racks[i] = worlds[at + i]!;
      for (let seat = 0; seat < 4; seat++) agreed[seat] = now.agreed[seat]!;
      let step = now.step;
      while (step < CLOSE) {
        const chosen = step === now.step;
        if (step === VOTE) {
          step = goesOn(chosen ? acts[actAt + 3]! : -1) ? step + 1 : ASK;
        } else if (step === ASK) {
          step = ask(chosen ? acts[actAt + 3]! : -1) ? step + 1 : CLOSE;
        } else {
          pass(step, chosen ? acts : null, actAt);
          step++;
        }
        if (chosen) look(out, outAt + 4);
      }
      look(out, outAt);
    },
  };
}
