// One example of a pattern: values for its variables, drawn from a seed, and the tile of each group under them.
import { type Face, stream } from '../rules/index.ts';
import { type Assignment, faceOf, valuesOf, variableUses } from './assignment.ts';
import { CARD_LIMITS, type CardFile, type CardPattern } from './format.ts';
import { canBeMade } from './hands.ts';

type Body = Pick<CardPattern, 'groups' | 'where'>;

export interface PatternExample {
  readonly assignment: Assignment;
  /** One face a group, in their order. */
  readonly faces: readonly Face[];
}

/** Draws after which a choice that the set cannot make is shown as well. */
const TRIES = 200;

/**
 * The same seed rolls the same example. A pattern whose groups do not hold 14 tiles yet has examples too; choices that
 * the set can make come first. Null where no choice drawn has a tile for every group.
 */
export function exampleOf(
  pattern: Body,
  parameters: CardFile['parameters'],
  seed: string,
): PatternExample | null {
  // Beyond the limits there are more choices than anybody can wait for.
  if (tooManyVariables(pattern)) return null;
  const { numbers, suits, dragons, winds } = valuesOf(pattern);
  if ([numbers, suits, dragons, winds].some((choices) => choices.length === 0)) return null;
  const random = stream(seed, 'example');
  const oneOf = <T>(choices: readonly T[]): T => choices[random.below(choices.length)]!;
  let shown: PatternExample | null = null;
  for (let tried = 0; tried < TRIES; tried++) {
    const assignment = {
      numbers: oneOf(numbers),
      suits: oneOf(suits),
      dragons: oneOf(dragons),
      winds: oneOf(winds),
    };
    const faces = facesUnder(pattern, assignment, parameters);
    if (faces === null) continue;
    shown ??= { assignment, faces };
    if (canBeMade(pattern.groups, faces)) return { assignment, faces };
  }
  return shown;
}

function tooManyVariables(pattern: Body): boolean {
  const uses = variableUses(pattern);
  return Object.entries(CARD_LIMITS.variables).some(
    ([kind, limit]) => new Set(uses.filter((use) => use.kind === kind).map(({ name }) => name)).size > limit,
  );
}

function facesUnder(
  { groups }: Body,
  assignment: Assignment,
  parameters: CardFile['parameters'],
): Face[] | null {
  const faces = groups.map(({ tile }) => faceOf(tile, assignment, parameters));
  return faces.every((face) => face !== null) ? faces : null;
}
