// Finds a pass among those that were compared.
import type { Face } from '../../shared-engine/index.ts';

/** The one with these tiles, in whatever order; null where there is none. */
export function passWith<Pass extends { readonly tiles: readonly Face[] }>(
  passes: readonly Pass[],
  tiles: readonly Face[],
): Pass | null {
  const wanted = [...tiles].sort().join();
  return passes.find((one) => [...one.tiles].sort().join() === wanted) ?? null;
}
