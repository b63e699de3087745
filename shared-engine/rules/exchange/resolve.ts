// Four sealed passes become one movement of tiles, the ring of blind passes included (rules C1, B1–B4).
import { drawn, type Random } from '../deal/random.ts';
import { forFour, giverTo, neighbour, SEATS, type Seat } from '../deal/seat.ts';
import { sortFaces } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { ResolvedMove, SubmittedPass } from './round.ts';
import { MOVES, type MoveStep } from './schedule.ts';

/** A tile under way; two tiles of one face must stay two tiles while they travel. */
interface Travelling {
  readonly face: Face;
}

/**
 * Settles one move. `passes[seat]` is null only where a courtesy pair agreed on nothing.
 *
 * Each seat sends its own tiles and passes on `blind` of those that arrive. Where some seat passes all three
 * of its own, the tiles are followed from there and each draw is made from a complete arriving bundle. Where
 * all four pass blind there is no such start (rule B4): the ring has room for as many tiles as exist, the rest
 * of the slots are void for everybody, and the walk goes from the dealer to the right until every seat has
 * passed on its number. That walk ends: a seat that finds nothing to draw has a bundle no larger than the one
 * before it, so all four would be short by the same tiles, which is what was voided beforehand.
 */
export function resolveMove(
  step: MoveStep,
  passes: Four<SubmittedPass | null>,
  dealer: Seat,
  random: Random,
): ResolvedMove {
  const { toward } = MOVES[step];
  const own = forFour((seat) => (passes[seat]?.tiles ?? []).map((face): Travelling => ({ face })));
  const blind = forFour((seat) => passes[seat]?.blind ?? 0);

  const allBlind = blind.every((count) => count > 0);
  const realTiles = own.reduce((sum, tiles) => sum + tiles.length, 0);
  const voided = allBlind ? Math.max(0, 3 - realTiles) : 0;

  const passedOn: Four<Travelling[]> = [[], [], [], []];
  const bundle = (seat: Seat): Travelling[] => [...own[seat], ...passedOn[seat]];
  const owed = (seat: Seat): number => blind[seat] - voided - passedOn[seat].length;
  const order = allBlind ? walkFrom(dealer, 'right') : walkFrom(SEATS.find((s) => blind[s] === 0)!, toward);

  while (SEATS.some((seat) => owed(seat) > 0)) {
    for (const seat of order) {
      const mine = bundle(seat);
      const arriving = bundle(giverTo(seat, toward)).filter((tile) => !mine.includes(tile));
      passedOn[seat].push(...drawn(arriving, Math.min(owed(seat), arriving.length), random));
    }
  }

  const kept = forFour((seat) =>
    bundle(giverTo(seat, toward)).filter((tile) => !passedOn[seat].includes(tile)),
  );
  return {
    kind: 'move',
    step,
    gave: facesBySeat(own),
    forwarded: facesBySeat(passedOn),
    received: facesBySeat(kept),
    blind,
    voided,
    by: forFour((seat) => passes[seat]?.by ?? null),
  };
}

function walkFrom(start: Seat, direction: 'right' | 'left' | 'across'): readonly Seat[] {
  const order: Seat[] = [start];
  while (order.length < 4) order.push(neighbour(order.at(-1)!, direction));
  return order;
}

function facesBySeat(tiles: Four<readonly Travelling[]>): Four<readonly Face[]> {
  return forFour((seat) => sortFaces(tiles[seat].map((tile) => tile.face)));
}
