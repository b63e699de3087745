// Rollouts in the SIMD module: whole batches of deals and alternatives in one call.
import type { CompiledCard } from '../../card/index.ts';
import {
  type Selection,
  type SimdInstance,
  type SimdModule,
  writeCard,
  writePassSelection,
} from '../../kernels/index.ts';
import { STEPS } from '../../rules/index.ts';
import type { WinModel } from '../win-probability/model-format.ts';
import { writeWinModel } from '../win-probability/simd.ts';
import { createTableValue } from '../win-probability/table-value.ts';
import {
  ACTION_BYTES,
  ASK,
  BLIND,
  DEAL_BYTES,
  RESULT_WIDTH,
  ROLLOUT_ENDS,
  type RolloutBatch,
  type Rollouts,
  TOWARD,
  VOTE,
} from './batch.ts';
import { GUMBEL, NEIGHBOR_NOISE } from './noise.ts';
import { createReferenceRollouts } from './reference.ts';

const ACTIONS_PER_CALL = 4096;

/** What all rollouts of a batch share, as `assembly/index.ts` reads it. */
const HEADER_WORDS = 9;

/**
 * By the SIMD module where the host runs it, otherwise by the reference implementation. Something `fitted` of its own is
 * for the commands that fit it or compare with it.
 */
export function createRollouts(simd: SimdModule, card: CompiledCard, fitted: Fitted = {}): Rollouts {
  if (simd.kind === 'ready') return simdRollouts(simd.instance(), card, fitted);
  return createReferenceRollouts(card, createTableValue(card, fitted.winModel), fitted.policy);
}

/** What rollouts go by that was fitted; what is missing is that of the product. */
export interface Fitted {
  readonly policy?: Selection;
  readonly winModel?: WinModel;
}

function simdRollouts(simd: SimdInstance, card: CompiledCard, { policy, winModel }: Fitted): Rollouts {
  const written = writeCard(simd, card);
  writePassSelection(simd, card, written, policy);
  writeWinModel(simd, card, written, winModel);
  writeSchedule(simd);
  const headerAt = simd.reserve(HEADER_WORDS * 4);
  const keysAt = simd.reserve(ACTIONS_PER_CALL * 4);
  const dealsAt = simd.reserve(ACTIONS_PER_CALL * DEAL_BYTES);
  const actionsAt = simd.reserve(ACTIONS_PER_CALL * ACTION_BYTES);
  const outAt = simd.reserve(ACTIONS_PER_CALL * RESULT_WIDTH * 8);
  const { buffer } = simd.memory;
  const header = new Uint32Array(buffer, headerAt, HEADER_WORDS - 1);
  const agreed = new Uint8Array(buffer, headerAt + (HEADER_WORDS - 1) * 4, 4);
  const keys = new Uint32Array(buffer, keysAt, ACTIONS_PER_CALL);
  const deals = new Uint8Array(buffer, dealsAt, ACTIONS_PER_CALL * DEAL_BYTES);
  const actions = new Int8Array(buffer, actionsAt, ACTIONS_PER_CALL * ACTION_BYTES);
  const results = new Float64Array(buffer, outAt, ACTIONS_PER_CALL * RESULT_WIDTH);

  /** Plays so many deals from `first` on. */
  function play(batch: RolloutBatch, first: number, count: number, out: Float64Array): void {
    const { seed, seat, dealer, step, alternatives, end } = batch;
    const from = first * alternatives;
    const to = from + count * alternatives;
    const ending = ROLLOUT_ENDS.indexOf(end);
    header.set([seed, seat, dealer, step, count, alternatives, wordOfWays(batch), ending]);
    agreed.set(batch.agreed);
    keys.set(batch.keys.subarray(first, first + count));
    deals.set(batch.deals.subarray(first * DEAL_BYTES, (first + count) * DEAL_BYTES));
    actions.set(batch.actions.subarray(from * ACTION_BYTES, to * ACTION_BYTES));
    simd.setBatch(headerAt);
    simd.rollOut(keysAt, dealsAt, actionsAt, outAt);
    out.set(results.subarray(0, (to - from) * RESULT_WIDTH), from * RESULT_WIDTH);
  }

  return {
    run(batch) {
      const { count, alternatives } = batch;
      const out = new Float64Array(count * alternatives * RESULT_WIDTH);
      const most = Math.floor(ACTIONS_PER_CALL / alternatives);
      for (let first = 0; first < count; first += most) {
        play(batch, first, Math.min(most, count - first), out);
      }
      return out;
    },
  };
}

/** The bits that `assembly/exchange.ts` reads; 0 is the standard. */
function wordOfWays({ terms, neighbors }: RolloutBatch): number {
  const { secondCharleston, blindPasses, courtesy } = terms;
  return (
    (secondCharleston === 'always' ? 1 : 0) |
    (secondCharleston === 'none' ? 2 : 0) |
    (blindPasses ? 0 : 4) |
    (courtesy === 'none' ? 8 : 0) |
    (NEIGHBOR_NOISE[neighbors] << 4)
  );
}

function writeSchedule(simd: SimdInstance): void {
  const table = [...TOWARD, ...BLIND.map(Number), VOTE, ASK];
  const tableAt = simd.reserve(table.length);
  const quantilesAt = simd.reserve(GUMBEL.byteLength);
  const roomAt = simd.reserve(simd.scheduleBytes(STEPS.length));
  const { buffer } = simd.memory;
  new Uint8Array(buffer, tableAt, table.length).set(table);
  new Float64Array(buffer, quantilesAt, GUMBEL.length).set(GUMBEL);
  simd.setQuantiles(quantilesAt);
  simd.setSchedule(tableAt, STEPS.length, roomAt);
}
