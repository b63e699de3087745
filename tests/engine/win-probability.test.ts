// What a table is worth: the features of a rack by their definition, the four chances, and what must hold on any card.
import { describe, expect, test } from 'vitest';
import { preparePlayCard } from '../../shared-engine/analysis/play/play-card.ts';
import { createFeatures, FEATURES } from '../../shared-engine/analysis/win-probability/features.ts';
import { WIN_MODEL } from '../../shared-engine/analysis/win-probability/model.ts';
import {
  chancesOf,
  createTableValue,
  type TableValue,
} from '../../shared-engine/analysis/win-probability/table-value.ts';
import { compileCard } from '../../shared-engine/card/compile.ts';
import type { CompiledCard, Hand } from '../../shared-engine/card/compiled.ts';
import { HOUSE_CARD, houseCard } from '../../shared-engine/card/house/card.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { shuffled, stream } from '../../shared-engine/rules/deal/random.ts';
import { type Bag, bagOf, FULL_SET, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { copiesOf, FACES, JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { randomCard } from '../kit/random-card.ts';

const CARDS: readonly CompiledCard[] = [houseCard(), randomCard('win probability', 12, 30)];
const STEPS = WIN_MODEL.steps;

function rackOf(name: string, tiles = 13): Bag {
  return bagOf(shuffled(facesOf(FULL_SET), stream(name, 'rack')).slice(0, tiles));
}

/** Tiles lacking in singles and pairs, where no joker helps. */
function pairLack(hand: Hand, rack: Bag): number {
  return hand.singles.reduce((sum, single, face) => sum + Math.max(0, single - rack[face]!), 0);
}

function reachOf(card: CompiledCard, rack: Bag): number {
  let sum = 0;
  for (const hand of card.hands) {
    const inPairs = pairLack(hand, rack);
    const quarters =
      tilesToGo(hand, rack) * STEPS.tile +
      (inPairs > 0 ? STEPS.pair : 0) +
      Math.max(0, inPairs - 1) * STEPS.pairs +
      (card.patterns[hand.pattern]!.concealed ? STEPS.concealed : 0);
    if (tilesToGo(hand, rack) < 14) sum += Math.round(2 ** (34 - quarters / 4));
  }
  return Math.log2(sum + 1);
}

/** Means over the hands with the fewest tiles to go, one hand at a time. */
function nearestFeatures(card: CompiledCard, rack: Bag) {
  const least = Math.min(...card.hands.map((hand) => tilesToGo(hand, rack)));
  const nearest = card.hands.filter((hand) => tilesToGo(hand, rack) === least);
  const mean = (of: (hand: Hand) => number) =>
    nearest.reduce((sum, hand) => sum + of(hand), 0) / nearest.length;
  const lacks = nearest.flatMap(({ singles, groups }) =>
    FACES.flatMap((face, index) => {
      const lack = Math.max(0, singles[index]! + groups[index]! - rack[index]!);
      return new Array<number>(lack).fill(copiesOf(face) - rack[index]!);
    }),
  );
  return {
    pairLack: mean((hand) => pairLack(hand, rack)),
    concealed: mean(({ pattern }) => (card.patterns[pattern]!.concealed ? 1 : 0)),
    live: lacks.reduce((sum, live) => sum + live, 0) / lacks.length,
  };
}

describe.each(CARDS.map((card) => ({ name: card.name, card })))('the features on $name', ({ card }) => {
  const features = createFeatures(preparePlayCard(card), STEPS);
  const featuresOf = (rack: Bag) =>
    Object.fromEntries(FEATURES.map((name, at) => [name, features.of(rack)[at]!]));

  test('reach is the weighted count of all hands, on one scale for every rack of the card', () => {
    const [low, high] = [rackOf('first'), rackOf('second')] as const;
    const spread =
      (reachOf(card, high) - reachOf(card, low)) / (featuresOf(high).reach! - featuresOf(low).reach!);
    const center = reachOf(card, low) - featuresOf(low).reach! * spread;
    for (let n = 0; n < 60; n++) {
      const rack = rackOf(`reach ${n}`, 13 + (n % 2));
      expect(featuresOf(rack).reach! * spread + center).toBeCloseTo(reachOf(card, rack), 9);
    }
  });

  test('reach has mean 0 and deviation 1 among the better quarter of random racks', () => {
    const reaches = Array.from({ length: 1200 }, (_, n) => featuresOf(rackOf(`stranger ${n}`)).reach!);
    const better = reaches.sort((a, b) => b - a).slice(0, 300);
    const mean = better.reduce((sum, value) => sum + value, 0) / better.length;
    const variance = better.reduce((sum, value) => sum + (value - mean) ** 2, 0) / better.length;
    // Five standard errors of either and more: 300 of these racks against 500 others.
    expect(Math.abs(mean)).toBeLessThan(0.4);
    expect(Math.sqrt(variance)).toBeGreaterThan(0.7);
    expect(Math.sqrt(variance)).toBeLessThan(1.35);
  });

  test('the features of the nearest hands are their means, hand by hand', () => {
    for (let n = 0; n < 60; n++) {
      const rack = rackOf(`nearest ${n}`, 13 + (n % 2));
      const values = featuresOf(rack);
      const expected = nearestFeatures(card, rack);
      expect(values.jokers).toBe(rack[JOKER_INDEX]);
      expect(values.pairLack).toBeCloseTo(expected.pairLack, 9);
      expect(values.concealed).toBeCloseTo(expected.concealed, 9);
      expect(values.live).toBeCloseTo(expected.live, 9);
    }
  });

  test('what a rack weighs does not depend on the racks asked about before', () => {
    const used = createTableValue(card);
    for (let n = 0; n < 40; n++) used.weight(rackOf(`before ${n}`), 0, 0);
    const fresh = createTableValue(card);
    for (let n = 0; n < 40; n++) {
      const rack = rackOf(`asked ${n}`);
      const weight = used.weight(rack, 0, 2);
      expect(weight).toBe(fresh.weight(rack, 0, 2));
      expect(weight).toBe(fresh.weight(Uint8Array.from([...rack, ...rack]), rack.length, 2));
      expect(weight).toBeGreaterThan(0);
    }
  });
});

/** The chances of four seats of which seat 0 deals. */
function chances(value: TableValue, racks: readonly Bag[]): Float64Array {
  const out = new Float64Array(4);
  chancesOf(
    racks.map((rack, place) => value.weight(rack, 0, place)),
    value.wall,
    out,
  );
  return out;
}

/** The chance of the last seat with this rack, at a table with three random ones. */
function chanceWith(value: TableValue, rack: Bag): number {
  return chances(value, [rackOf('dealer', 14), rackOf('right'), rackOf('across'), rack])[3]!;
}

test('the four chances of a table and that of a wall game add up to 100', () => {
  const value = createTableValue(CARDS[0]!);
  for (let n = 0; n < 40; n++) {
    const table = chances(
      value,
      [0, 1, 2, 3].map((seat) => rackOf(`table ${n} ${seat}`, seat === 0 ? 14 : 13)),
    );
    const won = table.reduce((sum, chance) => sum + chance, 0);
    expect(Math.min(...table)).toBeGreaterThan(0);
    expect(won).toBeLessThan(100);
    expect(won).toBeGreaterThan(50);
  }
});

test('what a neighbor gains the other three lose, each in proportion to its chance', () => {
  const value = createTableValue(CARDS[0]!);
  const [hand] = CARDS[0]!.hands;
  const complete = hand!.singles.map((single, face) => single + hand!.groups[face]!);
  const racks = [rackOf('a', 14), rackOf('b'), rackOf('c'), rackOf('d')];
  const [before, after] = [racks, racks.with(2, complete)].map((table) => chances(value, table));
  expect(after![2]!).toBeGreaterThan(before![2]!);
  for (const seat of [1, 3]) {
    expect(after![seat]! / before![seat]!).toBeLessThan(1);
    expect(after![seat]! / before![seat]!).toBeCloseTo(after![0]! / before![0]!, 9);
  }
});

test('every tile that a hand gets back makes a rack weigh more or leaves it as it is', () => {
  const value = createTableValue(CARDS[0]!);
  for (let n = 0; n < 30; n++) {
    const { hands } = CARDS[0]!;
    const hand = hands[stream(`target ${n}`, 'target').below(hands.length)]!;
    const rack = hand.singles.map((single, face) => single + hand.groups[face]!);
    if (rack.some((count, face) => count > copiesOf(FACES[face]!))) continue;
    const tiles = shuffled(facesOf(rack), stream(`give ${n}`, 'order'));
    const won = [8, 10, 12, 14].map((held) => chanceWith(value, bagOf(tiles.slice(0, held))));
    expect(won).toEqual([...won].sort((a, b) => a - b));
    expect(won.at(-1)).toBeGreaterThan(60);
  }
});

test('a card of a single hand has chances too', () => {
  const [pattern] = HOUSE_CARD.patterns;
  const whole = compileCard({ ...HOUSE_CARD, patterns: [pattern!] });
  const hand = whole.hands[0]!;
  const value = createTableValue({ ...whole, hands: [hand] });
  const complete = hand.singles.map((single, face) => single + hand.groups[face]!);
  expect(chanceWith(value, complete)).toBeGreaterThan(chanceWith(value, rackOf('poor')));
});

test('a tile traded for a joker never costs more than 1 win in 100 games', () => {
  const value = createTableValue(CARDS[0]!);
  for (let n = 0; n < 60; n++) {
    const rack = rackOf(`joker ${n}`);
    const idle = rack.findIndex((count, face) => count === 1 && face < JOKER_INDEX);
    const traded = rack.map((count, face) =>
      face === idle ? count - 1 : face === JOKER_INDEX ? count + 1 : count,
    );
    expect(sizeOf(traded)).toBe(13);
    expect(chanceWith(value, traded)).toBeGreaterThan(chanceWith(value, rack) - 1);
  }
});

describe('the model that comes with the engine', () => {
  test('says which command made it, from which seed, when and from how many plays', () => {
    const { command, seed, date, plays, cards } = WIN_MODEL.made;
    expect(command).toMatch(/^npm run build:win-model -- /);
    expect(command).toContain(`--seed ${seed}`);
    expect(command).toContain(`--date ${date}`);
    expect(date).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(plays).toBeGreaterThanOrEqual(10_000);
    expect(cards).toBeGreaterThan(5);
  });
});
