// The vector module, and analysts that use it.
import { type Analyst, type CompiledCard, createAnalyst, loadSimd } from '../../shared-engine/index.ts';

export const vectors = await loadSimd();

const made = new WeakMap<CompiledCard, Analyst>();

/** The same one for the same card: making one takes longer than many of its answers. */
export function analystOf(card: CompiledCard): Analyst {
  const known = made.get(card) ?? createAnalyst(card, vectors);
  made.set(card, known);
  return known;
}
