// Metropolis moves: two tiles of a history change places, and the change stays as often as its likelihood says.

import type { ChoiceModel } from '../../policy/choice-model.ts';
import { JOKER_INDEX } from '../../rules/tiles/face.ts';
import { count, dealtHidden, type History, holderOf } from './history.ts';
import type { Draws } from './rng.ts';
import type { Situation } from './situation.ts';
import { createWeighing } from './weighing.ts';

const WALL = 99;

export interface Swapping {
  /** One proposal, weighed by the moves before `until`. Whether it was taken. */
  propose(history: History, situation: Situation, until: number, draws: Draws): boolean;
}

/** Every proposal is as likely as the one that undoes it, so likelihoods alone decide. */
export function createSwapping(model: ChoiceModel): Swapping {
  const { save, restore, ratio } = createWeighing(model);

  function tryOut(
    history: History,
    situation: Situation,
    until: number,
    draws: Draws,
    tiles: readonly number[],
    change: () => void,
  ): boolean {
    save(history);
    for (const tile of tiles) count(history, tile, -1, situation.seat);
    change();
    for (const tile of tiles) count(history, tile, 1, situation.seat);
    if (draws.uniform() < ratio(history, situation, until)) return true;
    change();
    restore(history);
    return false;
  }

  function swapFaces(history: History, a: number, b: number): void {
    const face = history.face[a]!;
    history.face[a] = history.face[b]!;
    history.face[b] = face;
  }

  /** From the move on the two tiles go each other's way. */
  function swapWays(history: History, a: number, b: number, move: number): void {
    const { bound, holder, moves } = history;
    for (let next = move + 1; next <= moves; next++) {
      const at = a * (moves + 1) + next;
      const other = b * (moves + 1) + next;
      const seat = holder[at]!;
      holder[at] = holder[other]!;
      holder[other] = seat;
    }
    const known = bound[a]!;
    bound[a] = bound[b]!;
    bound[b] = known;
  }

  function withWall(history: History, situation: Situation, until: number, draws: Draws): boolean {
    const tile = draws.below(dealtHidden(situation));
    const drawn = faceAt(history.wall, draws.below(WALL));
    if (history.bound[tile] === 1 || drawn === -1 || drawn === history.face[tile]) return false;
    let other = drawn;
    return tryOut(history, situation, until, draws, [tile], () => {
      const face = history.face[tile]!;
      history.wall[other]!--;
      history.wall[face]!++;
      history.face[tile] = other;
      other = face;
    });
  }

  function betweenRacks(history: History, situation: Situation, until: number, draws: Draws): boolean {
    const dealt = dealtHidden(situation);
    const a = draws.below(dealt);
    const b = draws.below(dealt);
    const { bound, face } = history;
    if (bound[a] === 1 || bound[b] === 1 || face[a] === face[b]) return false;
    return tryOut(history, situation, until, draws, [a, b], () => swapFaces(history, a, b));
  }

  /** A tile passed and a tile kept change roles; with their faces, where what came to the seat is known. */
  function passedForKept(history: History, situation: Situation, until: number, draws: Draws): boolean {
    const move = draws.below(until);
    const seat = draws.below(4);
    const takesFaces = draws.below(2) === 1;
    const a = pick(history, seat, move, draws, true);
    const b = pick(history, seat, move, draws, false);
    if (a === -1 || b === -1) return false;
    const dealt = dealtHidden(situation);
    const { bound, face } = history;
    const same = face[a] === face[b];
    if (takesFaces ? !same && (a >= dealt || b >= dealt) : !same && (bound[a] === 1 || bound[b] === 1)) {
      return false;
    }
    return tryOut(history, situation, until, draws, [a, b], () => {
      swapWays(history, a, b, move);
      if (takesFaces) swapFaces(history, a, b);
    });
  }

  return {
    propose(history, situation, until, draws) {
      switch (draws.below(4)) {
        case 0:
          return withWall(history, situation, until, draws);
        case 1:
          return betweenRacks(history, situation, until, draws);
        default:
          return passedForKept(history, situation, until, draws);
      }
    },
  };
}

/** A tile held by the seat that goes, or stays, in the move; any of them as likely; −1 where there is none. */
function pick(history: History, seat: number, move: number, draws: Draws, goes: boolean): number {
  let found = 0;
  for (let tile = 0; tile < history.tiles; tile++) if (fits(history, tile, seat, move, goes)) found++;
  if (found === 0) return -1;
  let nth = draws.below(found);
  for (let tile = 0; tile < history.tiles; tile++) {
    if (fits(history, tile, seat, move, goes) && nth-- === 0) return tile;
  }
  return -1;
}

function fits(history: History, tile: number, seat: number, move: number, goes: boolean): boolean {
  if (holderOf(history, tile, move) !== seat) return false;
  return (holderOf(history, tile, move + 1) !== seat) === goes;
}

function faceAt(bag: Uint8Array, nth: number): number {
  let left = nth;
  for (let face = 0; face <= JOKER_INDEX; face++) {
    left -= bag[face]!;
    if (left < 0) return face;
  }
  return -1;
}
