// The vector module, and analysts that use it.
import { type Analyst, type CompiledCard, createAnalyst, loadVectors } from '../../shared-engine/index.ts';

export const vectors = await loadVectors();

const made = new WeakMap<CompiledCard, Analyst>();

/** The same one for the same card: making one takes longer than many of its answers. */
export function analystOf(card: CompiledCard): Analyst {
  const known = made.get(card) ?? createAnalyst(card, vectors);
  made.set(card, known);
  return known;
}
