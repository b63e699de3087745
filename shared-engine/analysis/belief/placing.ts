// The first guess of a history: hidden tiles are dealt evenly and stay where they were dealt.
import { FULL_SET } from '../../rules/tiles/bag.ts';
import { FACE_COUNT } from '../../rules/tiles/face.ts';
import { dealtHidden, type History, keepFrom, recount } from './history.ts';
import type { Draws } from './rng.ts';
import { giverAt, type Situation } from './situation.ts';

/**
 * Fills a history. Where more copies of a face came to the seat than were hidden from it, the surplus must be its
 * own gifts on their way back: those are bound to a way that leads there.
 */
export function place(history: History, situation: Situation, draws: Draws): void {
  const { seat, past, start } = situation;
  const hidden = FULL_SET.map((copies, face) => copies - start[face]!);
  history.bound.fill(0);
  history.wall.fill(0);
  deal(history, situation);
  const left = [...hidden];
  for (const [move, { toward, received }] of past.entries()) {
    for (const face of received) {
      if (left[face]!-- > 0) continue;
      bindReturning(history, situation, face, giverAt(seat, toward), move);
    }
  }
  dealRest(history, dealtHidden(situation), hidden, draws);
  recount(history, seat);
}

function deal(history: History, { seat, dealer, past }: Situation): void {
  let tile = 0;
  for (let other = 0; other < 4; other++) {
    if (other === seat) continue;
    for (let n = other === dealer ? 14 : 13; n > 0; n--) keepFrom(history, tile++, 0, other);
  }
  for (const [move, { gave, toward }] of past.entries()) {
    for (const face of gave) {
      history.face[tile] = face;
      keepFrom(history, tile, 0, seat);
      keepFrom(history, tile++, move + 1, (seat + toward) % 4);
    }
  }
}

/** Lets one of the seat's own gifts of this face come back by the move, where there is a way. */
function bindReturning(
  history: History,
  { seat, past, ...situation }: Situation,
  face: number,
  giver: number,
  move: number,
): void {
  let tile = dealtHidden({ seat, past, ...situation });
  for (const [entered, { gave, toward }] of past.entries()) {
    for (const given of gave) {
      const known = tile++;
      if (given !== face || history.bound[known] === 1 || entered >= move) continue;
      const way = wayBetween(past, seat, (seat + toward) % 4, entered + 1, giver, move);
      if (way === null) continue;
      for (const [n, holder] of way.entries()) keepFrom(history, known, entered + 1 + n, holder);
      keepFrom(history, known, move + 1, seat);
      history.bound[known] = 1;
      return;
    }
  }
}

/** Holders before each move from `now` to `end`, staying wherever staying leads there; null where nothing does. */
function wayBetween(
  past: Situation['past'],
  own: number,
  holder: number,
  now: number,
  giver: number,
  end: number,
): number[] | null {
  if (now === end) return holder === giver ? [holder] : null;
  const next = (holder + past[now]!.toward) % 4;
  for (const to of [holder, next]) {
    if (to === own) continue;
    const rest = wayBetween(past, own, to, now + 1, giver, end);
    if (rest !== null) return [holder, ...rest];
  }
  return null;
}

/** Deals the hidden tiles; the wall keeps the remainder. */
function dealRest(history: History, tiles: number, hidden: readonly number[], draws: Draws): void {
  const faces: number[] = [];
  for (let face = 0; face < FACE_COUNT; face++) for (let n = 0; n < hidden[face]!; n++) faces.push(face);
  let size = faces.length;
  for (let tile = 0; tile < tiles; tile++) {
    const drawn = draws.below(size);
    history.face[tile] = faces[drawn]!;
    faces[drawn] = faces[--size]!;
  }
  for (let n = 0; n < size; n++) history.wall[faces[n]!]!++;
}
