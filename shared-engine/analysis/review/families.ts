// The family names that a review needs to be read without the card at hand.
import type { CompiledCard } from '../../card/compiled.ts';

/** Names by id, for these ids, in card order. */
export function familyNames(card: CompiledCard, ids: readonly string[]): Readonly<Record<string, string>> {
  const used = new Set(ids);
  return Object.fromEntries(card.families.filter(({ id }) => used.has(id)).map(({ id, name }) => [id, name]));
}
