// One move further: what the hidden seats gave is drawn as they choose, and made to be what came to the seat itself.

import type { ChoiceModel } from '../../policy/choice-model.ts';
import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { dealtHidden, type History, holderOf, keepFrom, recount } from './history.ts';
import type { Draws } from './rng.ts';
import { giverAt, type Situation } from './situation.ts';
import { createWeighing, waysToTake } from './weighing.ts';

const RACKS = 4 * FACE_COUNT;

export interface Extending {
  /** Plays one move of a history; the factor by which its weight changes. */
  extend(history: History, situation: Situation, move: number, draws: Draws): number;
}

export function createExtending(model: ChoiceModel): Extending {
  const weighing = createWeighing(model);
  const fixed = new Uint8Array(FACE_COUNT);
  const drawn = new Uint8Array(FACE_COUNT);

  /**
   * Draws `size` tiles that this seat gives, as it chooses, among those for which `free` holds; the probability of
   * just these, copies told apart, goes into the second part.
   */
  function pick(
    history: History,
    move: number,
    giver: number,
    size: number,
    draws: Draws,
    free: (tile: number) => boolean,
  ): readonly [number[], number] {
    const at = move * RACKS + giver * FACE_COUNT;
    fixed.fill(0);
    for (let tile = 0; tile < history.tiles; tile++) {
      if (holderOf(history, tile, move) === giver && !free(tile)) fixed[history.face[tile]!]!++;
    }
    model.read(history.racks, at);
    let chance = model.draw(fixed, size, drawn, 0, draws.uniform);
    const tiles: number[] = [];
    for (let face = 0; face < JOKER_INDEX; face++) {
      if (drawn[face] === 0) continue;
      const copies: number[] = [];
      for (let tile = 0; tile < history.tiles; tile++) {
        const here = holderOf(history, tile, move) === giver && history.face[tile] === face;
        if (here && free(tile)) copies.push(tile);
      }
      chance /= waysToTake(copies.length, drawn[face]!);
      for (let n = drawn[face]!; n > 0; n--) tiles.push(...copies.splice(draws.below(copies.length), 1));
    }
    return [tiles, chance];
  }

  /** The seat's own giver: its tiles take the faces that came. The factor by which that changes the weight. */
  function give(history: History, situation: Situation, move: number, draws: Draws): number {
    const { seat, past } = situation;
    const { toward, received, forwarded } = past[move]!;
    const giver = giverAt(seat, toward);
    const dealt = dealtHidden(situation);
    const faces = stillToCome(history, move, giver, received);
    const size = faces.length + forwarded;
    const [tiles, chance] = pick(
      history,
      move,
      giver,
      size,
      draws,
      (t) => t < dealt && history.bound[t] === 0,
    );
    let factor = 1 / chance;
    for (const face of faces) {
      if (tiles.length === 0) break;
      const [tile] = tiles.splice(draws.below(tiles.length), 1);
      factor *= lend(history, dealt, tile!, face, draws);
      history.bound[tile!] = 1;
      keepFrom(history, tile!, move + 1, seat);
    }
    // What the seat passed on unseen goes past it to its own receiver.
    for (const tile of tiles) keepFrom(history, tile, move + 1, (seat + toward) % 4);
    recount(history, seat);
    return factor;
  }

  /** A hidden seat gives to another; the probability of what it gives. */
  function draw(history: History, { past }: Situation, move: number, giver: number, draws: Draws): number {
    const { toward, blind, gave, forwarded } = past[move]!;
    const whole = gave.length + forwarded - blind[giver as 0 | 1 | 2 | 3];
    const size = whole - boundMoving(history, move, giver);
    if (size <= 0) return 1;
    const [tiles, chance] = pick(history, move, giver, size, draws, (tile) => history.bound[tile] === 0);
    for (const tile of tiles) keepFrom(history, tile, move + 1, (giver + toward) % 4);
    return chance;
  }

  return {
    extend(history, situation, move, draws) {
      const { seat, past } = situation;
      const { toward, blind } = past[move]!;
      weighing.save(history);
      let factor = give(history, situation, move, draws);
      for (let giver = 0; giver < 4; giver++) {
        if (giver === seat || (giver + toward) % 4 === seat) continue;
        factor /= draw(history, situation, move, giver, draws);
      }
      for (let giver = 0; giver < 4; giver++) {
        const to = (giver + toward) % 4;
        if (giver === seat || to === seat) continue;
        forward(history, move, giver, to, blind[giver as 0 | 1 | 2 | 3], draws);
      }
      recount(history, seat);
      return factor * weighing.ratio(history, situation, move + 1);
    },
  };
}

/** What came to the seat in this move and is not bound to come already. */
function stillToCome(history: History, move: number, giver: number, received: readonly number[]): number[] {
  const left = [...received];
  for (let tile = 0; tile < history.tiles; tile++) {
    if (history.bound[tile] === 0 || holderOf(history, tile, move) !== giver) continue;
    if (holderOf(history, tile, move + 1) === giver) continue;
    const place = left.indexOf(history.face[tile]!);
    if (place !== -1) left.splice(place, 1);
  }
  return left;
}

/**
 * Gives a tile this face and its own face to a tile that had it, anywhere hidden, any of those as likely. The number
 * of tiles that had it: the fewer there were, the less likely was the face to come.
 */
function lend(history: History, dealt: number, tile: number, face: number, draws: Draws): number {
  const had: number[] = [];
  for (let other = 0; other < dealt; other++) {
    if (history.bound[other] === 0 && history.face[other] === face) had.push(other);
  }
  const number = had.length + history.wall[face]!;
  if (number === 0) return 0;
  const chosen = had[draws.below(number)];
  const own = history.face[tile]!;
  if (chosen === undefined) {
    history.wall[face]!--;
    history.wall[own]!++;
  } else history.face[chosen] = own;
  history.face[tile] = face;
  return number;
}

/** Bound tiles that leave this seat in the move. */
function boundMoving(history: History, move: number, seat: number): number {
  let moving = 0;
  for (let tile = 0; tile < history.tiles; tile++) {
    if (history.bound[tile] === 0 || holderOf(history, tile, move) !== seat) continue;
    if (holderOf(history, tile, move + 1) !== seat) moving++;
  }
  return moving;
}

/** Passes some of the tiles that arrive at a seat on unseen. */
function forward(
  history: History,
  move: number,
  seat: number,
  to: number,
  blind: number,
  draws: Draws,
): void {
  for (let n = 0; n < blind; n++) {
    const arriving: number[] = [];
    for (let tile = 0; tile < history.tiles; tile++) {
      const arrives = holderOf(history, tile, move) !== seat && holderOf(history, tile, move + 1) === seat;
      if (arrives && history.bound[tile] === 0) arriving.push(tile);
    }
    if (arriving.length > 0) keepFrom(history, arriving[draws.below(arriving.length)]!, move + 1, to);
  }
}
