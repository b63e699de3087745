// The SIMD module agrees with its reference implementations: racks on three cards, passes, whole rollouts.
import { createRollouts } from '../../../shared-engine/analysis/rollouts/simd.ts';
import type { CompiledCard } from '../../../shared-engine/card/compiled.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { createPassSelector } from '../../../shared-engine/kernels/pass-selection/simd.ts';
import { loadSimd, NO_SIMD, type SimdModule } from '../../../shared-engine/kernels/simd/module.ts';
import { createSimdKernel } from '../../../shared-engine/kernels/tiles-to-go/simd.ts';
import { drawn, stream } from '../../../shared-engine/rules/deal/random.ts';
import { STEPS } from '../../../shared-engine/rules/exchange/schedule.ts';
import { type Bag, bagOf, FULL_SET, facesOf } from '../../../shared-engine/rules/tiles/bag.ts';
import { answers, answersByDefinition, flatRacks } from '../../kit/racks.ts';
import { randomCard } from '../../kit/random-card.ts';
import { anyBatch } from '../../kit/rollout-batches.ts';
import type { Proof, ProofRow } from '../proof.ts';

const CARDS = [houseCard(), randomCard('wide', 120, 60), randomCard('few', 3, 5)];

export const proof: Proof = {
  summary:
    'The SIMD module equals its references: every distance, every pass, every bit of a win probability.',
  async run({ seed, size }) {
    const simd = await loadSimd();
    if (simd.kind === 'unavailable') throw new Error(simd.reason);
    const [racks, deals] = size === 'full' ? [100_000, 400] : [1000, 8];
    return CARDS.flatMap((card) => [
      ...rackRows(simd, card, dealtRacks(`${seed}/${card.id}`, racks)),
      rolloutRow(simd, card, seed, deals),
    ]);
  },
};

function dealtRacks(seed: string, count: number): Bag[] {
  const random = stream(seed, 'prove/kernel');
  const tiles = facesOf(FULL_SET);
  return Array.from({ length: count }, (_, nth) => bagOf(drawn(tiles, 13 + (nth % 2), random)));
}

function rackRows(simd: SimdModule, card: CompiledCard, racks: readonly Bag[]): ProofRow[] {
  const fast = createSimdKernel(simd, card);
  const flat = flatRacks(racks);
  const many = fast.toGoMany(flat);
  let differing = 0;
  for (const [nth, rack] of racks.entries()) {
    const same = many[nth] === fast.toGo(rack) && answers(fast, rack) === answersByDefinition(card, rack);
    if (!same) differing++;
  }
  const selected = createPassSelector(simd, card)(flat);
  const reference = createPassSelector(NO_SIMD, card)(flat);
  const otherwise = racks.filter(
    (_, nth) =>
      selected.spare[nth] !== reference.spare[nth] ||
      [0, 1, 2].some((i) => selected.tiles[nth * 3 + i] !== reference.tiles[nth * 3 + i]),
  ).length;
  const on = `${racks.length} racks on ${card.id} (${card.hands.length} hands)`;
  return [
    row(`${on}: distances that differ from the definition`, differing),
    row(`${on}: passes that differ from the reference`, otherwise),
  ];
}

function rolloutRow(simd: SimdModule, card: CompiledCard, seed: string, deals: number): ProofRow {
  const fast = createRollouts(simd, card);
  const reference = createRollouts(NO_SIMD, card);
  const random = stream(`${seed}/${card.id}`, 'prove/playouts');
  let all = 0;
  let differing = 0;
  for (const step of STEPS) {
    const batch = anyBatch({ step, seat: 1, dealer: 2, deals, alternatives: 5 }, random);
    const expected = reference.run(batch);
    for (const [nth, value] of fast.run(batch).entries()) {
      all++;
      if (!Object.is(value, expected[nth])) differing++;
    }
  }
  return row(`${all} win probabilities of rollouts on ${card.id}: not the same bit by bit`, differing);
}

function row(what: string, value: number): ProofRow {
  return { what, value, bar: '0', ok: value === 0 };
}
