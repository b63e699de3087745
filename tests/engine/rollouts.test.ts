// Rollouts: tiles are neither lost nor made, seats know their own tiles, noise depends on its key alone.
import { describe, expect, it, test } from 'vitest';
import {
  DEAL_BYTES,
  type Leaf,
  RESULT_WIDTH,
  type RolloutBatch,
  type Rollouts,
} from '../../shared-engine/analysis/rollouts/batch.ts';
import { GUMBEL } from '../../shared-engine/analysis/rollouts/noise.ts';
import { createReferenceRollouts } from '../../shared-engine/analysis/rollouts/reference.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { philox } from '../../shared-engine/kernels/philox.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { createTileValues } from '../../shared-engine/kernels/tile-value/simd.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { STEPS, type Step } from '../../shared-engine/rules/exchange/schedule.ts';
import { bagOf, FULL_SET, facesOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT } from '../../shared-engine/rules/tiles/face.ts';
import { randomCard } from '../kit/random-card.ts';
import { anyBatch } from '../kit/rollout-batches.ts';

const card = randomCard('playout', 40, 20);

/** So heavy beside any rack that a share of the whole tells what the rack weighs. */
const HEAVY = 1e9;

/** Rollouts that end in the number of tiles of one face in each rack; of all faces for −1. */
function counting(face: number): Rollouts {
  const weight: Leaf['weight'] = (racks, at) => {
    let sum = 0;
    for (let i = 0; i < FACE_COUNT; i++) if (face === -1 || i === face) sum += racks[at + i]!;
    return sum;
  };
  const rollouts = createReferenceRollouts(card, { weight, wall: HEAVY });
  return { run: (batch) => rollouts.run(batch).map((share) => Math.round((share / 100) * HEAVY)) };
}

describe('the random generator', () => {
  // Source: known-answer tests of Random123, the code published with the paper (values from memory).
  const ALL = 0xffffffff;
  const KNOWN = [
    [
      [0, 0, 0, 0],
      [0, 0],
      [0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8],
    ],
    [
      [ALL, ALL, ALL, ALL],
      [ALL, ALL],
      [0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd],
    ],
    [
      [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344],
      [0xa4093822, 0x299f31d0],
      [0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1],
    ],
  ] as const;

  test.each(KNOWN)('gives the published words for counter %j', ([c0, c1, c2, c3], [k0, k1], words) => {
    const out = Uint32Array.of(c0, c1, c2, c3);
    philox(out, k0, k1);
    expect([...out]).toEqual([...words]);
  });

  test('noise has the mean and spread of the Gumbel distribution', () => {
    const mean = GUMBEL.reduce((sum, value) => sum + value, 0) / GUMBEL.length;
    const variance = GUMBEL.reduce((sum, value) => sum + (value - mean) ** 2, 0) / GUMBEL.length;
    // Euler's constant and π²/6; a thousand quantiles leave the far tail out.
    expect(mean).toBeCloseTo(0.5772156649, 2);
    expect(variance).toBeCloseTo(Math.PI ** 2 / 6, 1);
    for (let i = 1; i < GUMBEL.length; i++) expect(GUMBEL[i]!).toBeGreaterThan(GUMBEL[i - 1]!);
  });
});

describe('a rollout', () => {
  it.each(STEPS)('C1 B3 keeps every rack its size, from %s', (step) => {
    for (const [seat, dealer] of [
      [0, 0],
      [2, 1],
    ] as const) {
      const batch = anyBatch({ step, seat, dealer, deals: 30, alternatives: 3 }, stream('sizes', step));
      const results = counting(-1).run(batch);
      results.forEach((size, i) => {
        expect(size).toBe(i % 4 === dealer ? 14 : 13);
      });
    }
  });

  it.each<Step>(['first-right', 'first-left', 'second-right', 'courtesy-ask'])(
    'moves tiles between the racks and makes no new ones, from %s',
    (step) => {
      const batch = anyBatch({ step, seat: 1, dealer: 3, deals: 20, alternatives: 2 }, stream('kept', step));
      for (const face of [0, 13, 34, 35]) {
        const results = counting(face).run(batch);
        for (let nth = 0; nth < batch.count * 2; nth++) {
          const deal = Math.floor(nth / 2) * DEAL_BYTES;
          const held = SEATS.reduce<number>(
            (sum, seat) => sum + batch.deals[deal + seat * FACE_COUNT + face]!,
            0,
          );
          const at = nth * RESULT_WIDTH;
          const ended = SEATS.reduce<number>((sum, seat) => sum + results[at + seat]!, 0);
          expect(ended).toBe(held);
        }
      }
    },
  );

  test('C2 a joker never moves', () => {
    const batch = anyBatch(
      { step: 'first-right', seat: 0, dealer: 0, deals: 40, alternatives: 1 },
      stream('jokers', 'stay'),
    );
    const results = counting(35).run(batch);
    for (let deal = 0; deal < batch.count; deal++) {
      for (const seat of SEATS) {
        const held = batch.deals[deal * DEAL_BYTES + seat * FACE_COUNT + 35];
        expect(results[deal * RESULT_WIDTH + seat]).toBe(held);
      }
    }
  });
});

describe('what a seat may know', () => {
  test('V1 what arrives in the next pass does not depend on the racks of others than its giver', () => {
    const rollouts = Array.from({ length: FACE_COUNT }, (_, face) => counting(face));
    const shape = { step: 'first-right', seat: 0, dealer: 0, deals: 6, alternatives: 1 } as const;
    const batch: RolloutBatch = { ...anyBatch(shape, stream('own', 'tiles')), end: 'step' };
    const changed: RolloutBatch = { ...batch, deals: batch.deals.slice() };
    // Seats 1 and 2 exchange their whole racks; seat 3, which gives to seat 0, keeps its own.
    for (let deal = 0; deal < batch.count; deal++) {
      const at = deal * DEAL_BYTES + FACE_COUNT;
      changed.deals.set(batch.deals.subarray(at + FACE_COUNT, at + 2 * FACE_COUNT), at);
      changed.deals.set(batch.deals.subarray(at, at + FACE_COUNT), at + FACE_COUNT);
    }
    for (const each of rollouts) {
      const [one, other] = [each.run(batch), each.run(changed)];
      for (let deal = 0; deal < batch.count; deal++) {
        expect(other[deal * RESULT_WIDTH]).toBe(one[deal * RESULT_WIDTH]);
      }
    }
  });

  test('an alternative ends the same whatever other alternatives are in the batch', () => {
    const shape = { step: 'first-across', seat: 2, dealer: 0, deals: 5, alternatives: 6 } as const;
    const batch = anyBatch(shape, stream('beside', 'others'));
    const rollouts = counting(3);
    const together = rollouts.run(batch);
    for (let a = 0; a < 6; a++) {
      const actions = Int8Array.from(
        { length: 5 * 4 },
        (_, i) => batch.actions[(Math.floor(i / 4) * 6 + a) * 4 + (i % 4)]!,
      );
      const alone = rollouts.run({ ...batch, alternatives: 1, actions });
      for (let deal = 0; deal < 5; deal++) {
        const at = (deal * 6 + a) * RESULT_WIDTH;
        expect([...together.subarray(at, at + RESULT_WIDTH)]).toEqual([
          ...alone.subarray(deal * RESULT_WIDTH, (deal + 1) * RESULT_WIDTH),
        ]);
      }
    }
  });
});

describe('the value of a tile', () => {
  const house = houseCard();
  const tileValues = createTileValues(NO_SIMD, house);
  /** By tiles behind the nearest hand. */
  const WEIGHTS = [1_048_576, 65_536, 4_096, 256, 16, 1];

  test('is what near hands weigh less without it, counted hand by hand', () => {
    const random = stream('uses', 'racks');
    for (let n = 0; n < 12; n++) {
      const tiles = drawn(facesOf(FULL_SET), 13, random);
      const rack = bagOf(tiles);
      tileValues.read(Uint8Array.from(rack), 0);
      const best = Math.min(...house.hands.map((hand) => tilesToGo(hand, rack)));
      const near = house.hands.filter((hand) => tilesToGo(hand, rack) <= Math.min(13, best + 2));
      const weight = (held: typeof rack): number =>
        near.reduce((sum, hand) => sum + (WEIGHTS[tilesToGo(hand, held) - best] ?? 0), 0);
      expect(tileValues.weights[0]).toBe(weight(rack));
      rack.forEach((count, face) => {
        if (face === 35) return;
        for (let copies = 1; copies <= Math.min(2, count); copies++) {
          const rest = takeFrom(
            rack,
            new Array(copies).fill(tiles.find((tile) => bagOf([tile])[face] === 1)),
          )!;
          expect(tileValues.weights[2 * face + copies]).toBe(weight(rest));
        }
      });
    }
  });
});
