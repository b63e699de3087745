// Variants of the house card: sections and patterns dropped, group sizes and numbers moved, patterns concealed.
import { compileCard } from '../../card/compile.ts';
import type { CompiledCard } from '../../card/compiled.ts';
import type { CardFile, CardGroup, CardPattern } from '../../card/format.ts';
import { HOUSE_CARD } from '../../card/house/card.ts';
import { type Random, shuffled, stream } from '../../rules/deal/random.ts';
import { NUMBERS, WINDS } from '../../rules/tiles/face.ts';

/** Chances in a hundred. */
const KEPT = 80;
const ALTERED = 70;
const TURNED = 15;
const LARGEST_GROUP = 5;

/** The smallest cards are made from one section, the largest from all of them. */
export const MOST_SECTIONS = HOUSE_CARD.sections.length;

/** A card made from a seed, with patterns of so many sections, most of them altered; the same seed makes the same card. */
export function variantCard(seed: string, sections = MOST_SECTIONS): CompiledCard {
  const random = stream(seed, 'variant card');
  const drawn = shuffled(HOUSE_CARD.sections, random).slice(0, sections);
  const chosen = new Set(drawn.map(({ id }) => id));
  const patterns = HOUSE_CARD.patterns.flatMap((pattern): CardPattern[] => {
    if (!chosen.has(pattern.section) || random.below(100) >= KEPT) return [];
    const altered = random.below(100) < ALTERED ? alteredPattern(pattern, random) : pattern;
    return [random.below(100) < TURNED ? { ...altered, concealed: !altered.concealed } : altered];
  });
  return compileCard({
    ...HOUSE_CARD,
    id: 'variant',
    name: `Variant ${seed}`,
    sections: HOUSE_CARD.sections.filter(({ id }) => chosen.has(id)),
    patterns,
  });
}

/** The first alteration of up to twenty that the set of tiles can still make; the pattern itself where none is. */
function alteredPattern(pattern: CardPattern, random: Random): CardPattern {
  for (let attempt = 0; attempt < 20; attempt++) {
    const groups = moveTile(pattern.groups, random).map((group) => otherTile(group, random));
    const altered = { ...pattern, groups };
    if (handCount(altered) > 0) return altered;
  }
  return pattern;
}

function handCount(pattern: CardPattern): number {
  const card: CardFile = { ...HOUSE_CARD, patterns: [pattern] };
  return compileCard(card).hands.length;
}

/** One tile moved from a group to another. */
function moveTile(groups: readonly CardGroup[], random: Random): readonly CardGroup[] {
  const from = random.below(groups.length);
  const to = random.below(groups.length);
  if (from === to || groups[from]!.size === 1 || groups[to]!.size >= LARGEST_GROUP) return groups;
  return groups.map((group, index) => {
    if (index === from) return { ...group, size: group.size - 1 };
    return index === to ? { ...group, size: group.size + 1 } : group;
  });
}

/** A named number or wind becomes another one, one time in three. */
function otherTile(group: CardGroup, random: Random): CardGroup {
  const { tile } = group;
  if (random.below(3) > 0) return group;
  if ('number' in tile && typeof tile.number === 'number') {
    return { ...group, tile: { ...tile, number: NUMBERS[random.below(NUMBERS.length)]! } };
  }
  if ('wind' in tile && typeof tile.wind === 'string') {
    return { ...group, tile: { wind: WINDS[random.below(WINDS.length)]! } };
  }
  return group;
}
