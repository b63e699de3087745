// What could have been chosen: actions of the rollouts, with the tiles or the number they stand for.
import { createRng } from '../../kernels/index.ts';
import { type ChoiceModel, legalPasses } from '../../policy/index.ts';
import { FACE_COUNT, FACES, type Face, faceIndex, mayPassBlind } from '../../rules/index.ts';
import type { OfferedChoice, Situation } from '../belief/situation.ts';
import type { Leaf } from '../rollouts/batch.ts';
import type { DealAction } from './sampled-deals.ts';

export interface Alternative {
  /** Own tiles given, by face index, in rack order. */
  readonly tiles: readonly number[];
  /** Tiles passed blind, the vote (1 is to continue), or tiles asked for; null where tiles alone are chosen. */
  readonly number: number | null;
  readonly action: readonly number[];
  /** What the tiles left weigh, before anything arrives: the first order in which alternatives are tried. */
  readonly keptValue: number;
}

/** Every legal pass of `size` own tiles, best tiles left first. */
export function passesOf(situation: Situation, size: number, leaf: Leaf): readonly Alternative[] {
  const rack = Uint8Array.from(situation.rack);
  const place = (situation.seat + 4 - situation.dealer) % 4;
  return legalPasses(rack, size)
    .map((tiles): Alternative => {
      for (const face of tiles) rack[face]!--;
      const keptValue = leaf.weight(rack, 0, place);
      for (const face of tiles) rack[face]!++;
      return { tiles, number: null, action: actionOf(tiles, size), keptValue };
    })
    .sort((a, b) => b.keptValue - a.keptValue);
}

/** Numbers 0 to 3 passed blind, each with the own tiles that leave the best rack. */
export function blindNumbers(situation: Situation, leaf: Leaf): readonly Alternative[] {
  return [0, 1, 2, 3].map((number) => {
    const [best] = passesOf(situation, 3 - number, leaf);
    return { ...best!, number };
  });
}

export function votes(): readonly Alternative[] {
  return [0, 1].map(numberAlone);
}

export function asks(): readonly Alternative[] {
  return [0, 1, 2, 3].map(numberAlone);
}

function numberAlone(number: number): Alternative {
  return { tiles: [], number, action: actionOf([], number), keptValue: 0 };
}

/** Makes the draws of what club players pass others than those of the belief by the same seed. */
const TYPICAL_STREAM = 0x7479_7065;

/** In each deal what a club player might pass from this rack, drawn from the model of their choices. */
export function typicalPasses(
  model: ChoiceModel,
  { rack }: Pick<Situation, 'rack'>,
  size: number,
  seed: number,
): DealAction {
  const held = Uint8Array.from(rack);
  const none = new Uint8Array(FACE_COUNT);
  const pass = new Uint8Array(FACE_COUNT);
  return {
    key: `typical ${size}`,
    of(deal) {
      model.read(held, 0);
      model.draw(none, size, pass, createRng((seed ^ TYPICAL_STREAM) >>> 0, deal).uniform);
      return actionOf(
        [...pass].flatMap((count, face) => new Array<number>(count).fill(face)),
        size,
      );
    },
  };
}

/** An action of the rollouts: see `RolloutBatch`. */
export function actionOf(tiles: readonly number[], number: number): readonly number[] {
  return [tiles[0] ?? -1, tiles[1] ?? -1, tiles[2] ?? -1, number];
}

/** Which part of a choice is meant: the tiles given, or a number. */
export type DecisionSubject = 'tiles' | 'number';

/** What could have been chosen, best tiles left first, and what was. */
export interface OfferedAlternatives {
  readonly alternatives: readonly Alternative[];
  readonly chosen: Alternative;
}

/** Null where nothing of that kind was chosen. */
export function alternativesTo(
  offered: OfferedChoice,
  subject: DecisionSubject,
  leaf: Leaf,
): OfferedAlternatives | null {
  return subject === 'tiles' ? tilesChosen(offered, leaf) : numberChosen(offered, leaf);
}

function tilesChosen({ situation, chosen }: OfferedChoice, leaf: Leaf): OfferedAlternatives | null {
  if (chosen.kind !== 'move' || chosen.gave.length === 0) return null;
  const gave = chosen.gave.map(faceIndex);
  const alternatives = passesOf(situation, gave.length, leaf);
  const played = alternatives.find(({ tiles }) => samePass(tiles, gave));
  return played ? { alternatives, chosen: played } : null;
}

function numberChosen({ situation, chosen }: OfferedChoice, leaf: Leaf): OfferedAlternatives | null {
  switch (chosen.kind) {
    case 'vote':
      return among(votes(), chosen.go[situation.seat] ? 1 : 0);
    case 'ask':
      return among(asks(), chosen.asked[situation.seat]);
    case 'move':
      if (!mayPassBlind(chosen.step, situation.terms)) return null;
      return among(blindNumbers(situation, leaf), chosen.blind[situation.seat]);
  }
}

function among(alternatives: readonly Alternative[], number: number): OfferedAlternatives | null {
  const chosen = alternatives.find((each) => each.number === number);
  return chosen ? { alternatives, chosen } : null;
}

function samePass(a: readonly number[], b: readonly number[]): boolean {
  const counts = new Int8Array(FACE_COUNT);
  for (const face of a) counts[face]!++;
  for (const face of b) counts[face]!--;
  return a.length === b.length && counts.every((count) => count === 0);
}

export function facesOfAlternative({ tiles }: Alternative): readonly Face[] {
  return tiles.map((face) => FACES[face]!);
}
