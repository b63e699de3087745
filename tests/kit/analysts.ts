// The SIMD module, and analysts that use it.
import { type Analyst, createAnalyst } from '../../shared-engine/analysis/comparison/analyze.ts';
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import { loadSimd } from '../../shared-engine/kernels/simd/module.ts';

export const simd = await loadSimd();

const created = new WeakMap<CompiledCard, Analyst>();

/** The same one for the same card: creating one takes longer than many of its analyses. */
export function analystOf(card: CompiledCard): Analyst {
  const known = created.get(card) ?? createAnalyst(card, simd);
  created.set(card, known);
  return known;
}
