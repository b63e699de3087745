// The kernel of the vector module against its plain twins, and what stands in where it cannot run.
import { beforeAll, describe, expect, it } from 'vitest';
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { loadSimd, NO_SIMD, type SimdModule } from '../../shared-engine/kernels/simd/module.ts';
import type { Kernel } from '../../shared-engine/kernels/tiles-to-go/kernel.ts';
import { createReferenceKernel } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { type BatchKernel, createSimdKernel } from '../../shared-engine/kernels/tiles-to-go/simd.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { drawn, type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import {
  type Bag,
  bagOf,
  EMPTY_BAG,
  FULL_SET,
  facesOf,
  takeFrom,
} from '../../shared-engine/rules/tiles/bag.ts';
import { flatRacks } from '../kit/flat-racks.ts';
import { randomCard } from '../kit/random-card.ts';

/** Fewer targets than a vector holds, rows of many vectors, and the card of the house. */
const CARDS = [randomCard('one', 1, 1), randomCard('few', 3, 5), randomCard('wide', 120, 60), houseCard()];

let vectors: SimdModule;

beforeAll(async () => {
  vectors = await loadSimd();
});

function answers(kernel: Kernel, rack: Bag): string {
  return `${kernel.toGo(rack)} | ${kernel.toGoByPattern(rack)} | ${kernel.histogram(rack)}`;
}

function anyRack(random: Random, size: number): Bag {
  return bagOf(drawn(facesOf(FULL_SET), size, random));
}

/** A rack that no wall would deal, beyond what any target or byte holds. */
function strangeRack(random: Random): Bag {
  return EMPTY_BAG.map(() => (random.below(4) === 0 ? random.below(400) : 0));
}

function differing(card: CompiledCard, twin: Kernel, racks: readonly Bag[]): Bag[] {
  const kernel = createSimdKernel(vectors, card);
  return racks.filter((rack) => answers(kernel, rack) !== answers(twin, rack));
}

it('the module is there: npm run build:wasm has been run', () => {
  expect(vectors.kind).toBe('ready');
});

describe('the vector kernel says what the plain ones say', () => {
  it.each(CARDS)('of 4,000 dealt racks in plain words, on $id', (card) => {
    const random = stream(card.id, 'wasm/dealt');
    const racks = Array.from({ length: 4000 }, (_, index) => anyRack(random, 13 + (index % 2)));
    expect(differing(card, createSwarKernel(card), racks)).toEqual([]);
  });

  it.each(CARDS)('of racks big, small and strange by the definition, on $id', (card) => {
    const random = stream(card.id, 'wasm/strange');
    const strange = Array.from({ length: 60 }, () => strangeRack(random));
    const sizes = Array.from({ length: 40 }, (_, size) => anyRack(random, size));
    const racks = [EMPTY_BAG, FULL_SET, ...strange, ...sizes];
    expect(differing(card, createReferenceKernel(card), racks)).toEqual([]);
  });

  it('of racks that differ by one tile, asked one after another', () => {
    const card = randomCard('near', 30, 20);
    const random = stream('wasm', 'near');
    const racks = Array.from({ length: 20 }, () => anyRack(random, 14)).flatMap((rack) => [
      rack,
      ...facesOf(rack).map((face) => takeFrom(rack, [face]) ?? EMPTY_BAG),
    ]);
    expect(differing(card, createSwarKernel(card), racks)).toEqual([]);
  });

  it('of every target of the house card: nothing to go', () => {
    const card = houseCard();
    const racks = card.hands.map(({ singles, groups }) => singles.map((n, face) => n + groups[face]!));
    expect(new Set(createSimdKernel(vectors, card).toGoMany(flatRacks(racks)))).toEqual(new Set([0]));
  });
});

describe('many racks in one call', () => {
  const card = randomCard('many', 40, 12);
  const random = stream('wasm', 'many');
  const racks = Array.from({ length: 2500 }, (_, index) => anyRack(random, index % 20));
  const expected = Uint8Array.from(racks, (rack) => createKernelOf(card).toGo(rack));

  it.each(['module', 'plain'])('are answered as one by one, by the %s', (which) => {
    const kernel = createSimdKernel(which === 'module' ? vectors : NO_SIMD, card);
    expect(kernel.toGoMany(flatRacks(racks))).toEqual(expected);
    expect(kernel.toGoMany(flatRacks(racks.slice(0, 1)))).toEqual(expected.slice(0, 1));
    expect(kernel.toGoMany(new Uint8Array(0))).toEqual(new Uint8Array(0));
  });
});

const kernels = new Map<string, Kernel>();
function createKernelOf(card: CompiledCard): Kernel {
  const known = kernels.get(card.id) ?? createSwarKernel(card);
  kernels.set(card.id, known);
  return known;
}

it('two cards do not disturb each other', () => {
  const random = stream('wasm', 'two cards');
  const pairs = [CARDS[2]!, CARDS[3]!].map((card): [BatchKernel, Kernel] => [
    createSimdKernel(vectors, card),
    createSwarKernel(card),
  ]);
  for (let i = 0; i < 100; i++) {
    const rack = anyRack(random, 13);
    for (const [kernel, twin] of pairs) expect(answers(kernel, rack)).toBe(answers(twin, rack));
  }
});

it('a later question changes no earlier answer', () => {
  const kernel = createSimdKernel(vectors, CARDS[2]!);
  const random = stream('wasm', 'keep');
  const [first, second] = [anyRack(random, 14), anyRack(random, 13)];
  const [byLine, histogram] = [kernel.toGoByPattern(first), kernel.histogram(first)];
  const many = kernel.toGoMany(flatRacks([first]));
  const before = `${byLine} ${histogram} ${many}`;
  kernel.toGoByPattern(second).fill(9);
  kernel.histogram(second).fill(9);
  kernel.toGoMany(flatRacks([second])).fill(9);
  expect(`${byLine} ${histogram} ${many}`).toBe(before);
});
