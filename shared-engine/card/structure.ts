// Words a schema error as a card problem: which entry of which pattern and group, and what it must be.
import type { z } from 'zod';
import { type CardProblem, cardProblem } from './problem.ts';

type Issue = z.core.$ZodIssue;

const TILE =
  'one of {"number", "suit"}, {"wind"}, {"dragon"}, {"flower": true}, {"zero": true} and {"yearDigit", "suit"}';
const NAME = 'a name of 1 to 8 small letters and digits, a letter first';
const VARIABLE = '{"var": a name}';

/** What each entry must be, by its name. */
const EXPECTED: ReadonlyMap<string, string> = new Map([
  ['format', '"quadrille-card/1"'],
  ['id', 'a small letter and then small letters, digits and single hyphens, at most 40 in all'],
  ['name', 'a text of 1 to 80 characters that can all be seen'],
  ['parameters', 'an object with the "year" of the card, or an empty one'],
  ['year', 'a year from 1000 to 9999'],
  ['sections', 'a list of 1 to 40 sections, each {"id", "name"}'],
  ['patterns', 'a list of 1 to 300 patterns'],
  ['section', 'the id of a section of the card'],
  ['points', 'a whole number from 0 to 1000'],
  ['concealed', 'true or false'],
  ['groups', 'a list of 1 to 14 groups, each {"size", "tile"}'],
  ['size', 'a whole number from 1 to 6'],
  ['tile', TILE],
  ['number', `a number from 1 to 9, or ${VARIABLE} with "plus" from -8 to 8`],
  ['plus', 'a whole number from -8 to 8'],
  ['suit', `"bam", "crak", "dot" or ${VARIABLE}`],
  ['wind', `"east", "south", "west", "north" or ${VARIABLE}`],
  ['dragon', `"green", "red", "white", ${VARIABLE} or {"matching": a suit variable}`],
  ['matching', 'the name of a suit variable'],
  ['var', NAME],
  ['flower', 'true'],
  ['zero', 'true'],
  ['yearDigit', '0, 1, 2 or 3'],
  ['from', 'a number from 1 to 9'],
  ['to', 'a number from 1 to 9'],
  ['numbers', 'a list of numbers from 1 to 9'],
  ['suits', 'a list of suits'],
  ['dragons', 'a list of dragons'],
  ['winds', 'a list of winds'],
]);
const WHERE =
  'an object that gives each variable {"from", "to"}, {"numbers"}, {"suits"}, {"dragons"} or {"winds"}';

/** The faults of the card outside its patterns. */
export function cardStructureProblems(issues: readonly Issue[]): CardProblem[] {
  return issues.flatMap((issue) => describe(issue, [], null, null));
}

/** The faults of one pattern. */
export function patternStructureProblems(issues: readonly Issue[], pattern: string): CardProblem[] {
  return issues.flatMap((issue) => {
    const [first, group] = issue.path;
    const inGroup = first === 'groups' && typeof group === 'number';
    return describe(issue, [], pattern, inGroup ? group + 1 : null);
  });
}

function describe(
  issue: Issue,
  above: readonly PropertyKey[],
  pattern: string | null,
  group: number | null,
): CardProblem[] {
  const path = [...above, ...issue.path];
  if (issue.code === 'invalid_union') {
    // The author meant the one branch that has all the names used; where there is no such branch the union is the fault.
    const meant = issue.errors.filter((branch) => branch.every((inner) => inner.path.length > 0));
    if (meant.length === 1) return meant[0]!.flatMap((inner) => describe(inner, path, pattern, group));
  }
  const names = path.filter((key) => typeof key === 'string');
  const place = names.slice(group === null ? 0 : 1).join('.');
  const text =
    issue.code === 'unrecognized_keys'
      ? `${place === '' ? '' : `"${place}" `}does not know ${issue.keys.map(shown).join(', ')}; remove it.`
      : place === ''
        ? `must be an object with the entries of the format.`
        : `"${place}" must be ${expectation(names, issue.code)}.`;
  return [cardProblem('not-in-format', pattern, group, text)];
}

function expectation(names: readonly string[], code: Issue['code']): string {
  const last = names.at(-1) ?? '';
  if (names.at(-2) === 'where' && code === 'invalid_key') return NAME;
  if (last === 'where' || names.at(-2) === 'where') return WHERE;
  return EXPECTED.get(last) ?? 'as the format says';
}

function shown(key: string): string {
  return JSON.stringify(key.slice(0, 40));
}
