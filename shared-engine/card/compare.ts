// Cards held against each other: whether two mean the same hands, and one card made of the sections of several.
import { distinctHandsOf } from './compile.ts';
import type { CardFile, CardPattern } from './format.ts';
import { patternReport } from './report.ts';
import { writeShorthand } from './shorthand/write.ts';

/**
 * What a pattern is worth at a table: points, concealed or not, and its hands. Equal texts mean equal patterns; one that
 * cannot be played yet stands for itself as it is written.
 */
function meaningOf(pattern: CardPattern, parameters: CardFile['parameters']): string {
  if (patternReport(pattern, parameters).problems.length > 0) return writeShorthand(pattern);
  const hands = distinctHandsOf(pattern, parameters).map(
    ({ singles, groups }) => `${singles.join()};${groups.join()}`,
  );
  return `${pattern.points} ${pattern.concealed} ${hands.sort().join(' ')}`;
}

/**
 * Whether two cards are the same at the table: equal names of sections in one order and in each the same hands in one
 * order, with the same points. Ids, names of variables and the name of the card do not count.
 */
export function meanSameHands(one: CardFile, other: CardFile): boolean {
  const shown = (card: CardFile) =>
    card.sections.map(({ id, name }) => [
      name,
      card.patterns
        .filter(({ section }) => section === id)
        .map((pattern) => meaningOf(pattern, card.parameters)),
    ]);
  return JSON.stringify(shown(one)) === JSON.stringify(shown(other));
}

/** An id that is not taken yet: `one-suit`, `one-suit-2`, … */
export function freeId(wish: string, taken: ReadonlySet<string>): string {
  const plain = wish
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-$/g, '')
    .slice(0, 32)
    .replace(/-$/, '');
  const base = plain === '' ? 'card' : plain;
  if (!taken.has(base)) return base;
  for (let nth = 2; ; nth++) {
    const id = `${base}-${nth}`;
    if (!taken.has(id)) return id;
  }
}

/**
 * The first card with the sections of the second: a section of the same name is extended by the hands that it lacks,
 * any other is put behind the others. Nothing of the first is changed or lost.
 */
export function mergedCard(into: CardFile, from: CardFile): CardFile {
  const sections = [...into.sections];
  const patterns = [...into.patterns];
  const parameters = { ...from.parameters, ...into.parameters };
  for (const { id, name } of from.sections) {
    const own = sections.find((section) => section.name.trim().toLowerCase() === name.trim().toLowerCase());
    const target = own?.id ?? freeId(name, new Set(sections.map((section) => section.id)));
    if (!own) sections.push({ id: target, name });
    const known = new Set(
      patterns.filter(({ section }) => section === target).map((pattern) => meaningOf(pattern, parameters)),
    );
    for (const pattern of from.patterns) {
      if (pattern.section !== id || known.has(meaningOf(pattern, from.parameters))) continue;
      const taken = new Set(patterns.map((other) => other.id));
      patterns.push({ ...pattern, id: freeId(pattern.id, taken), section: target });
    }
  }
  return { ...into, parameters, sections, patterns };
}
