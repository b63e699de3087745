// Tiles to go in packed words against the definition, and what every kernel promises to its caller.
import { describe, expect, it } from 'vitest';
import type { CompiledCard, Hand } from '../../shared-engine/card/compiled.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { createReferenceKernel } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
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
import { FACE_COUNT } from '../../shared-engine/rules/tiles/face.ts';
import { answers, answersByDefinition, randomRack } from '../kit/racks.ts';
import { randomCard } from '../kit/random-card.ts';

const CARDS = [randomCard('many', 40, 12), randomCard('few', 3, 5), randomCard('one', 1, 1), houseCard()];

/** A rack that no wall would deal: long rows of one face, more tiles than a hand, jokers without end. */
function strangeRack(random: Random): Bag {
  return EMPTY_BAG.map(() => (random.below(4) === 0 ? random.below(16) : 0));
}

function differing(card: CompiledCard, racks: readonly Bag[]): Bag[] {
  const kernel = createSwarKernel(card);
  return racks.filter((rack) => answers(kernel, rack) !== answersByDefinition(card, rack));
}

describe('packed words agree with the definition', () => {
  it.each(CARDS)('about 1,000 dealt racks on $id', (card) => {
    const random = stream(card.id, 'dealt');
    const racks = Array.from({ length: 1000 }, (_, index) => randomRack(random, 13 + (index % 2)));
    expect(differing(card, racks)).toEqual([]);
  });

  it.each(CARDS)(
    'about racks with a tile or three taken away or added, asked one after another, on $id',
    (card) => {
      const random = stream(card.id, 'near');
      const racks = Array.from({ length: 25 }, () => randomRack(random, 14)).flatMap((rack) => {
        const lost = facesOf(rack).map((face) => takeFrom(rack, [face]) ?? EMPTY_BAG);
        const threeLost = bagOf(drawn(facesOf(rack), 11, random));
        return [rack, ...lost, threeLost, bagOf([...facesOf(rack), ...facesOf(randomRack(random, 3))])];
      });
      expect(differing(card, racks)).toEqual([]);
    },
  );

  it.each(CARDS)('about racks that no wall would deal, on $id', (card) => {
    const random = stream(card.id, 'strange');
    const racks = Array.from({ length: 500 }, () => strangeRack(random));
    expect(differing(card, [EMPTY_BAG, FULL_SET, ...racks])).toEqual([]);
  });
});

it('the reference kernel agrees with the definition', () => {
  const random = stream('plain', 'dealt');
  for (const card of CARDS) {
    const reference = createReferenceKernel(card);
    for (let index = 0; index < 60; index++) {
      const rack = index % 2 === 0 ? randomRack(random, 13) : strangeRack(random);
      expect(answers(reference, rack)).toBe(answersByDefinition(card, rack));
    }
  }
});

describe('the joker rule', () => {
  const none = new Array<number>(FACE_COUNT).fill(0);
  const wanting = (singles: Bag, groups: Bag): Hand => ({ pattern: 0, singles, groups });
  const kernelOf = (hand: Hand) => createSwarKernel({ ...randomCard('one', 1, 1), hands: [hand] });
  const jokers = (count: number) => bagOf(new Array(count).fill('joker'));
  const kongs = bagOf(facesOf(FULL_SET).slice(0, 12));
  const pair = bagOf(['north', 'north']);

  it('a joker never stands in a single or a pair', () => {
    expect(kernelOf(wanting(bagOf(facesOf(FULL_SET).slice(0, 14)), none)).toGo(jokers(8))).toBe(14);
    expect(kernelOf(wanting(pair, kongs)).toGo(jokers(8))).toBe(6);
  });

  it('natural tiles go to the pair first and jokers take their place in a group of the same face', () => {
    const quintAndPair = wanting(pair, bagOf([...facesOf(kongs).slice(0, 9), 'north', 'north', 'north']));
    const kernel = kernelOf(quintAndPair);
    expect(kernel.toGo(bagOf(['north', 'north', 'joker', 'joker', 'joker']))).toBe(9);
    expect(kernel.toGo(bagOf(['north', 'joker', 'joker', 'joker']))).toBe(10);
  });

  it('more jokers than missing group tiles help no further', () => {
    const full = bagOf([...facesOf(kongs), 'joker', 'joker']);
    expect(kernelOf(wanting(pair, kongs)).toGo(full)).toBe(2);
  });
});

describe('results are the caller’s to change', () => {
  const card = CARDS[0]!;
  const random = stream('keep', 'racks');
  const [first, second] = [randomRack(random, 14), randomRack(random, 13)];

  it('a later call changes no earlier result', () => {
    const kernel = createSwarKernel(card);
    const byPattern = kernel.toGoByPattern(first);
    const histogram = kernel.histogram(first);
    const before = `${byPattern} ${histogram}`;
    kernel.toGoByPattern(second);
    kernel.histogram(second);
    expect(`${byPattern} ${histogram}`).toBe(before);
  });

  it('an earlier call changes no result, and neither does changing its result', () => {
    const asked = createSwarKernel(card);
    asked.histogram(second).fill(9);
    asked.toGoByPattern(second).fill(9);
    expect(answers(asked, first)).toBe(answers(createSwarKernel(card), first));
    expect(answers(asked, second)).toBe(answers(createSwarKernel(card), second));
  });

  it('every hand is counted once and the nearest distance is the first one counted', () => {
    const kernel = createSwarKernel(card);
    for (let i = 0; i < 200; i++) {
      const rack = randomRack(random, 13);
      const histogram = kernel.histogram(rack);
      expect(histogram.reduce((sum, count) => sum + count, 0)).toBe(card.hands.length);
      expect(histogram.findIndex((count) => count > 0)).toBe(kernel.toGo(rack));
      expect(Math.min(...kernel.toGoByPattern(rack))).toBe(kernel.toGo(rack));
    }
  });

  it('a completed hand has 0 tiles to go', () => {
    const kernel = createSwarKernel(card);
    for (const { singles, groups } of card.hands) {
      expect(kernel.toGo(singles.map((count, face) => count + groups[face]!))).toBe(0);
    }
  });
});
