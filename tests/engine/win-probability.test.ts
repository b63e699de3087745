// The win probability of a rack: its features by their definition, its table, and what must hold on any card.
import { describe, expect, test } from 'vitest';
import { preparePlayCard } from '../../shared-engine/analysis/play/play-card.ts';
import { createFeatures, FEATURES } from '../../shared-engine/analysis/win-probability/features.ts';
import { WIN_MODEL } from '../../shared-engine/analysis/win-probability/model.ts';
import {
  createWinProbability,
  winProbabilityAt,
} from '../../shared-engine/analysis/win-probability/win-probability.ts';
import { compileCard } from '../../shared-engine/card/compile.ts';
import type { CompiledCard, Hand } from '../../shared-engine/card/compiled.ts';
import { HOUSE_CARD, houseCard } from '../../shared-engine/card/house/card.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { shuffled, stream } from '../../shared-engine/rules/deal/random.ts';
import { type Bag, bagOf, FULL_SET, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { copiesOf, FACES, JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { gamesOn } from '../../shared-engine/tools/win-model/games.ts';
import { randomCard } from '../kit/random-card.ts';

const CARDS: readonly CompiledCard[] = [houseCard(), randomCard('outlook', 12, 30)];
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

  test('a win probability lies between 0 and 100 and does not depend on the racks asked about before', () => {
    const used = createWinProbability(card);
    for (let n = 0; n < 40; n++) used.of(rackOf(`before ${n}`), 0, 0);
    const fresh = createWinProbability(card);
    for (let n = 0; n < 40; n++) {
      const rack = rackOf(`asked ${n}`);
      const chance = used.of(rack, 0, 2);
      expect(chance).toBe(fresh.of(rack, 0, 2));
      expect(chance).toBe(fresh.of(Uint8Array.from([...rack, ...rack]), rack.length, 2));
      expect(chance).toBeGreaterThanOrEqual(0);
      expect(chance).toBeLessThanOrEqual(100);
    }
  });
});

test('every tile that a hand gets back raises the win probability or leaves it as it is', () => {
  const winProbability = createWinProbability(CARDS[0]!);
  for (let n = 0; n < 30; n++) {
    const { hands } = CARDS[0]!;
    const hand = hands[stream(`target ${n}`, 'target').below(hands.length)]!;
    const rack = hand.singles.map((single, face) => single + hand.groups[face]!);
    if (rack.some((count, face) => count > copiesOf(FACES[face]!))) continue;
    const tiles = shuffled(facesOf(rack), stream(`give ${n}`, 'order'));
    const chances = [8, 10, 12, 14].map((held) => winProbability.of(bagOf(tiles.slice(0, held)), 0, 1));
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances.at(-1)).toBeGreaterThan(60);
  }
});

test('a card of a single hand has win probabilities too', () => {
  const [pattern] = HOUSE_CARD.patterns;
  const whole = compileCard({ ...HOUSE_CARD, patterns: [pattern!] });
  const hand = whole.hands[0]!;
  const winProbability = createWinProbability({ ...whole, hands: [hand] });
  const complete = hand.singles.map((single, face) => single + hand.groups[face]!);
  const poor = winProbability.of(rackOf('poor'), 0, 0);
  expect(poor).toBeGreaterThan(0);
  expect(winProbability.of(complete, 0, 0)).toBeGreaterThan(poor);
});

test('a tile traded for a joker never costs more than 1 win in 100 games', () => {
  const winProbability = createWinProbability(CARDS[0]!);
  for (let n = 0; n < 60; n++) {
    const rack = rackOf(`joker ${n}`);
    const idle = rack.findIndex((count, face) => count === 1 && face < JOKER_INDEX);
    const traded = rack.map((count, face) =>
      face === idle ? count - 1 : face === JOKER_INDEX ? count + 1 : count,
    );
    expect(sizeOf(traded)).toBe(13);
    expect(winProbability.of(traded, 0, 3)).toBeGreaterThan(winProbability.of(rack, 0, 3) - 1);
  }
});

test('the win probabilities of four seats after an exchange add up to about one winner', () => {
  const winProbability = createWinProbability(CARDS[0]!);
  const play = gamesOn(CARDS[0]!, NO_SIMD);
  let total = 0;
  const rounds = 40;
  for (let n = 0; n < rounds; n++) {
    for (const { rack, place } of play(`adds up ${n}`, 0)) total += winProbability.of(rack, 0, place);
  }
  expect(total / rounds).toBeGreaterThan(85);
  expect(total / rounds).toBeLessThan(115);
});

describe('the table from score to win probability', () => {
  const table = { scores: [-1, 0, 2], winProbabilities: [5, 20, 60] };

  test('a score at a knot gives the knot’s value, and one between two knots is interpolated', () => {
    expect(table.scores.map((score) => winProbabilityAt(table, score))).toEqual([5, 20, 60]);
    expect(winProbabilityAt(table, -0.5)).toBe(12.5);
    expect(winProbabilityAt(table, 0.5)).toBe(30);
  });

  test('a score beyond the ends gives the value at the end', () => {
    expect(winProbabilityAt(table, -9)).toBe(5);
    expect(winProbabilityAt(table, 9)).toBe(60);
  });
});

describe('the model that comes with the engine', () => {
  test('has a table that rises all along', () => {
    const { scores, winProbabilities } = WIN_MODEL;
    expect(scores.length).toBe(winProbabilities.length);
    expect(scores.length).toBeGreaterThan(15);
    for (let at = 1; at < scores.length; at++) {
      expect(scores[at]).toBeGreaterThan(scores[at - 1]!);
      expect(winProbabilities[at]).toBeGreaterThan(winProbabilities[at - 1]!);
    }
  });

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
