// What could have been chosen: acts of the playouts, with the tiles or the number they stand for.

import { FACE_COUNT, JOKER_INDEX } from '../../rules/tiles/face.ts';
import { createDraws } from '../belief/rng.ts';
import type { Situation } from '../belief/situation.ts';
import type { Leaf } from '../rollouts/leaf.ts';
import type { Act } from './sampled-deals.ts';

export interface Alternative {
  /** Own tiles given, by face index, in rack order. */
  readonly tiles: readonly number[];
  /** Tiles passed blind, the vote (1 is go on), or tiles asked for; null where tiles alone are chosen. */
  readonly number: number | null;
  readonly act: readonly number[];
  /** Outlook of the tiles kept, before anything arrives: the first order in which alternatives are tried. */
  readonly kept: number;
}

/** Every legal pass of `size` own tiles, merged by face, best kept rack first. */
export function passesOf(situation: Situation, size: number, leaf: Leaf): readonly Alternative[] {
  const rack = Uint8Array.from(situation.rack);
  const place = (situation.seat + 4 - situation.dealer) % 4;
  const found: Alternative[] = [];
  const tiles: number[] = [];
  const extend = (from: number): void => {
    if (tiles.length === size) {
      const kept = leaf.of(rack, 0, place);
      found.push({ tiles: [...tiles], number: null, act: actOf(tiles, size), kept });
      return;
    }
    for (let face = from; face < JOKER_INDEX; face++) {
      if (rack[face] === 0) continue;
      rack[face]!--;
      tiles.push(face);
      extend(face);
      tiles.pop();
      rack[face]!++;
    }
  };
  extend(0);
  return found.sort((a, b) => b.kept - a.kept);
}

/** Numbers 0 to 3 passed blind, each with the own tiles that keep the best rack. */
export function blindNumbers(situation: Situation, leaf: Leaf): readonly Alternative[] {
  return [0, 1, 2, 3].map((number) => {
    const [best] = passesOf(situation, 3 - number, leaf);
    return { ...best!, number };
  });
}

export function votes(): readonly Alternative[] {
  return [0, 1].map((number) => ({ tiles: [], number, act: actOf([], number), kept: 0 }));
}

export function asks(): readonly Alternative[] {
  return [0, 1, 2, 3].map((number) => ({ tiles: [], number, act: actOf([], number), kept: 0 }));
}

/** In each world another of the alternatives, any as likely: the mean over worlds is the mean alternative's. */
export function anyOf(alternatives: readonly Alternative[], seed: number): Act {
  return (world) => alternatives[createDraws(seed, world).below(alternatives.length)]!.act;
}

function actOf(tiles: readonly number[], number: number): readonly number[] {
  return [tiles[0] ?? -1, tiles[1] ?? -1, tiles[2] ?? -1, number];
}

export function samePass(a: readonly number[], b: readonly number[]): boolean {
  const counts = new Int8Array(FACE_COUNT);
  for (const face of a) counts[face]!++;
  for (const face of b) counts[face]!--;
  return a.length === b.length && counts.every((count) => count === 0);
}
