// Rollouts, pass selection and tile values of the SIMD module against their reference implementations, to the last bit.
import { beforeAll, describe, expect, it } from 'vitest';
import {
  NEIGHBORS,
  RESULT_WIDTH,
  ROLLOUT_ENDS,
  type RolloutBatch,
  type Rollouts,
} from '../../shared-engine/analysis/rollouts/batch.ts';
import { createRollouts } from '../../shared-engine/analysis/rollouts/simd.ts';
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { createPassSelector } from '../../shared-engine/kernels/pass-selection/simd.ts';
import { loadSimd, NO_SIMD, type SimdModule } from '../../shared-engine/kernels/simd/module.ts';
import { createTileValues } from '../../shared-engine/kernels/tile-value/simd.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { hasStep, STEPS, type Step } from '../../shared-engine/rules/exchange/schedule.ts';
import { COURTESY_WAYS, SECOND_CHARLESTON_WAYS } from '../../shared-engine/rules/exchange/terms.ts';
import { bagOf, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT } from '../../shared-engine/rules/tiles/face.ts';
import { flatRacks } from '../kit/racks.ts';
import { randomCard } from '../kit/random-card.ts';
import { anyBatch } from '../kit/rollout-batches.ts';

const CARDS = [randomCard('one', 1, 1), randomCard('playouts', 60, 30), houseCard()];

let simd: SimdModule;

beforeAll(async () => {
  simd = await loadSimd();
  expect(simd.kind).toBe('ready');
});

/** Every bit of every number, so that −0, NaN and last digits count. */
function bits(numbers: Float64Array): string {
  return Buffer.from(numbers.buffer, numbers.byteOffset, numbers.byteLength).toString('hex');
}

const references = new Map<string, Rollouts>();
function referenceRollouts(card: CompiledCard): Rollouts {
  const known = references.get(card.id) ?? createRollouts(NO_SIMD, card);
  references.set(card.id, known);
  return known;
}

describe('rollouts in the SIMD module end as the reference does, bit by bit', () => {
  const cases = CARDS.flatMap((card) => STEPS.map((step) => [card.id, step, card] as const));

  it.each(cases)('on card %s, for choices of %s', (_, step, card) => {
    const fast = createRollouts(simd, card);
    const random = stream(card.id, `wasm/${step}`);
    for (const seat of SEATS) {
      const dealer = SEATS[random.below(4)]!;
      const batch = anyBatch({ step, seat, dealer, deals: 4, alternatives: 5 }, random);
      expect(bits(fast.run(batch))).toBe(bits(referenceRollouts(card).run(batch)));
    }
  });

  it('W2 W3 W4 also by every combination of the ways to play, and among typical and casual neighbors', () => {
    const card = CARDS[1]!;
    const fast = createRollouts(simd, card);
    const random = stream('wasm', 'ways');
    for (const secondCharleston of SECOND_CHARLESTON_WAYS) {
      for (const courtesy of COURTESY_WAYS) {
        for (const blindPasses of [true, false]) {
          const terms = { secondCharleston, courtesy, blindPasses };
          for (const step of ['first-across', 'first-left', 'second-left'] as const) {
            if (!hasStep(step, terms)) continue;
            const shape = { step, seat: 1, dealer: 2, deals: 3, alternatives: 3, terms } as const;
            const batch = anyBatch(
              { ...shape, neighbors: NEIGHBORS[random.below(NEIGHBORS.length)]! },
              random,
            );
            expect(bits(fast.run(batch))).toBe(bits(referenceRollouts(card).run(batch)));
          }
        }
      }
    }
  });

  it('also where they end right after the step or after the next pass, which is not the close', () => {
    const card = CARDS[1]!;
    const fast = createRollouts(simd, card);
    for (const step of ['first-right', 'first-left', 'vote', 'second-left', 'courtesy-ask'] as const) {
      const results = ROLLOUT_ENDS.map((end) => {
        const random = stream('wasm', `ends/${step}`);
        const batch = anyBatch({ step, seat: 3, dealer: 1, deals: 16, alternatives: 3, end }, random);
        const found = bits(fast.run(batch));
        expect(found).toBe(bits(referenceRollouts(card).run(batch)));
        return found;
      });
      // After the courtesy is agreed there is one pass left, as after a vote to stop.
      expect(new Set(results).size).toBe(step === 'courtesy-ask' ? 2 : 3);
    }
  });

  it('also where more alternatives are tried than a cache of racks holds', () => {
    const random = stream('wasm', 'many acts');
    const batch = anyBatch({ step: 'first-left', seat: 1, dealer: 0, deals: 2, alternatives: 150 }, random);
    const card = CARDS[1]!;
    expect(bits(createRollouts(simd, card).run(batch))).toBe(bits(referenceRollouts(card).run(batch)));
  });

  it('also where a batch is larger than one call takes', () => {
    const random = stream('wasm', 'many deals');
    const batch = anyBatch({ step: 'vote', seat: 2, dealer: 3, deals: 1500, alternatives: 3 }, random);
    const card = CARDS[0]!;
    expect(bits(createRollouts(simd, card).run(batch))).toBe(bits(referenceRollouts(card).run(batch)));
  });
});

describe('a sampled deal', () => {
  const card = CARDS[1]!;
  const shape = { seat: 0, dealer: 0, deals: 12, alternatives: 4 } as const;

  /** Deal `nth` of a batch, alone. */
  function alone(batch: RolloutBatch, nth: number): RolloutBatch {
    const bytes = batch.alternatives * 4;
    return {
      ...batch,
      count: 1,
      keys: batch.keys.slice(nth, nth + 1),
      deals: batch.deals.slice(nth * 144, (nth + 1) * 144),
      actions: batch.actions.slice(nth * bytes, (nth + 1) * bytes),
    };
  }

  it.each<Step>(['first-right', 'second-right'])('ends as it would alone, after %s', (step) => {
    const fast = createRollouts(simd, card);
    const batch = anyBatch({ ...shape, step }, stream('wasm', `alone/${step}`));
    const together = fast.run(batch);
    for (let nth = batch.count - 1; nth >= 0; nth--) {
      const own = together.slice(nth * 4 * RESULT_WIDTH, (nth + 1) * 4 * RESULT_WIDTH);
      expect(bits(fast.run(alone(batch, nth)))).toBe(bits(own));
    }
  });

  it('of another key ends otherwise, and an earlier answer stays as it was', () => {
    const fast = createRollouts(simd, card);
    const batch = anyBatch({ ...shape, step: 'first-right' }, stream('wasm', 'keys'));
    const first = fast.run(batch);
    const before = bits(first);
    expect(bits(fast.run({ ...batch, keys: batch.keys.map((key) => key + 1) }))).not.toBe(before);
    expect(bits(first)).toBe(before);
  });
});

describe('pass selection', () => {
  it.each(CARDS)('in the SIMD module is that of the reference, on $id', (card) => {
    const random = stream(card.id, 'wasm/removals');
    const racks = flatRacks(
      Array.from({ length: 1500 }, (_, nth) => bagOf(drawn(facesOf(FULL_SET), nth % 16, random))),
    );
    const jokersOnly = flatRacks([bagOf(new Array(8).fill('joker')), bagOf(['joker', 'east', 'east'])]);
    const [fast, reference] = [createPassSelector(simd, card), createPassSelector(NO_SIMD, card)];
    expect(fast(racks)).toEqual(reference(racks));
    expect(fast(jokersOnly)).toEqual(reference(jokersOnly));
    expect([...fast(jokersOnly).tiles].slice(0, 3)).toEqual([-1, -1, -1]);
  });
});

describe('the value of one or two tiles of a face', () => {
  it.each(CARDS)('is the same in the SIMD module and in the reference, on $id', (card) => {
    const random = stream(card.id, 'wasm/uses');
    const dealt = Array.from({ length: 400 }, (_, nth) => drawn(facesOf(FULL_SET), nth % 15, random));
    const many = bagOf(['east', 'east', 'east', 'east', ...new Array(8).fill('flower'), 'joker']);
    const racks = flatRacks([...dealt.map(bagOf), many]);
    const [fast, reference] = [createTileValues(simd, card), createTileValues(NO_SIMD, card)];
    for (let at = 0; at < racks.length; at += FACE_COUNT) {
      fast.read(racks, at);
      reference.read(racks, at);
      const weighed = [0, ...Array.from({ length: FACE_COUNT - 1 }, (_, face) => weighedOf(racks, at, face))];
      for (const nth of weighed.flat()) expect(fast.weights[nth]).toBe(reference.weights[nth]);
    }
  });

  /** Where the weights of a face stand, as far as so many of its tiles are held. */
  function weighedOf(racks: Uint8Array, at: number, face: number): number[] {
    return [1, 2].filter((copies) => copies <= racks[at + face]!).map((copies) => 2 * face + copies);
  }
});
