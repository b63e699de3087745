// The surest guess at what a neighbor ended with, and whether it was right, told only where the racks are shown.
import {
  type Direction,
  type Face,
  type Four,
  neighbor,
  numbered,
  type Seat,
  SUITS,
  type Suit,
} from '../../../rules/index.ts';
import { type NeighborSuits, USUAL } from '../../ledger/longest-suit.ts';
import { listed, playerAt } from './phrases.ts';

/** From this share on a guess at a neighbor's tiles is told. */
export const LIKELY = 0.5;

interface Guess {
  readonly toward: Direction;
  readonly suit: Suit;
  readonly share: number;
}

/** Null where none is likely enough to be told. */
function surestGuess(neighbors: readonly NeighborSuits[]): Guess | null {
  const guesses = neighbors.flatMap(({ toward, longest }) =>
    SUITS.map((suit) => ({ toward, suit, share: longest[suit] })),
  );
  const [surest] = guesses.toSorted((a, b) => b.share - a.share);
  return surest !== undefined && surest.share >= LIKELY ? surest : null;
}

/** A guess from the passes alone. */
export function guessSentences(neighbors: readonly NeighborSuits[]): readonly string[] {
  const guess = surestGuess(neighbors);
  if (guess === null) return [];
  return [
    `The passes hint that ${playerAt(guess.toward)} ended with ${mostPhrase(guess)}.`,
    `The chances of that are about ${inTen(guess.share)} in 10; as a rule they are ${inTen(USUAL)} in 10.`,
  ];
}

/** Whether it was right, by the racks at the close; null where nothing was guessed. */
export function guessAnswer(
  neighbors: readonly NeighborSuits[],
  seat: Seat,
  racks: Four<readonly Face[]>,
): string | null {
  const guess = surestGuess(neighbors);
  if (guess === null) return null;
  const rack = racks[neighbor(seat, guess.toward)];
  const counts = SUITS.map((suit) => rack.filter((face) => numbered(face)?.suit === suit).length);
  const most = counts[SUITS.indexOf(guess.suit)]!;
  const isRight = counts.filter((count) => count >= most).length === 1;
  const held = listed(
    SUITS.map(
      (suit, nth) => `${counts[nth] === 0 ? 'no' : counts[nth]} ${suit}${counts[nth] === 1 ? '' : 's'}`,
    ),
  );
  return [
    `We guessed that ${playerAt(guess.toward)} ended with ${mostPhrase(guess)}.`,
    `By the racks at the close that was ${isRight ? 'right' : 'not right'}: ${held}.`,
  ].join(' ');
}

function mostPhrase({ suit }: Guess): string {
  const [one, other] = SUITS.filter((each) => each !== suit);
  return `more ${suit}s than ${one}s or ${other}s`;
}

function inTen(share: number): number {
  return Math.round(10 * share);
}
