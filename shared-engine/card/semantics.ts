// Checks patterns of the right structure for faults of meaning: whether the set of 152 tiles can make them.
import { copiesOf, type Face } from '../rules/index.ts';
import { type Assignment, faceOf, type VariableKind, type VariableUse, variableUses } from './assignment.ts';
import { CARD_LIMITS, type CardDomain, type CardFile, type CardPattern } from './format.ts';
import { type HandFault, type HandsOfPattern, MIN_JOKER_GROUP } from './hands.ts';
import { type CardProblem, type CardProblemCode, cardProblem } from './problem.ts';

const MAX_JOKERS = copiesOf('joker');

/** Which entry of `where` fits which kind of variable. */
const DOMAIN_OF: Record<VariableKind, readonly string[]> = {
  number: ['from', 'numbers'],
  suit: ['suits'],
  dragon: ['dragons'],
  wind: ['winds'],
};

/** After one of these the hands of a pattern are not checked: they would only repeat the fault. */
const VARIABLE_FAULTS: ReadonlySet<CardProblemCode> = new Set([
  'variable-mixed',
  'too-many-variables',
  'wrong-where',
  'number-out-of-range',
  'no-year',
]);

/** Whether a pattern with this fault still has hands that can be counted and checked. */
export function countsHands(code: CardProblemCode): boolean {
  return !VARIABLE_FAULTS.has(code);
}

export function tooManyHandsProblem(pattern: string): CardProblem {
  const text = `with it the card comes to more than ${CARD_LIMITS.hands} hands; fix some of its variables with "where".`;
  return cardProblem('too-many-hands', pattern, null, text);
}

/** Faults that do not depend on the values of the variables. */
export function patternProblems(
  pattern: CardPattern,
  sections: ReadonlySet<string>,
  parameters: CardFile['parameters'],
): CardProblem[] {
  const problems: CardProblem[] = [];
  const report = (code: CardProblemCode, group: number | null, text: string): number =>
    problems.push(cardProblem(code, pattern.id, group, text));

  if (!sections.has(pattern.section)) {
    report(
      'unknown-section',
      null,
      `the card has no section "${pattern.section}"; add it to "sections" or correct it.`,
    );
  }
  const tiles = pattern.groups.reduce((sum, { size }) => sum + size, 0);
  if (tiles !== 14) {
    const advice = tiles < 14 ? `add ${14 - tiles}` : `take ${tiles - 14} away`;
    report('not-14-tiles', null, `its groups hold ${tiles} tiles and a pattern needs 14; ${advice}.`);
  }
  const yearGroup = pattern.groups.findIndex(({ tile }) => 'yearDigit' in tile);
  if (yearGroup >= 0 && parameters.year === undefined) {
    report('no-year', yearGroup + 1, 'it uses a year digit; give the card a "year" in "parameters".');
  }
  const uses = variableUses(pattern);
  for (const use of uses) {
    const first = uses.find(({ name }) => name === use.name)!;
    if (first.kind !== use.kind) {
      report(
        'variable-mixed',
        use.group + 1,
        `"${use.name}" is a ${use.kind} here and a ${first.kind} in group ${first.group + 1}; use two names.`,
      );
    }
  }
  for (const [kind, limit] of Object.entries(CARD_LIMITS.variables)) {
    const names = new Set(uses.filter((use) => use.kind === kind).map(({ name }) => name));
    if (names.size > limit) {
      report(
        'too-many-variables',
        null,
        `it has ${names.size} ${kind} variables; at most ${limit} are allowed.`,
      );
    }
  }
  for (const [name, domain] of Object.entries(pattern.where ?? {})) {
    const use = uses.find((candidate) => candidate.name === name);
    if (use === undefined) {
      report('variable-unused', null, `"where" speaks of "${name}", which no group uses; remove it.`);
    } else {
      problems.push(...domainProblems(pattern, use, domain, uses));
    }
  }
  return problems;
}

function domainProblems(
  pattern: CardPattern,
  { name, kind }: VariableUse,
  domain: CardDomain,
  uses: readonly VariableUse[],
): CardProblem[] {
  if (!DOMAIN_OF[kind].some((entry) => entry in domain)) {
    const fitting = DOMAIN_OF[kind].map((entry) => (entry === 'from' ? '"from" and "to"' : `"${entry}"`));
    return [
      cardProblem(
        'wrong-where',
        pattern.id,
        null,
        `"${name}" is a ${kind}; give it ${fitting.join(' or ')}.`,
      ),
    ];
  }
  if ('from' in domain && domain.from > domain.to) {
    return [
      cardProblem(
        'wrong-where',
        pattern.id,
        null,
        `"${name}" goes from ${domain.from} to ${domain.to}; swap them.`,
      ),
    ];
  }
  const numbers = 'from' in domain ? [domain.from, domain.to] : 'numbers' in domain ? domain.numbers : [];
  return uses
    .filter((use) => use.name === name)
    .flatMap(({ plus, group }) => {
      const outside = numbers.find((number) => number + plus < 1 || number + plus > 9);
      if (outside === undefined) return [];
      const text = `its number is ${outside + plus} when "${name}" is ${outside}; narrow "where" so that it stays within 1 to 9.`;
      return [cardProblem('number-out-of-range', pattern.id, group + 1, text)];
    });
}

/** Faults of the hands of a pattern: at most one of each kind, with the first choice of values that shows it. */
export function handProblems(
  pattern: CardPattern,
  { choices, faulty }: HandsOfPattern,
  parameters: CardFile['parameters'],
): CardProblem[] {
  if (choices === 0) {
    const text =
      'no choice of numbers, suits, dragons and winds fits it; two variables of one kind never take the same value, so widen "where" or use fewer.';
    return [cardProblem('no-choice', pattern.id, null, text)];
  }
  return faulty.map(({ fault, assignment }) => problemOfHand(pattern, fault, assignment, parameters));
}

function problemOfHand(
  pattern: CardPattern,
  fault: HandFault,
  assignment: Assignment,
  parameters: CardFile['parameters'],
): CardProblem {
  switch (fault.is) {
    case 'no-number': {
      const text = 'its number does not exist; a number must be 1 to 9.';
      return cardProblem('number-out-of-range', pattern.id, fault.group + 1, text);
    }
    case 'too-few-copies': {
      const { face, wanted } = fault;
      const text = `singles and pairs of this pattern want ${wanted} × ${face}${shownChoice(assignment)}, the set has ${copiesOf(face)} and no joker may stand there; want fewer or rule this choice out with "where".`;
      const group = lastPairOf(pattern, face, assignment, parameters) + 1;
      return cardProblem('too-few-copies', pattern.id, group, text);
    }
    case 'too-many-jokers': {
      const text = `it cannot do without ${fault.jokers} jokers${shownChoice(assignment)}, and the set has ${MAX_JOKERS}; spread its groups over more faces.`;
      return cardProblem('too-many-jokers', pattern.id, null, text);
    }
  }
}

function lastPairOf(
  pattern: CardPattern,
  face: Face,
  assignment: Assignment,
  parameters: CardFile['parameters'],
): number {
  return pattern.groups.findLastIndex(
    ({ size, tile }) => size < MIN_JOKER_GROUP && faceOf(tile, assignment, parameters) === face,
  );
}

function shownChoice(assignment: Assignment): string {
  const entries = [assignment.numbers, assignment.suits, assignment.dragons, assignment.winds].flatMap(
    (values) => [...values].map(([name, value]) => `${name} = ${value}`),
  );
  return entries.length === 0 ? '' : ` (${entries.join(', ')})`;
}
