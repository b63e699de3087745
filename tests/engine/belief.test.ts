// Belief: deals that could be, passes weighed exactly, the same deals whatever else was asked for.
import { describe, expect, it, test } from 'vitest';
import { createBelief } from '../../shared-engine/analysis/belief/belief.ts';
import { DEALS_PER_BATCH } from '../../shared-engine/analysis/belief/particle-filter.ts';
import { offeredChoices, type Situation } from '../../shared-engine/analysis/belief/situation.ts';
import { DEAL_BYTES } from '../../shared-engine/analysis/rollouts/batch.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { createRng } from '../../shared-engine/kernels/philox.ts';
import { expMinus } from '../../shared-engine/kernels/portable-math.ts';
import { loadSimd, NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { createTileValues } from '../../shared-engine/kernels/tile-value/simd.ts';
import { type ChoiceModel, createChoiceModel } from '../../shared-engine/policy/choice-model.ts';
import { legalPasses } from '../../shared-engine/policy/pass-selection.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { bagOf, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT, FACES, faceIndex } from '../../shared-engine/rules/tiles/face.ts';
import { records } from '../kit/reviews.ts';

const card = houseCard();
const simd = await loadSimd();
const model = createChoiceModel(createTileValues(simd, card));
const belief = createBelief(model);

function racksOf(seed: string, count: number): Uint8Array[] {
  const random = stream(seed, 'racks');
  return Array.from({ length: count }, () => Uint8Array.from(bagOf(drawn(facesOf(FULL_SET), 13, random))));
}

/** Every pass of `size` tiles, as counts. */
function passesFrom(rack: Uint8Array, size: number): Uint8Array[] {
  return legalPasses(rack, size).map((tiles) => Uint8Array.from(bagOf(tiles.map((face) => FACES[face]!))));
}

test('the exponential agrees with the built-in one', () => {
  for (let x = 0; x <= 60; x += 0.37) {
    expect(Math.abs(expMinus(x) / Math.exp(-x) - 1)).toBeLessThan(1e-12);
  }
  expect(expMinus(0)).toBe(1);
});

describe('the probability of a pass', () => {
  test.each([1, 2, 3])('C1 adds up to one over all legal passes of %i', (size) => {
    for (const rack of racksOf(`sum ${size}`, 8)) {
      model.read(rack, 0);
      const sum = passesFrom(rack, size).reduce((all, pass) => all + model.probability(pass, 0, size), 0);
      expect(sum).toBeCloseTo(1, 9);
    }
  });

  test('C2 is 0 for a joker or a tile that is not held', () => {
    const rack = Uint8Array.from(bagOf(['joker', 'east', 'east', 'west', 'flower', 'bam-1']));
    model.read(rack, 0);
    const probability = (...tiles: Parameters<typeof bagOf>[0]) =>
      model.probability(Uint8Array.from(bagOf(tiles)), 0, 3);
    expect(probability('joker', 'east', 'west')).toBe(0);
    expect(probability('east', 'east', 'east')).toBe(0);
    expect(probability('east', 'west', 'bam-1')).toBeGreaterThan(0);
  });

  test('is the same with the SIMD module and without', () => {
    const withoutSimd = createChoiceModel(createTileValues(NO_SIMD, card));
    for (const rack of racksOf('twins', 10)) {
      model.read(rack, 0);
      withoutSimd.read(rack, 0);
      for (const pass of passesFrom(rack, 3).slice(0, 40)) {
        expect(withoutSimd.probability(pass, 0, 3)).toBe(model.probability(pass, 0, 3));
      }
    }
  });

  test('is how often a pass is drawn, as far as the value of tiles decides', () => {
    const rng = createRng(5, 5);
    const [rack] = racksOf('drawn', 1) as [Uint8Array];
    model.read(rack, 0);
    const pass = new Uint8Array(FACE_COUNT);
    const counts = new Map<string, number>();
    const all = 4000;
    for (let n = 0; n < all; n++) {
      const probability = model.draw(new Uint8Array(FACE_COUNT), 3, pass, rng.uniform);
      // The other twentieth of the probability is spread evenly.
      const evenly = 0.05 / passesFrom(rack, 3).length;
      expect(0.95 * probability + evenly).toBeCloseTo(model.probability(pass, 0, 3), 9);
      counts.set(pass.join(), (counts.get(pass.join()) ?? 0) + 1);
    }
    for (const each of passesFrom(rack, 3)) {
      const expected = ((model.probability(each, 0, 3) - 0.05 / passesFrom(rack, 3).length) / 0.95) * all;
      // Six standard deviations of a count.
      expect(Math.abs((counts.get(each.join()) ?? 0) - expected)).toBeLessThan(6 * Math.sqrt(expected + 1));
    }
  });

  test('leaves fixed tiles alone when a pass is drawn', () => {
    const rng = createRng(6, 6);
    const pass = new Uint8Array(FACE_COUNT);
    for (const rack of racksOf('bound', 20)) {
      const fixed = rack.map((count, face) => (face < 18 ? count : 0));
      model.read(rack, 0);
      model.draw(fixed, 2, pass, rng.uniform);
      for (let face = 0; face < 18; face++) expect(pass[face]).toBe(0);
      expect(pass.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(2);
    }
  });
});

describe('sampled deals', () => {
  const situations = records('believed', 8).flatMap((record) =>
    offeredChoices(record).map(({ situation }) => situation),
  );

  it('S1 D2 have racks of the right size, from one set', () => {
    expect(situations.length).toBeGreaterThan(50);
    for (const situation of situations) {
      const deals = belief.sampledDeals(situation, 1, { first: 0, batches: 2 });
      for (let at = 0; at < deals.length; at += DEAL_BYTES) {
        FULL_SET.forEach((copies, face) => {
          const held = SEATS.reduce<number>((sum, seat) => sum + deals[at + seat * FACE_COUNT + face]!, 0);
          expect(held).toBeLessThanOrEqual(copies);
        });
        for (const seat of SEATS) {
          const rack = deals.subarray(at + seat * FACE_COUNT, at + (seat + 1) * FACE_COUNT);
          const size = rack.reduce((sum, count) => sum + count, 0);
          expect(size).toBe(seat === situation.dealer ? 14 : 13);
          if (seat === situation.seat) expect([...rack]).toEqual([...situation.rack]);
        }
      }
    }
  });

  it('V1 have what the seat has just given in the receiver’s rack', () => {
    for (const situation of situations.filter(({ past }) => past.length === 1)) {
      const { gave, toward } = situation.past[0]!;
      const receiver = (situation.seat + toward) % 4;
      const deals = belief.sampledDeals(situation, 2, { first: 0, batches: 3 });
      const given = new Uint8Array(FACE_COUNT);
      for (const face of gave) given[face]!++;
      for (let at = receiver * FACE_COUNT; at < deals.length; at += DEAL_BYTES) {
        given.forEach((count, face) => {
          expect(deals[at + face]!).toBeGreaterThanOrEqual(count);
        });
      }
    }
  });

  it('are the same whichever batches are asked for, and different for another seed', () => {
    const situation = situations.find(({ past }) => past.length === 4)!;
    const all = belief.sampledDeals(situation, 9, { first: 0, batches: 5 });
    const bytes = DEALS_PER_BATCH * DEAL_BYTES;
    expect(belief.sampledDeals(situation, 9, { first: 3, batches: 2 })).toEqual(all.slice(3 * bytes));
    expect(belief.sampledDeals(situation, 10, { first: 0, batches: 5 })).not.toEqual(all);
  });

  it('are the same whether the belief of the step before goes on or begins at the deal', () => {
    const range = { first: 2, batches: 2 };
    const alone = situations.map((situation) => createBelief(model).sampledDeals(situation, 5, range));
    const asked = [...situations.keys()];
    for (const order of [asked, [...asked].reverse(), asked.filter((n) => n % 2 === 0)]) {
      const going = createBelief(model);
      for (const n of order) expect(going.sampledDeals(situations[n]!, 5, range)).toEqual(alone[n]);
    }
  });

  it('begin anew where the same seat has seen another move', () => {
    const going = createBelief(model);
    const range = { first: 0, batches: 1 };
    const before = situations.find(({ past }) => past.length === 2)!;
    const after = (gave: readonly number[]): Situation => {
      const last = { ...before.past[1]!, gave };
      return { ...before, past: [before.past[0]!, last] };
    };
    const other = after([...before.past[1]!.gave].reverse());
    for (const situation of [before, other, before]) {
      const alone = createBelief(model).sampledDeals(situation, 6, range);
      expect(going.sampledDeals(situation, 6, range)).toEqual(alone);
    }
  });

  it('B3 are sampled for seats that passed blind and for seats whose neighbors did', () => {
    const blind = situations.filter(({ past }) => past.some((move) => move.blind.some((count) => count > 0)));
    expect(blind.length).toBeGreaterThan(5);
    expect(blind.some(({ past }) => past.some(({ forwarded }) => forwarded > 0))).toBe(true);
  });
});

describe('what a received pass tells', () => {
  const start = bagOf(
    facesOf(FULL_SET)
      .filter((face) => face.startsWith('dot'))
      .slice(0, 13),
  );

  /** Three tiles came from the seat to the left; the seat knows nothing else. */
  function afterPass(received: readonly number[]): Situation {
    const gave = [18, 18, 18];
    const past = [{ toward: 1, gave, received, blind: [0, 0, 0, 0] as const, forwarded: 0 }];
    const rack = [...start];
    for (const face of gave) rack[face]!--;
    for (const face of received) rack[face]!++;
    return {
      seat: 0,
      dealer: 1,
      terms: STANDARD_TERMS.friends,
      step: 1,
      agreed: [0, 0, 0, 0],
      start,
      rack,
      past,
    };
  }

  test('the giver holds another copy of a tile it gave less often than it would by chance', () => {
    const east = faceIndex('east');
    const gave = [east, faceIndex('bam-2'), faceIndex('crak-7')];
    const kept = meanHeld(belief, afterPass(gave), 3, east);
    const chance = meanHeld(createBelief(anyPass()), afterPass(gave), 3, east);
    expect(kept).toBeLessThan(chance);
  });

  /** Takes every pass as equally likely, so that a pass tells nothing. */
  function anyPass(): ChoiceModel {
    return createChoiceModel(createTileValues(simd, card), 1e9);
  }

  function meanHeld(
    source: ReturnType<typeof createBelief>,
    situation: Situation,
    seat: number,
    face: number,
  ) {
    const batches = 150;
    const deals = source.sampledDeals(situation, 3, { first: 0, batches });
    let held = 0;
    for (let at = seat * FACE_COUNT; at < deals.length; at += DEAL_BYTES) held += deals[at + face]!;
    return held / (batches * DEALS_PER_BATCH);
  }

  test('a tile that the seat gave and got back is not counted twice', () => {
    const own = 18;
    const situation = afterPass([0, 1, 2]);
    const back = {
      ...situation,
      past: [
        ...situation.past,
        {
          toward: 3,
          gave: [19, 19, 19],
          received: [own, own, own],
          blind: [0, 0, 0, 0] as const,
          forwarded: 0,
        },
      ],
    };
    belief.sampledDeals({ ...situation, rack: rackAfter(situation) }, 4, { first: 0, batches: 4 });
    const deals = belief.sampledDeals({ ...back, rack: rackAfter(back) }, 4, { first: 0, batches: 4 });
    for (let at = 0; at < deals.length; at += DEAL_BYTES) {
      const held = SEATS.reduce<number>((sum, seat) => sum + deals[at + seat * FACE_COUNT + own]!, 0);
      expect(held).toBeLessThanOrEqual(4);
    }
  });

  function rackAfter({ start: dealt, past }: Pick<Situation, 'start' | 'past'>): number[] {
    const rack = [...dealt];
    for (const { gave, received } of past) {
      for (const face of gave) rack[face]!--;
      for (const face of received) rack[face]!++;
    }
    return rack;
  }
});
