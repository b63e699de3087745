// The vector module, and analysts that use it.
import { type Analyst, createAnalyst } from '../../shared-engine/analysis/comparison/analyze.ts';
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import { loadSimd } from '../../shared-engine/kernels/simd/module.ts';

export const simd = await loadSimd();

const made = new WeakMap<CompiledCard, Analyst>();

/** The same one for the same card: making one takes longer than many of its answers. */
export function analystOf(card: CompiledCard): Analyst {
  const known = made.get(card) ?? createAnalyst(card, simd);
  made.set(card, known);
  return known;
}
