// By example first: what a tile laid by hand means on the card, given how the rest of the hand is meant.
import {
  type CardGroup,
  type CardTile,
  canonicalPattern,
  DRAGONS,
  type Dragon,
  type Face,
  numbered,
  type PatternBody,
  STANDARD_NAMES,
  SUITS,
  type Suit,
  WINDS,
} from '../../../shared-engine/index.ts';

/** How tiles of each kind are meant: as they lie there, or as an example of something left open. */
export interface Answers {
  /** `row`: at its distance from the other numbers of the row; `own`: any number, whatever the others are. */
  readonly numbers: 'row' | 'exact' | 'own';
  readonly suits: 'any' | 'exact';
  readonly winds: 'any' | 'exact';
  readonly dragons: 'suit' | 'any' | 'exact';
}
export type Kind = keyof Answers;
export const KINDS: readonly Kind[] = ['numbers', 'suits', 'winds', 'dragons'];

export const USUAL_ANSWERS: Answers = { numbers: 'row', suits: 'any', winds: 'exact', dragons: 'suit' };

/** A hand and one example of it, a face for each group. */
export interface Shown {
  readonly pattern: PatternBody;
  readonly faces: readonly Face[];
}

/** What a tile is laid as where the face alone does not say it. */
export type LaidAs = 'tile' | 'zero' | 0 | 1 | 2 | 3;

export interface Laid {
  readonly size: number;
  readonly face: Face;
  readonly as: LaidAs;
}

export function withGroup({ pattern, faces }: Shown, { size, face, as }: Laid, answers: Answers): Shown {
  const tile = tileMeant({ face, as }, answers, valuesIn(pattern.groups, faces));
  return {
    pattern: canonicalPattern({ ...pattern, groups: [...pattern.groups, { size, tile }] }),
    faces: [...faces, face],
  };
}

/** The hand with all tiles of one kind meant in one way. */
export function answeredAs({ pattern, faces }: Shown, kind: Kind, answers: Answers): Shown {
  const groups: CardGroup[] = [];
  for (const [nth, { size, tile }] of pattern.groups.entries()) {
    const meant = { ...meaningOf(tile), [kind]: answers[kind] };
    // Dragons of a suit that is not left open any more are given dragons.
    const own: Answers =
      meant.suits === 'exact' && kind === 'suits' ? { ...meant, dragons: exactIfSuit(meant) } : meant;
    groups.push({
      size,
      tile: tileMeant({ face: faces[nth]!, as: laidAs(tile) }, own, valuesIn(groups, faces)),
    });
  }
  return { pattern: canonicalPattern({ ...pattern, groups }), faces };
}

/** One tile meant in another way, the others as they are. */
export function meantAs({ pattern, faces }: Shown, nth: number, meaning: Answers): Shown {
  const others = pattern.groups.filter((_, other) => other !== nth);
  const values = valuesIn(
    others,
    faces.filter((_, other) => other !== nth),
  );
  const tile = tileMeant({ face: faces[nth]!, as: laidAs(pattern.groups[nth]!.tile) }, meaning, values);
  const groups = pattern.groups.map((group, other) => (other === nth ? { size: group.size, tile } : group));
  return { pattern: canonicalPattern({ ...pattern, groups }), faces };
}

/** How one tile is meant; kinds that it does not have as usual. */
export function meaningOf(tile: CardTile): Answers {
  const meant: { -readonly [K in Kind]: Answers[K] } = { ...USUAL_ANSWERS };
  if ('number' in tile) {
    const { number } = tile;
    if (typeof number === 'number') meant.numbers = 'exact';
    else meant.numbers = number.var === STANDARD_NAMES.number[0] ? 'row' : 'own';
  }
  if ('suit' in tile) meant.suits = typeof tile.suit === 'object' ? 'any' : 'exact';
  if ('wind' in tile) meant.winds = typeof tile.wind === 'object' ? 'any' : 'exact';
  if ('dragon' in tile) {
    if (typeof tile.dragon === 'string') meant.dragons = 'exact';
    else meant.dragons = 'matching' in tile.dragon ? 'suit' : 'any';
  }
  return meant;
}

/** The kinds that a tile has. */
export function kindsOf(tile: CardTile): readonly Kind[] {
  if ('number' in tile) return ['numbers', 'suits'];
  if ('yearDigit' in tile) return ['suits'];
  if ('wind' in tile) return ['winds'];
  return 'dragon' in tile ? ['dragons'] : [];
}

/** How all tiles of each kind are meant; null where some are meant one way and some another. */
export function answersIn({ groups }: PatternBody): { readonly [K in Kind]: Answers[K] | null } {
  const one = <K extends Kind>(kind: K): Answers[K] | null => {
    const tiles = groups.map(({ tile }) => tile).filter((tile) => kindsOf(tile).includes(kind));
    const all = new Set(tiles.map((tile) => meaningOf(tile)[kind]));
    return all.size > 1 ? null : ([...all][0] ?? USUAL_ANSWERS[kind]);
  };
  return { numbers: one('numbers'), suits: one('suits'), winds: one('winds'), dragons: one('dragons') };
}

function exactIfSuit({ dragons }: Answers): Answers['dragons'] {
  return dragons === 'suit' ? 'exact' : dragons;
}

function laidAs(tile: CardTile): LaidAs {
  if ('yearDigit' in tile) return tile.yearDigit;
  return 'zero' in tile ? 'zero' : 'tile';
}

/** Values of the variables under an example, by name. */
type Values = ReadonlyMap<string, string | number>;

function valuesIn(groups: readonly CardGroup[], faces: readonly Face[]): Values {
  const values = new Map<string, string | number>();
  for (const [nth, { tile }] of groups.entries()) {
    const face = faces[nth]!;
    const suited = numbered(face);
    const dragon = DRAGONS.find((known) => known === face);
    if ('suit' in tile && typeof tile.suit === 'object' && suited) values.set(tile.suit.var, suited.suit);
    if ('number' in tile && typeof tile.number === 'object' && suited) {
      values.set(tile.number.var, suited.number - (tile.number.plus ?? 0));
    }
    if ('wind' in tile && typeof tile.wind === 'object') values.set(tile.wind.var, face);
    if ('dragon' in tile && typeof tile.dragon === 'object') {
      if ('var' in tile.dragon) values.set(tile.dragon.var, face);
      else if (dragon) values.set(tile.dragon.matching, SUITS[DRAGONS.indexOf(dragon)]!);
    }
  }
  return values;
}

/** The variable that has this value, or one that is still free; null where all of the kind are in use. */
function variableFor(
  kind: keyof typeof STANDARD_NAMES,
  value: string,
  values: Values,
): { var: string } | null {
  const names = STANDARD_NAMES[kind];
  const name =
    names.find((known) => values.get(known) === value) ?? names.find((known) => !values.has(known));
  return name === undefined ? null : { var: name };
}

function tileMeant({ face, as }: Pick<Laid, 'face' | 'as'>, answers: Answers, values: Values): CardTile {
  if (face === 'flower') return { flower: true };
  if (as === 'zero') return { zero: true };
  const wind = WINDS.find((known) => known === face);
  if (wind) return { wind: (answers.winds === 'any' && variableFor('wind', face, values)) || wind };
  const dragon = DRAGONS.find((known) => known === face);
  const suited = numbered(face);
  if (typeof as === 'number') {
    // A digit 0 of the year is soap in any suit.
    const suit = suited
      ? suitMeant(suited.suit, answers, values)
      : (variableFor('suit', '', values) ?? SUITS[0]);
    return { yearDigit: as, suit };
  }
  if (dragon) return { dragon: dragonMeant(dragon, answers, values) };
  if (!suited) return { flower: true };
  return {
    number: numberMeant(suited.number, answers, values),
    suit: suitMeant(suited.suit, answers, values),
  };
}

function suitMeant(suit: Suit, answers: Answers, values: Values): Suit | { var: string } {
  return (answers.suits === 'any' && variableFor('suit', suit, values)) || suit;
}

function numberMeant<N extends number>(
  number: N,
  answers: Answers,
  values: Values,
): N | { var: string; plus?: number } {
  if (answers.numbers === 'exact') return number;
  const [first = ''] = STANDARD_NAMES.number;
  if (answers.numbers === 'row' || !values.has(first)) {
    const plus = number - Number(values.get(first) ?? number);
    return plus === 0 ? { var: first } : { var: first, plus };
  }
  const free = STANDARD_NAMES.number.find((name) => !values.has(name));
  return free === undefined ? number : { var: free };
}

function dragonMeant(
  dragon: Dragon,
  answers: Answers,
  values: Values,
): Dragon | { var: string } | { matching: string } {
  if (answers.dragons === 'any') return variableFor('dragon', dragon, values) ?? dragon;
  if (answers.dragons === 'exact') return dragon;
  const suit = variableFor('suit', SUITS[DRAGONS.indexOf(dragon)]!, values);
  return suit ? { matching: suit.var } : dragon;
}
