// Tiles to go of the SIMD module against the implementations in TypeScript, and what is used where it cannot run.
import { beforeAll, describe, expect, it } from 'vitest';
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { loadSimd, NO_SIMD, type SimdModule } from '../../shared-engine/kernels/simd/module.ts';
import type { Kernel } from '../../shared-engine/kernels/tiles-to-go/kernel.ts';
import { createReferenceKernel } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { type BatchKernel, createSimdKernel } from '../../shared-engine/kernels/tiles-to-go/simd.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import { type Bag, EMPTY_BAG, FULL_SET, facesOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { answers, flatRacks, randomRack } from '../kit/racks.ts';
import { randomCard } from '../kit/random-card.ts';

/** Fewer hands than a vector holds, rows of many vectors, and the house card. */
const CARDS = [randomCard('one', 1, 1), randomCard('few', 3, 5), randomCard('wide', 120, 60), houseCard()];

let simd: SimdModule;

beforeAll(async () => {
  simd = await loadSimd();
});

/** A rack that no wall would deal, beyond what any hand or byte holds. */
function strangeRack(random: Random): Bag {
  return EMPTY_BAG.map(() => (random.below(4) === 0 ? random.below(400) : 0));
}

function differing(card: CompiledCard, other: Kernel, racks: readonly Bag[]): Bag[] {
  const kernel = createSimdKernel(simd, card);
  return racks.filter((rack) => answers(kernel, rack) !== answers(other, rack));
}

it('the SIMD module has been built by npm run build:wasm', () => {
  expect(simd.kind).toBe('ready');
});

describe('the SIMD kernel agrees', () => {
  it.each(CARDS)('with the packed words about 4,000 dealt racks, on $id', (card) => {
    const random = stream(card.id, 'wasm/dealt');
    const racks = Array.from({ length: 4000 }, (_, index) => randomRack(random, 13 + (index % 2)));
    expect(differing(card, createSwarKernel(card), racks)).toEqual([]);
  });

  it.each(CARDS)('with the definition about racks big, small and strange, on $id', (card) => {
    const random = stream(card.id, 'wasm/strange');
    const strange = Array.from({ length: 60 }, () => strangeRack(random));
    const sizes = Array.from({ length: 40 }, (_, size) => randomRack(random, size));
    const racks = [EMPTY_BAG, FULL_SET, ...strange, ...sizes];
    expect(differing(card, createReferenceKernel(card), racks)).toEqual([]);
  });

  it('with the packed words about racks that differ by one tile, asked one after another', () => {
    const card = randomCard('near', 30, 20);
    const random = stream('wasm', 'near');
    const racks = Array.from({ length: 20 }, () => randomRack(random, 14)).flatMap((rack) => [
      rack,
      ...facesOf(rack).map((face) => takeFrom(rack, [face]) ?? EMPTY_BAG),
    ]);
    expect(differing(card, createSwarKernel(card), racks)).toEqual([]);
  });

  it('that every hand of the house card has 0 tiles to go', () => {
    const card = houseCard();
    const racks = card.hands.map(({ singles, groups }) => singles.map((n, face) => n + groups[face]!));
    expect(new Set(createSimdKernel(simd, card).toGoMany(flatRacks(racks)))).toEqual(new Set([0]));
  });
});

describe('many racks in one call', () => {
  const card = randomCard('many', 40, 12);
  const random = stream('wasm', 'many');
  const racks = Array.from({ length: 2500 }, (_, index) => randomRack(random, index % 20));
  const expected = Uint8Array.from(racks, (rack) => createKernelOf(card).toGo(rack));

  it.each(['SIMD', 'TypeScript'])('are answered as one by one, by %s', (which) => {
    const kernel = createSimdKernel(which === 'SIMD' ? simd : NO_SIMD, card);
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

it('kernels of two cards do not disturb each other', () => {
  const random = stream('wasm', 'two cards');
  const pairs = [CARDS[2]!, CARDS[3]!].map((card): [BatchKernel, Kernel] => [
    createSimdKernel(simd, card),
    createSwarKernel(card),
  ]);
  for (let i = 0; i < 100; i++) {
    const rack = randomRack(random, 13);
    for (const [kernel, other] of pairs) expect(answers(kernel, rack)).toBe(answers(other, rack));
  }
});

it('a later call changes no earlier result', () => {
  const kernel = createSimdKernel(simd, CARDS[2]!);
  const random = stream('wasm', 'keep');
  const [first, second] = [randomRack(random, 14), randomRack(random, 13)];
  const [byPattern, histogram] = [kernel.toGoByPattern(first), kernel.histogram(first)];
  const many = kernel.toGoMany(flatRacks([first]));
  const before = `${byPattern} ${histogram} ${many}`;
  kernel.toGoByPattern(second).fill(9);
  kernel.histogram(second).fill(9);
  kernel.toGoMany(flatRacks([second])).fill(9);
  expect(`${byPattern} ${histogram} ${many}`).toBe(before);
});
