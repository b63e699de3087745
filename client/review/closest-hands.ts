// To which sections of a card a rack points: those of the hands that it is closest to.
import { bagOf, type CompiledCard, type Face, tilesToGo } from '../../shared-engine/index.ts';

/** Names of sections in the order of the card. */
export function closestSections(card: CompiledCard, rack: readonly Face[]): readonly string[] {
  const bag = bagOf(rack);
  const away = card.hands.map((hand) => tilesToGo(hand, bag));
  const least = Math.min(...away);
  const near = new Set(
    card.hands
      .filter((_, place) => away[place] === least)
      .map(({ pattern }) => card.patterns[pattern]?.section),
  );
  return card.sections.filter((_, section) => near.has(section)).map(({ name }) => name);
}
